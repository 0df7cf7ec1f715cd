import { capitalised } from '../../job/words/noun.ts';
import type { PageContext } from '../frame/context.ts';
import {
  fastenerTypePath,
  glossaryPath,
  handbookFolder,
  recordsPath,
  toolPath,
} from '../frame/reference-paths.ts';
import type { LinkView } from '../frame/shared-views.ts';
import type { FindView, ListsView } from './reference-views.ts';

/** What can be looked up besides the guides, each list by name; a list without an entry is left out. */
export function indexLists({ shop, root }: PageContext): readonly ListsView[] {
  const crib = [...shop.crib.values()];
  const tools = crib.filter(({ kind }) => kind === 'tool');
  const wear = crib.filter(({ kind }) => kind === 'wear');
  const types = [...shop.fastenerTypes.values()];
  return [
    { title: 'Tools', links: linksOf(tools, (id) => root + toolPath(id)) },
    { title: 'To wear', links: linksOf(wear, (id) => root + toolPath(id)) },
    { title: 'Fasteners', links: linksOf(types, (id) => root + fastenerTypePath(id)) },
    {
      title: 'Glossary',
      links: [{ text: 'Drives, kinds of fastener and signal words', href: root + glossaryPath }],
    },
    {
      title: 'Records',
      links: [
        {
          text: `${capitalised(shop.settings.words.vehicles)} that were worked on`,
          href: root + recordsPath,
        },
      ],
    },
    {
      title: 'Handbook',
      links: [{ text: 'How a guide is written', href: `${root}${handbookFolder}index.html` }],
    },
  ].filter(({ links }) => links.length > 0);
}

interface Named {
  readonly id: string;
  readonly noun: { readonly label: string };
}

/** By name, with sizes in the order of their numbers: 8 mm before 13 mm. */
function linksOf(items: readonly Named[], hrefOf: (id: string) => string): readonly LinkView[] {
  return [...items]
    .sort((a, b) => byName(a.noun.label, b.noun.label))
    .map(({ id, noun }) => ({ text: noun.label, href: hrefOf(id) }));
}

function byName(a: string, b: string): number {
  const [one, other] = [sortKey(a), sortKey(b)];
  return one < other ? -1 : one > other ? 1 : 0;
}

/** The noun before its size, and numbers at equal width: "socket  00013 mm". */
function sortKey(name: string): string {
  const [, size = '', noun = name] = /^([A-Z]{0,2}\d[\d.]*(?: mm)?) (.+)$/.exec(name) ?? [];
  const padded = size.replace(/\d+/, (digits) => digits.padStart(5, '0'));
  return `${noun} ${padded}`.toLowerCase();
}

/** What the search can be narrowed to. */
export function findView({ shop }: PageContext): FindView {
  const platforms = [...shop.platforms.values()].map(({ id, title }) => ({ value: id, name: title.value }));
  return {
    kinds: [
      { value: 'guide', name: 'Guides' },
      { value: 'tool', name: 'Tools, and what to wear' },
      { value: 'fastener', name: 'Fasteners' },
      { value: 'platform', name: capitalised(shop.settings.words.vehicles) },
      { value: 'term', name: 'Glossary' },
    ],
    platforms: platforms.sort((a, b) => byName(a.name, b.name)),
  };
}
