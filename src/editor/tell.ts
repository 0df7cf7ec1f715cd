import { directives } from '../directives/index.ts';
import { capitalised } from '../job/index.ts';
import type { Item } from '../model/item.ts';
import type { BenchState } from '../model/job.ts';
import { fixingWords } from '../pages/overview/gather.ts';
import type { Workspace } from '../shop/open-workspace.ts';
import type { EditorDesk } from './desk.ts';
import { nameAt } from './names-of-workspace.ts';

/** What an item is, in a line: "Fastener: Liner screw, 3 on each side; T15". */
export function itemWords(item: Item): string {
  const count = 'count' in item ? `, ${item.count.value}` : '';
  const side =
    'side' in item && item.side
      ? item.side.value === 'each'
        ? ' on each side'
        : ` on the ${item.side.value}`
      : '';
  const fixing = fixingWords(item);
  return `${capitalised(item.kind)}: ${item.noun.label}${count}${side}${fixing ? `; ${fixing}` : ''}`;
}

/** The item of a name as a guide sees it, or as the shop or its platform has it. */
export function itemNamed(id: string, path: string, desk: EditorDesk, { shop }: Workspace): Item | null {
  const guide = desk.worked(path)?.guide;
  const platform = guide ? shop.platforms.get(guide.platform.value) : undefined;
  return (
    guide?.items.get(id) ??
    shop.crib.get(id) ??
    shop.supplies.get(id) ??
    platform?.parts.get(id) ??
    platform?.conditions.get(id) ??
    platform?.ratings.get(id) ??
    null
  );
}

/** What is to be told of an offset, as Markdown: a name, an attribute or a directive. `null` for nothing. */
export function toldAt(path: string, offset: number, desk: EditorDesk, workspace: Workspace): string | null {
  const name = nameAt(desk, path, offset);
  if (name?.space === 'item') {
    const item = itemNamed(name.id, path, desk, workspace);
    if (!item) return null;
    const standing = standingAt(item, path, offset, desk);
    return [`**${name.id}**`, itemWords(item), ...(standing ? [standing] : [])].join('\n\n');
  }
  if (name?.space === 'type') {
    const type = workspace.shop.fastenerTypes.get(name.id);
    return type ? `**${name.id}**\n\n${type.noun.label}${type.release ? `. ${type.release}` : ''}` : null;
  }
  if (name?.space === 'option') {
    const option = desk.worked(path)?.guide.builds.options.find(({ id }) => id === name.id);
    const choices = option?.choices?.map((choice) => `${choice.id}: ${choice.name}`) ?? [];
    return option ? [`**${name.id}**`, `Option: ${option.name}`, ...choices].join('\n\n') : null;
  }
  if (name?.space === 'zone') {
    const zone = desk.worked(path)?.guide.zones.get(name.id);
    return zone ? `**${name.id}**\n\nZone: ${zone.label}` : null;
  }
  if (name?.space === 'place') {
    const step = desk
      .worked(path)
      ?.guide.sections.flatMap(({ steps }) => steps)
      .find(({ id }) => id === name.id);
    return step ? `**${name.id}**\n\nStep: ${step.titleText}` : null;
  }
  return wordAt(desk.source(path)?.text ?? '', offset);
}

/** An attribute or a directive under an offset, with what the handbook says of it. */
function wordAt(text: string, offset: number): string | null {
  const start = text.lastIndexOf('\n', offset - 1) + 1;
  const line = text.slice(start, text.indexOf('\n', offset) < 0 ? undefined : text.indexOf('\n', offset));
  const column = offset - start;
  for (const { index, 1: colons = '', 2: name = '', 3: braces = '' } of line.matchAll(
    /(:{1,3})([a-z-]+)(?:\[[^\]]*\])?(\{[^}]*\})?/g,
  )) {
    const form = ({ 1: 'text', 2: 'leaf', 3: 'container' } as const)[colons.length];
    const spec = directives.find((one) => one.name === name && one.form === form);
    if (!spec) continue;
    if (column >= index && column <= index + colons.length + name.length) return spec.summary;
    const inner = index + line.slice(index).indexOf(braces);
    if (braces === '' || column < inner || column > inner + braces.length) continue;
    for (const { index: at, 0: word } of braces.matchAll(/[a-z-]+(?==|[\s}])/g)) {
      const type = spec.attributes[word];
      if (type && column >= inner + at && column <= inner + at + word.length)
        return `**${word}**: ${type.expects}\n\n${type.means}`;
    }
  }
  return null;
}

const states: readonly (readonly [keyof Omit<BenchState, 'movement'>, string])[] = [
  ['off', 'off the vehicle, on the bench'],
  ['apart', 'apart'],
  ['loose', 'loose'],
  ['aside', 'aside, still tethered'],
  ['on', 'on, to come off again'],
  ['holds', 'in force'],
];

/** Where an item stands when the step around an offset is done. */
function standingAt(item: Item, path: string, offset: number, desk: EditorDesk): string | null {
  const worked = desk.worked(path);
  const steps = worked?.guide.sections.flatMap((section) => section.steps) ?? [];
  const own = steps.filter(
    ({ at, origins }) => origins.length === 0 && at.file === path && at.start <= offset,
  );
  const step = own.reduce<(typeof own)[number] | null>(
    (last, one) => (last === null || one.at.start > last.at.start ? one : last),
    null,
  );
  const planned = worked?.job.plans.flatMap((plan) => plan.steps).find(({ id }) => id === step?.id);
  if (!step || !planned) return null;
  const found = states.find(([state]) => planned.bench[state].some((one) => one.item === item.id));
  const lists = ['part', 'fastener', 'connector', 'kit', 'supply', 'condition'].includes(item.kind);
  if (!found)
    return lists
      ? `When step ${planned.number}, "${step.titleText}", is done, none of it is off, apart, loose or aside.`
      : null;
  return `When step ${planned.number}, "${step.titleText}", is done: ${found[1]}.`;
}
