import { plainText } from '../html/prose.ts';
import { isFixing } from '../job/index.ts';
import { stepsOf } from '../job/walk.ts';
import type { FastenerType, Item, Tool, Wear } from '../model/item.ts';
import type { Platform } from '../model/shop.ts';
import { guideFolder, platformFolder } from '../pages/frame/context.ts';
import { itemAnchor } from '../pages/frame/mention.ts';
import { fastenerTypePath, termPath, toolPath } from '../pages/frame/reference-paths.ts';
import { fixingWords } from '../pages/overview/gather.ts';
import type { PublishedGuide } from '../pages/reference/index-page.ts';
import { formatDrive } from '../trade/drives.ts';
import { type GlossaryTerm, glossary, namesOfDrive } from '../trade/glossary.ts';
import { formatBoth, formatQuantity, formatRangeBoth, quantityOf } from '../units/format.ts';
import type { Millimetres } from '../units/quantity.ts';
import type { Publication } from './publication.ts';
import type { SearchEntry, SearchFact } from './search-data.ts';

/** Everything that can be found, in the order in which equal results stand. */
export function searchEntries({ shop, guides, platforms }: Publication): readonly SearchEntry[] {
  return [
    ...guides.map((published) => guideEntry(published, platforms)),
    ...platforms.map(platformEntry),
    ...[...shop.crib.values()].map((item) => toolEntry(item, guides)),
    ...[...shop.fastenerTypes.values()].map((type) => fastenerEntry(type, guides)),
    ...glossary.map(termEntry),
  ];
}

function guideEntry({ guide, job }: PublishedGuide, platforms: readonly Platform[]): SearchEntry {
  const platform = platforms.find(({ id }) => id === guide.platform.value);
  const part = guide.partNumber?.value;
  const done = new Set(job.plans.flatMap((plan) => plan.steps.map((step) => step.id)));
  const steps = stepsOf(guide).filter((step) => done.has(step.id));
  const messages = job.plans.flatMap((plan) => plan.messages);
  const tightened = new Map(
    job.plans.flatMap((plan) =>
      plan.fasteners.map((line) => [line.item, line.tightenedIn ?? line.putIn ?? line.removedIn] as const),
    ),
  );
  return {
    kind: 'guide',
    label: 'Guide',
    title: guide.title.value,
    href: `${guideFolder(guide)}index.html`,
    note: [platform?.title.value, part ? `part ${part}` : null].filter((word) => word).join(', '),
    names: [guide.id, ...(part ? [part] : [])],
    facts: once([
      ...[...guide.items.values()].map((item) => ({
        text: itemWords(item),
        at: tightened.get(item.id) ?? null,
      })),
      ...[...guide.templates.values()].flatMap((template) => [
        { text: template.title, at: template.id },
        ...[...template.holes, ...template.patterns].map((hole) => ({
          text: holeWords(hole),
          at: hole.id === null ? template.id : itemAnchor(hole.id),
        })),
      ]),
      ...steps.map((step) => ({ text: step.titleText, at: step.id })),
      ...messages.map(({ message, step, section }) => ({
        text: `${message.word.toUpperCase()}: ${plainText(message.hazard, () => '')}`,
        at: step ?? section,
      })),
    ]),
    platforms: [guide.platform.value],
  };
}

/** Each line once, where it first stands: plans repeat their messages, and so do sections. */
function once(facts: readonly SearchFact[]): readonly SearchFact[] {
  const first = new Map<string, SearchFact>();
  for (const fact of facts) if (!first.has(fact.text)) first.set(fact.text, fact);
  return [...first.values()];
}

/** An item in a line, with every size and torque that it has. */
function itemWords(item: Item): string {
  const details = detailsOf(item).filter((detail) => detail !== null);
  return details.length > 0 ? `${item.noun.label}, ${details.join(', ')}` : item.noun.label;
}

function detailsOf(item: Item): readonly (string | null)[] {
  if (isFixing(item)) return [fixingWords(item)];
  switch (item.kind) {
    case 'rating':
      return [item.limit, item.claim].map((limit) => (limit ? formatBoth(limit.value) : null));
    case 'circuit':
      return [item.load, item.fuse, item.voltage].map((part) => (part ? formatQuantity(part.value) : null));
    case 'measure':
      return [item.expect ? formatRangeBoth(item.expect.value) : null];
    default:
      return [];
  }
}

function platformEntry(platform: Platform): SearchEntry {
  const options = platform.builds.options.flatMap(({ name, choices }) => [
    name,
    ...(choices ?? []).map((choice) => choice.name),
  ]);
  return {
    kind: 'platform',
    label: 'Vehicle',
    title: platform.title.value,
    href: `${platformFolder(platform.id)}index.html`,
    note: '',
    names: [platform.id],
    facts: [...options, ...platform.sections.map(({ titleText }) => titleText)].map(plainFact),
    platforms: [platform.id],
  };
}

function toolEntry(item: Tool | Wear, guides: readonly PublishedGuide[]): SearchEntry {
  const drive = item.kind === 'tool' ? item.drive?.value : undefined;
  const users = guides.filter(({ guide }) => guide.items.has(item.id));
  return {
    kind: 'tool',
    label: item.kind === 'tool' ? 'Tool' : 'To wear',
    title: item.noun.label,
    href: toolPath(item.id),
    note: drive ? formatDrive(drive) : '',
    names: [...item.synonyms, ...(drive ? namesOfDrive(drive) : [])],
    facts: item.kind === 'tool' ? toolSizes(item).map(plainFact) : [],
    platforms: platformsOf(users),
  };
}

function toolSizes({ range, diameter, offset }: Tool): readonly string[] {
  return [
    ...(range ? [formatRangeBoth(range.value)] : []),
    ...[diameter, offset].flatMap((size) => (size ? [formatBoth(size.value)] : [])),
  ];
}

function fastenerEntry(type: FastenerType, guides: readonly PublishedGuide[]): SearchEntry {
  const items = guides.flatMap((published) =>
    [...published.guide.items.values()].flatMap((item) =>
      item.kind === 'fastener' && item.type?.value === type.id ? [{ published, item }] : [],
    ),
  );
  return {
    kind: 'fastener',
    label: 'Fastener',
    title: type.noun.label,
    href: fastenerTypePath(type.id),
    note: type.drive ? formatDrive(type.drive.value) : '',
    names: [...type.synonyms, ...(type.drive ? namesOfDrive(type.drive.value) : [])],
    facts: [...new Set(items.map(({ item }) => itemWords(item)))].map(plainFact),
    platforms: platformsOf(items.map(({ published }) => published)),
  };
}

const termLabels = { drive: 'Drive', fastener: 'Kind of fastener', 'signal-word': 'Signal word' } as const;

function termEntry(term: GlossaryTerm): SearchEntry {
  return {
    kind: 'term',
    label: termLabels[term.kind],
    title: term.term,
    href: termPath(term),
    note: term.standard ?? '',
    names: term.synonyms,
    facts: [plainFact(term.meaning)],
    platforms: null,
  };
}

function platformsOf(guides: readonly PublishedGuide[]): readonly string[] {
  return [...new Set(guides.map(({ guide }) => guide.platform.value))].sort();
}

/** "Inner hole, 19 mm": what a bit or a hole saw is looked up for. */
function holeWords({ label, diameter }: { readonly label: string; readonly diameter: Millimetres }): string {
  return `${label}, ${formatQuantity(quantityOf('length', diameter, 'mm'))}`;
}

function plainFact(text: string): SearchFact {
  return { text, at: null };
}
