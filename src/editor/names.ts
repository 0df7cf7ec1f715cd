import type { AttributeType } from '../directives/attributes/attribute.ts';
import { placedWords, ref, refs } from '../directives/attributes/attribute-types.ts';
import { isId } from '../directives/attributes/id-text.ts';
import { when } from '../directives/attributes/when.ts';
import { itemZones, OFF, stepZones } from '../directives/attributes/zones.ts';
import { directives } from '../directives/index.ts';
import { directiveNames } from '../guide/index.ts';
import type { SourceFile } from '../source/source-file.ts';
import type { Span, Written } from '../source/span.ts';
import { readMarkdown } from '../syntax/read.ts';
import type { Directive, DocumentNode, RawProse } from '../syntax/tree.ts';
import { conditionNames, headNames, passedNames } from './option-names.ts';

/** What a name stands for: a thing, a place of the text, an option, a procedure or a kind of fastener have names of their own. */
type NameSpace = 'item' | 'place' | 'option' | 'procedure' | 'type' | 'zone';

/** A name where it is written. */
export interface NamePlace {
  readonly id: string;
  readonly space: NameSpace;
  readonly at: Span;
  /** Whether it is given here; `from` elsewhere where the line only takes it from a list of the shop or the platform. */
  readonly gives: 'here' | 'elsewhere' | null;
  /** The procedure whose option it is, where that is placed. */
  readonly of?: string;
}

/** Attributes that speak of steps and sections, not of things. */
const ofPlaces: ReadonlySet<string> = new Set(['after', 'trial', 'only', 'except']);

/** Directives whose id is that of a place. */
const places: ReadonlySet<string> = new Set(['step', 'procedure']);

/** Every name in a file of a workspace, in the order of the text: in Markdown and in the shop's lists. */
export function namesIn(source: SourceFile): readonly NamePlace[] {
  const { path } = source;
  if (path === 'tools.yaml') return [...keysOf(source, 'item'), ...alternativesOf(source)];
  if (path === 'supplies.yaml') return keysOf(source, 'item');
  if (path === 'fasteners.yaml') return keysOf(source, 'type');
  if (!path.endsWith('.md')) return [];
  const { document } = readMarkdown(source, directiveNames, () => undefined);
  const page = { source, inspections: inspectionsOf(document.nodes) };
  return [
    ...headNames(document.frontMatter, source, page.inspections),
    ...document.nodes.flatMap((node) => inNode(node, page)),
    ...inProse(document.footnotes, page),
  ];
}

/** A file with what is known of it before its names are read. */
interface NamedPage {
  readonly source: SourceFile;
  /** Ids of the inspections that it declares: a condition asks about them as about options. */
  readonly inspections: ReadonlySet<string>;
}

function inspectionsOf(nodes: readonly DocumentNode[]): ReadonlySet<string> {
  return new Set(
    nodes.flatMap((node) =>
      node.type === 'directive' && node.name === 'inspection'
        ? (node.attributes.find(({ name }) => name === 'id')?.value ?? [])
        : [],
    ),
  );
}

/** Tools that serve as well, as in `or: socket-13`. */
function alternativesOf({ path, text }: SourceFile): readonly NamePlace[] {
  return [...text.matchAll(/(?<=[{,\s]or:\s*["']?)[a-z0-9-]+(?: [a-z0-9-]+)*/g)].flatMap(
    ({ 0: ids, index }) =>
      placedWords(ids, { file: path, start: index, end: index + ids.length }).map(({ value, at }) => ({
        id: value,
        space: 'item' as const,
        at,
        gives: null,
      })),
  );
}

function keysOf({ path, text }: SourceFile, space: NameSpace): readonly NamePlace[] {
  return [...text.matchAll(/^([a-z0-9-]+)(?=:)/gm)].map(({ 1: id = '', index }) => ({
    id,
    space,
    at: { file: path, start: index, end: index + id.length },
    gives: 'here',
  }));
}

function inNode(node: DocumentNode, page: NamedPage): readonly NamePlace[] {
  if (node.type === 'prose') return inProse(node.content, page);
  if (node.type === 'heading') {
    const own = node.id
      ? [{ id: node.id.value, space: 'place', at: idOnly(node.id), gives: 'here' } as const]
      : [];
    return [...own, ...inProse(node.content, page)];
  }
  return inDirective(node, page);
}

function inDirective(found: Directive, page: NamedPage): readonly NamePlace[] {
  const spec = directives.find(({ name, form }) => name === found.name && form === found.form);
  const names: NamePlace[] = [];
  for (const { name, value, valueAt } of spec ? found.attributes : []) {
    const type = spec?.attributes[name];
    if (value === null || !type) continue;
    if (name === 'id') {
      const space = places.has(found.name) ? 'place' : found.name === 'zone' ? 'zone' : 'item';
      const taken = found.form === 'leaf' && spec?.label === 'optional' && found.label === null;
      names.push({
        id: value,
        space,
        at: idOnly({ value, at: valueAt }),
        gives: taken ? 'elsewhere' : 'here',
      });
    } else if (type.read === when.read) {
      names.push(...conditionNames(value, valueAt, page.inspections));
    } else if (found.name === 'procedure' && name === 'options') {
      const of = found.attributes.find((one) => one.name === 'of')?.value;
      if (of) names.push(...passedNames(value, valueAt, of));
    } else if (type.read === ref.read || type.read === refs.read || isZones(type)) {
      const space = spaceOf(found.name, name);
      for (const word of placedWords(value, valueAt)) {
        if (isId(word.value) && !(space === 'zone' && word.value === OFF))
          names.push({ id: word.value, space, at: word.at, gives: null });
      }
    }
  }
  if (found.form === 'text' && isId(found.labelText.trim()) && found.label) {
    const space = found.name === 'step' ? 'place' : 'item';
    if (spec && found.name !== 'where' && found.name !== 'mark')
      return [{ id: found.labelText.trim(), space, at: found.labelAt, gives: null }, ...names];
  }
  const within = found.form === 'container' ? found.children.flatMap((node) => inNode(node, page)) : [];
  return [...names, ...inProse(found.label ?? [], page), ...within];
}

function spaceOf(directive: string, attribute: string): NameSpace {
  if (attribute === 'of') return directive === 'procedure' ? 'procedure' : 'place';
  if (attribute === 'type') return 'type';
  if (attribute === 'zone') return 'zone';
  return ofPlaces.has(attribute) ? 'place' : 'item';
}

/** Whether an attribute names zones of the platform. */
export function isZones({ read }: AttributeType<unknown>): boolean {
  return read === itemZones.read || read === stepZones.read;
}

/** The id alone, where the place begins with its `#`. */
function idOnly({ value, at }: Written<string>): Span {
  return { ...at, start: at.end - value.length };
}

function inProse(prose: RawProse, page: NamedPage): readonly NamePlace[] {
  return prose.flatMap((node): readonly NamePlace[] => {
    if (node.type === 'text') return [];
    if (node.type === 'directive') return inDirective(node, page);
    return [...inProse(node.children, page), ...linkName(node.properties.href, node.at, page.source)];
  });
}

/** A link within the page, as in `[the notch](#cut)`. */
function linkName(href: unknown, at: Span | null, { text }: SourceFile): readonly NamePlace[] {
  if (typeof href !== 'string' || !/^#[a-z0-9-]+$/.test(href) || !at) return [];
  const start = text.lastIndexOf(href, at.end);
  if (start < at.start) return [];
  const id = href.slice(1);
  return [
    { id, space: 'place', at: { file: at.file, start: start + 1, end: start + href.length }, gives: null },
  ];
}
