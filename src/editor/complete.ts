import { ref, refs } from '../directives/attributes/attribute-types.ts';
import { when } from '../directives/attributes/when.ts';
import { directives } from '../directives/index.ts';
import { fileEntries } from '../handbook/file-entries.ts';
import { actionRules, targetKinds } from '../job/index.ts';
import type { Workspace } from '../shop/open-workspace.ts';
import type { EditorDesk } from './desk.ts';
import { isZones, namesIn } from './names.ts';
import { itemNamed, itemWords } from './tell.ts';

/** Something that can be written at a place. */
interface EditorOffer {
  readonly label: string;
  /** What it is, in a line. */
  readonly detail: string;
  readonly kind: 'directive' | 'attribute' | 'value' | 'name';
  /** What is written in the place of what is typed of it. */
  readonly text: string;
  /** How much of what stands before the cursor it takes the place of. */
  readonly typed: number;
}

const formOf = { 1: 'text', 2: 'leaf', 3: 'container' } as const;

/** What can be written at an offset of a file. */
export function offersAt(
  path: string,
  offset: number,
  desk: EditorDesk,
  workspace: Workspace,
): readonly EditorOffer[] {
  const text = desk.source(path)?.text ?? '';
  const line = text.slice(text.lastIndexOf('\n', offset - 1) + 1, offset);
  if (path.endsWith('.yaml')) return [...keysAt(path, line), ...alternativesAt(path, line, workspace)];
  const ids = (fits: (id: string) => boolean, typed: string) => idOffers(path, desk, workspace, fits, typed);

  const [, target, typedId] = /(?<![\p{L}\p{N}:]):([a-z-]+)\[([a-z0-9-]*)$/u.exec(line) ?? [];
  if (target !== undefined && typedId !== undefined)
    return ids((id) => fitsDirective(target, id, path, desk, workspace), typedId);

  const [, colons = '', name = '', inner] = /(:{1,3})([a-z-]+)(?:\[[^\]]*\])?\{([^}]*)$/.exec(line) ?? [];
  const form = formOf[colons.length as keyof typeof formOf];
  const spec = directives.find((one) => one.name === name && one.form === form);
  if (inner !== undefined) return spec ? inBraces(spec, inner, ids, path, desk) : [];

  const [, before = '', written = '', start = ''] = /(^|[^\p{L}\p{N}:])(:{1,3})([a-z-]*)$/u.exec(line) ?? [];
  if (written === '') return [];
  const opens = formOf[written.length as keyof typeof formOf];
  const atStart = line.slice(0, line.length - written.length - start.length).trim() === '';
  if (opens !== 'text' && !(atStart && before.trim() === '')) return [];
  return directives
    .filter(({ form: own, name: one }) => own === opens && one.startsWith(start))
    .map(({ name: one, summary }) => ({
      label: one,
      detail: summary,
      kind: 'directive',
      text: one,
      typed: start.length,
    }));
}

type Ids = (fits: (id: string) => boolean, typed: string) => readonly EditorOffer[];

function inBraces(
  spec: (typeof directives)[number],
  inner: string,
  ids: Ids,
  path: string,
  desk: EditorDesk,
): readonly EditorOffer[] {
  const [, name = '', quoted, bare] = /([a-z-]+)=(?:"([^"]*)|([^\s"]*))$/.exec(inner) ?? [];
  const type = spec.attributes[name];
  const value = quoted ?? bare;
  if (type && value !== undefined) {
    const last = /[^\s]*$/.exec(value)?.[0] ?? '';
    if (type.read === ref.read || type.read === refs.read) return ids(() => true, last);
    if (isZones(type)) return zoneOffers(path, desk, last);
    if (type.read === when.read)
      return (desk.worked(path)?.guide.builds.options ?? [])
        .filter(({ id }) => id.startsWith(last))
        .map(({ id, name: option }) => valueOffer(id, option, last));
    const choices = /^`[a-z-]+`(?: or `[a-z-]+`)*$/.test(type.expects)
      ? [...type.expects.matchAll(/`([^`]+)`/g)].map(([, choice = '']) => choice)
      : [];
    return choices
      .filter((choice) => choice.startsWith(last))
      .map((choice) => valueOffer(choice, type.means, last));
  }
  // Within a value that is still open, an attribute has no place.
  if ((inner.match(/"/g)?.length ?? 0) % 2 === 1) return [];
  const start = /(?:^|\s)([a-z-]*)$/.exec(inner)?.[1];
  if (start === undefined) return [];
  const there = new Set([...inner.matchAll(/([a-z-]+)(?==)/g)].map(([word]) => word));
  return Object.entries(spec.attributes)
    .filter(([one]) => one !== 'id' && one.startsWith(start) && !there.has(one))
    .map(([one, { means, flag }]) => ({
      label: one,
      detail: means,
      kind: 'attribute',
      text: flag ? one : `${one}=`,
      typed: start.length,
    }));
}

/** The zones of the platform that a file is for, or those of its own. */
function zoneOffers(path: string, desk: EditorDesk, typed: string): readonly EditorOffer[] {
  const source = desk.source(path);
  const own = source
    ? namesIn(source).flatMap(({ id, gives, space }) =>
        gives && space === 'zone' ? [[id, ''] as const] : [],
      )
    : [];
  const known = [...(desk.worked(path)?.guide.zones.values() ?? [])].map(
    ({ id, label }) => [id, label] as const,
  );
  return [...own, ...known]
    .filter(([id]) => id.startsWith(typed))
    .map(([id, label]) => valueOffer(id, label === '' ? 'a zone of this platform' : label, typed));
}

function valueOffer(label: string, detail: string, typed: string): EditorOffer {
  return { label, detail, kind: 'value', text: label, typed: typed.length };
}

/** Names that a file can speak of: its own, and those of the shop, its platform and its procedures. */
function idOffers(
  path: string,
  desk: EditorDesk,
  workspace: Workspace,
  fits: (id: string) => boolean,
  typed: string,
): readonly EditorOffer[] {
  const source = desk.source(path);
  const own = source
    ? namesIn(source).flatMap(({ id, gives, space }) =>
        gives && space !== 'option' && space !== 'zone' ? [id] : [],
      )
    : [];
  const guide = desk.worked(path)?.guide;
  const known = new Set([...own, ...(guide?.items.keys() ?? []), ...(guide?.templates.keys() ?? [])]);
  return [...known]
    .filter((id) => id.startsWith(typed) && fits(id))
    .sort()
    .map((id) => {
      const item = itemNamed(id, path, desk, workspace);
      return {
        label: id,
        detail: item ? itemWords(item) : 'a place of this guide',
        kind: 'name',
        text: id,
        typed: typed.length,
      };
    });
}

/** Whether a directive within a sentence can speak of a name, as far as that is known. */
function fitsDirective(
  directive: string,
  id: string,
  path: string,
  desk: EditorDesk,
  workspace: Workspace,
): boolean {
  const item = itemNamed(id, path, desk, workspace);
  const rule = actionRules.find(({ verb }) => verb === directive);
  if (rule)
    return item
      ? targetKinds(item).some((kind) => rule.on.includes(kind))
      : ['cut', 'drill'].includes(directive);
  if (directive === 'step' || directive === 'cut-template' || directive === 'hole') return item === null;
  return item?.kind === directive;
}

/** The tools of the crib, where a tool says which serves as well. */
function alternativesAt(path: string, line: string, { shop }: Workspace): readonly EditorOffer[] {
  const typed = /[{,\s]or:\s*["']?(?:[a-z0-9-]+ )*([a-z0-9-]*)$/.exec(line)?.[1];
  if (path !== 'tools.yaml' || typed === undefined) return [];
  return [...shop.crib.values()].flatMap((tool) =>
    tool.kind === 'tool' && tool.id.startsWith(typed)
      ? [
          {
            label: tool.id,
            detail: itemWords(tool),
            kind: 'name',
            text: tool.id,
            typed: typed.length,
          } as const,
        ]
      : [],
  );
}

/** The keys of a file of the shop, at the beginning of a line or within braces. */
function keysAt(path: string, line: string): readonly EditorOffer[] {
  const entry = fileEntries.find(({ name }) => name === path);
  const [, outer] = /^([a-z-]*)$/.exec(line) ?? [];
  const [, inner] = /^[a-z0-9-]+:\s*\{(?:.*,\s*)?([a-z-]*)$/.exec(line) ?? /^\s+([a-z-]*)$/.exec(line) ?? [];
  const start = path === 'shop.yaml' ? outer : inner;
  if (!entry || start === undefined) return [];
  return entry.rows
    .filter(({ name }) => name.startsWith(start) && !name.includes(': '))
    .map(({ name, means }) => ({
      label: name,
      detail: means,
      kind: 'attribute',
      text: `${name}: `,
      typed: start.length,
    }));
}
