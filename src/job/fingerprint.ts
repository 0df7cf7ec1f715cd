import { createHash } from 'node:crypto';
import type { Guide, Step } from '../model/guide.ts';
import { ownWords } from '../trade/words.ts';
import { featuresOf } from './actions/target.ts';
import { toolsOf } from './actions/uses.ts';
import { placedInStep, stepsOf } from './actions/walk.ts';
import { oncePer } from './once.ts';

/** Fingerprints of a guide and of each of its steps: SHA-256 in hexadecimal, of which people see 12 digits. */
interface Fingerprints {
  readonly guide: string;
  readonly steps: ReadonlyMap<string, string>;
}

/**
 * Fingerprints what the technician is told, and the geometry. Places in the file, line breaks, the guide's
 * revision and date, and the pixels of pictures do not count.
 */
export function fingerprints(guide: Guide): Fingerprints {
  const { title, platform, partNumber, builds, items, templates, sequences, nones, contents } = guide;
  const { sections, opening, footnotes, meantFor, notFor, doneBy, takenOff } = guide;
  const words = ownWords(guide.words);
  const told = {
    title,
    platform,
    partNumber,
    builds,
    items,
    templates,
    sequences,
    nones,
    contents,
    sections,
  };
  return {
    // Null where nothing is written, which a fingerprint leaves out.
    // A list, so that a guide without any keeps its fingerprint.
    guide: digest({
      ...told,
      meantFor,
      notFor,
      doneBy,
      takenOff,
      words,
      sequences: [...sequences.values()],
      opening,
      footnotes,
    }),
    steps: new Map(stepsOf(guide).map((step) => [step.id, digest(toldBy(step, guide))])),
  };
}

/** A step, with the declarations and the templates that its words are made from. */
function toldBy(step: Step, guide: Guide): unknown {
  const ids = placedInStep(step).flatMap(({ node }) => {
    const tools = node.type === 'action' ? toolsOf(node, guide.items.get(node.target.value)) : [];
    return [node.target.value, ...tools.map((tool) => tool.value)];
  });
  const named = new Set([...ids, ...step.needs.map((need) => need.value)]);
  const items = [...named].sort().flatMap((id) => guide.items.get(id) ?? []);
  const templates = [...guide.templates.values()].filter(
    (template) =>
      named.has(template.id) || featuresOf(template).some(({ id }) => id !== null && named.has(id)),
  );
  return { step, items, templates, words: ownWords(guide.words) };
}

function digest(value: unknown): string {
  return createHash('sha256').update(canonical(value)).digest('hex');
}

/** Where a thing stands, how it came there and what follows from the rest: not told to anyone. */
const untold: ReadonlySet<string> = new Set([
  'isFastener',
  'at',
  'idAt',
  'file',
  'origins',
  'unknown',
  'src',
  // They light up the drawing, and what pictures show does not count.
  'zones',
  'picture',
]);

/** White space that is not one plain space. */
const unevenSpace = /\s\s|[^\S ]/;

/** One text for one meaning: keys in order, runs of white space as one space, what is empty left out. */
function canonical(value: unknown): string {
  if (typeof value === 'string')
    return JSON.stringify(unevenSpace.test(value) ? value.replace(/\s+/g, ' ') : value);
  if (typeof value !== 'object' || value === null) return String(value);
  if (value instanceof Map) return canonical([...value.entries()]);
  if (Array.isArray(value)) return `[${value.map(canonical).join(',')}]`;
  return isDeclared(value) ? canonicalOnce(value) : canonicalFields(value);
}

/** Steps, items and templates stand in several fingerprints of their guide. */
function isDeclared(value: object): boolean {
  return 'idAt' in value;
}

const canonicalOnce = oncePer(canonicalFields);

function canonicalFields(value: object): string {
  let text = '';
  for (const key of Object.keys(value).sort()) {
    const one = value[key as keyof typeof value];
    if (untold.has(key) || isEmpty(one)) continue;
    text += `${text === '' ? '' : ','}${JSON.stringify(key)}:${canonical(one)}`;
  }
  return `{${text}}`;
}

function isEmpty(value: unknown): boolean {
  return (
    value === null || value === undefined || value === false || (Array.isArray(value) && value.length === 0)
  );
}
