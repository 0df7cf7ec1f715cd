import { actionsOf, stepsOf } from '../../job/actions/walk.ts';
import {
  actionWords,
  capitalised,
  findTarget,
  handledEach,
  isFixing,
  itemTorqueWords,
  listed,
  lowered,
  type Target,
  toolsOf,
} from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action } from '../../model/inline.ts';
import type { Item, Tool } from '../../model/item.ts';
import { toolFitsDrive } from '../../trade/drive-fit.ts';
import { orderWords, tighteningOrder } from '../../trade/pattern.ts';
import type { Question } from './rehearsal-data.ts';

/** Answers besides the right one, at the most. */
const OTHERS = 3;

/** Makes the questions about an action of a guide: with what, how tight, in which order, on which side. */
type AskAbout = (action: Action, step: Step | null) => readonly Question[];

/** What the answers of one guide are taken from: only what the guide itself says can be right, or plausible. */
export function questionsOf(guide: Guide): AskAbout {
  const uses = stepsOf(guide).flatMap((step) =>
    actionsOf(step).map(({ node }) => toolSet(node, guide.items.get(node.target.value), guide)),
  );
  const sets = new Map(uses.flatMap((tools) => (tools.length > 0 ? [[setName(tools), tools] as const] : [])));
  const torques = new Set([...guide.items.values()].map(itemTorqueWords).filter((words) => words !== ''));
  return (action, step) => {
    const target = findTarget(guide, action.target.value);
    if (!target) return [];
    const item = target.kind === 'item' ? target.item : null;
    return [
      sideQuestion(action, item, guide, step),
      toolQuestion(action, target, [...sets.values()], guide),
      item && torqueQuestion(action, item, torques),
      item && orderQuestion(action, item, step),
    ].filter((question) => question !== null);
  };
}

/** The text of an action from which neither its torque nor its side can be read. */
export function plainActionWords(action: Action, target: Target, step: Step | null, guide: Guide): string {
  const stepSide = step?.side?.value ?? null;
  const sided = target.kind === 'item' && 'side' in target.item && target.item.side?.value !== 'each';
  const bare =
    target.kind === 'item'
      ? { ...target, item: { ...target.item, torque: null, ...(sided ? { side: null } : {}) } as Item }
      : target;
  return actionWords({ ...action, inSequence: null }, bare, { stepSide, starts: true, words: guide.words });
}

function question(
  about: Question['about'],
  ask: string,
  right: string,
  others: readonly string[],
  why: string,
): Question | null {
  if (others.length === 0) return null;
  // In the order of the alphabet nothing tells which is right.
  const options = [right, ...others.slice(0, OTHERS)].sort();
  return { about, ask, options, right: options.indexOf(right), why };
}

/** The tools that an action takes. */
export function toolSet(action: Action, item: Item | undefined, guide: Guide): readonly Tool[] {
  return toolsOf(action, item).flatMap(({ value }) => {
    const tool = guide.items.get(value);
    return tool?.kind === 'tool' ? [tool] : [];
  });
}

/** "Bit driver and T25 bit", "Torque wrench (2–20 N·m) and 13 mm socket". */
export function setName(tools: readonly Tool[]): string {
  return capitalised(listed(tools.map(({ noun }) => noun.singular.replace(/, (.*)$/, ' ($1)'))));
}

function toolQuestion(
  action: Action,
  target: Target,
  sets: readonly (readonly Tool[])[],
  guide: Guide,
): Question | null {
  const item = target.kind === 'item' ? target.item : undefined;
  const right = toolSet(action, item, guide);
  // What has a torque is only started by going in, which is done by hand.
  const started =
    action.verb !== 'tighten' && action.verb !== 'remove' && item && isFixing(item) && item.torque;
  if (right.length === 0 || started) return null;
  const wrong = sets.filter((tools) => isPlainlyWrong(tools, right, action, item));
  const name = setName(right);
  const nearFirst = [...wrong].sort((a, b) => shared(b, right) - shared(a, right));
  return question('tool', 'With what?', name, nearFirst.map(setName), `The guide takes: ${lowered(name)}`);
}

/** How much a set of tools looks like another: the closer, the better the question. */
function shared(tools: readonly Tool[], right: readonly Tool[]): number {
  return tools.filter((tool) => right.includes(tool)).length;
}

/**
 * A set of the same trade that nobody could defend. On a fastener: it turns fasteners, and none of its tools goes on
 * this one, or a torque is stated and none of them measures one. In a hole: a bit of another size; for an outline: a
 * bit that only drills. What serves as well as the right tools is no wrong answer.
 */
function isPlainlyWrong(
  tools: readonly Tool[],
  right: readonly Tool[],
  { verb }: Action,
  item: Item | undefined,
): boolean {
  const serves = (one: Tool) =>
    tools.some((tool) => tool.id === one.id || isNamed(tool.or, one) || isNamed(one.or, tool));
  if (right.every(serves)) return false;
  if (verb === 'drill') return isOtherBit(tools, right);
  if (verb === 'cut') return tools.some(onlyDrills) && !right.some(onlyDrills);
  if (!item || !isFixing(item) || !item.drive) return false;
  const { drive, torque } = item;
  const turning = tools.filter((tool) => tool.drive !== null);
  const fits = turning.some((tool) => tool.drive && toolFitsDrive(tool.drive.value, drive.value) !== 'no');
  const stated = verb === 'tighten' && torque !== null;
  const measures = tools.some(({ range }) => range !== null);
  return turning.length > 0 && (!fits || (stated && !measures));
}

function onlyDrills({ diameter, cutterRadius }: Tool): boolean {
  return diameter !== null && cutterRadius === null;
}

function isOtherBit(tools: readonly Tool[], right: readonly Tool[]): boolean {
  const sizes = (set: readonly Tool[]) => set.flatMap(({ diameter }) => diameter?.value.base ?? []);
  const own = sizes(right);
  const others = sizes(tools);
  return own.length > 0 && others.length > 0 && !others.some((size) => own.includes(size));
}

function isNamed(refs: Tool['or'], { id }: { readonly id: string }): boolean {
  return refs.some(({ value }) => value === id);
}

/** Only torques that the guide states for something are offered: none is invented. */
function torqueQuestion({ verb }: Action, item: Item, torques: ReadonlySet<string>): Question | null {
  const right = itemTorqueWords(item);
  if (verb !== 'tighten' || right === '') return null;
  const others = [...torques].filter((words) => words !== right);
  const byFeel = 'By feel: the guide states no torque for it';
  return question(
    'torque',
    'How tight?',
    right,
    [...others.slice(0, OTHERS - 1), byFeel],
    `The guide states ${right}`,
  );
}

const otherOrders = {
  cross: ['one after another, clockwise', 'first all of one side, then all of the other'],
  circle: ['one after another, clockwise', 'first all of one half, then all of the other'],
  row: ['from one end to the other', 'from both ends to the middle'],
} as const;

function orderQuestion({ verb, inSequence }: Action, item: Item, step: Step | null): Question | null {
  if (verb !== 'tighten' || inSequence || !isFixing(item) || !item.pattern) return null;
  const sides = item.side?.value === 'each' && step?.side?.value !== 'each';
  const order = tighteningOrder(handledEach(item), item.pattern.value);
  if (!order || sides) return null;
  const right = capitalised(orderWords(order, item.pattern.value));
  const others = otherOrders[item.pattern.value].map(capitalised).filter((words) => words !== right);
  return question('order', 'In which order?', right, others, `The order is: ${lowered(right)}`);
}

function sideQuestion(action: Action, item: Item | null, guide: Guide, step: Step | null): Question | null {
  if (!item || !('side' in item) || (step?.side ?? null) !== null) return null;
  const side = item.side?.value ?? null;
  if (side === null || side === 'each') return null;
  const target = findTarget(guide, item.id);
  const { left, right } = guide.words;
  // A name that tells the side asks nothing.
  if (target && tellsSide(plainActionWords(action, target, step, guide), guide)) return null;
  const name = guide.words[side];
  const other = side === 'left' ? right : left;
  return question('side', 'On which side?', capitalised(name), [capitalised(other)], `It is on the ${name}`);
}

/** Whether the side of the vehicle can be read from some words. */
export function tellsSide(text: string, { words: { left, right } }: Pick<Guide, 'words'>): boolean {
  const told = text.toLowerCase().split(/[^\p{L}]+/u);
  return [left, right, 'left', 'right'].some((word) => told.includes(word));
}
