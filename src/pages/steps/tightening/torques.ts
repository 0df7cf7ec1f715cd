import { crowfootUse } from '../../../job/index.ts';
import type { Step } from '../../../model/guide.ts';
import type { Fixing, Item } from '../../../model/item.ts';
import { orderWords, tighteningOrder } from '../../../trade/pattern.ts';
import { type StatedFriction, stretchesGreased } from '../../../trade/torque.ts';
import { formatTorque, greatestTorque, type TorqueSpec } from '../../../units/torque.ts';
import type { GuideContext } from '../../frame/context.ts';
import { always, shownWhen } from '../../frame/plans.ts';
import type { TorqueView } from '../step-views.ts';
import { torqueCheck } from '../typed-check.ts';
import { type Tightened, tightenedIn } from './tightening.ts';
import { wrenchSetting } from './wrench-setting.ts';

/** A tightening with those of its passes that are made without another fastener coming between. */
interface Turn {
  readonly tightened: Tightened;
  readonly passes: TorqueSpec;
  /** Its place in the sequence, from 1; `null` outside one. */
  readonly turn: number | null;
  /** Which of its passes comes first, from 0. */
  readonly pass: number;
}

/** The torques that a step sets, in the order in which they are set: a sequence goes pass by pass. */
export function torquesOf(step: Step, context: GuideContext): readonly TorqueView[] {
  return turnsOf(tightenedIn(step, context)).map((turn) => torqueView(turn, context));
}

function turnsOf(all: readonly Tightened[]): readonly Turn[] {
  const told = new Set<string>();
  return all.flatMap((tightened): readonly Turn[] => {
    const passes = tightened.item.torque?.value ?? [];
    const { inSequence } = tightened.action;
    if (!inSequence) return passes.length === 0 ? [] : [{ tightened, passes, turn: null, pass: 0 }];
    if (told.has(inSequence.sequence)) return [];
    told.add(inSequence.sequence);
    return turnsOfSequence(all.filter(({ action }) => action.inSequence?.sequence === inSequence.sequence));
  });
}

/** All fasteners through their first pass, then all that have one through their second, and so on. */
function turnsOfSequence(members: readonly Tightened[]): readonly Turn[] {
  const specs = members.map((tightened) => ({ tightened, passes: tightened.item.torque?.value ?? [] }));
  const rounds = Math.max(0, ...specs.map(({ passes }) => passes.length));
  return Array.from({ length: rounds }, (_, pass) =>
    specs.flatMap(({ tightened, passes }) => {
      const own = passes[pass];
      return own ? [{ tightened, passes: [own] as const, pass }] : [];
    }),
  )
    .flat()
    .map((one, index) => ({ ...one, turn: index + 1 }));
}

function torqueView({ tightened, passes, turn, pass }: Turn, context: GuideContext): TorqueView {
  const { item, action, whens, count, sides } = tightened;
  const all = count * sides;
  const narrowest = whens.at(-1);
  const order = item.pattern && tighteningOrder(count, item.pattern.value);
  const crowfoot = crowfootUse(action, context.guide);
  return {
    ...(narrowest ? shownWhen(context, { value: narrowest }) : always),
    // What is typed in is kept under it: each pass of a sequence has a line of its own.
    id: pass === 0 ? item.id : `${item.id} ${pass + 1}`,
    changed: context.marks.items.has(item.id),
    item: countedNoun(item, all, turn),
    torque: formatTorque(passes),
    thread: threadWords(item),
    setting: crowfoot && wrenchSetting(passes, crowfoot),
    pattern: order && item.pattern ? orderWords(order, item.pattern.value) : null,
    turn: turn === null ? null : String(turn),
    coat: item.coat ? (context.guide.items.get(item.coat.value)?.noun.singular ?? null) : null,
    leftHand: item.leftHand,
    check: torqueCheck(passes, crowfoot),
  };
}

/** "4 M8 flange nuts"; in a sequence, whose lines are numbered, "M8 flange nuts (4)". */
function countedNoun({ noun }: Pick<Item, 'noun'>, count: number, turn: number | null): string {
  if (count === 1) return noun.singular;
  return turn === null ? `${count} ${noun.plural}` : `${noun.plural} (${count})`;
}

/** For which state of the thread the torque is, and what must not be done to it. */
function threadWords({ torque, thread, grade, friction }: Fixing): string | null {
  if (friction) return `for a thread that is ${frictionWords(friction.value)}`;
  const greatest = torque && greatestTorque(torque.value);
  if (!greatest || !thread || !grade) return null;
  return stretchesGreased(greatest, thread.value, grade.value)
    ? 'for a dry thread: oil or grease on it would let this torque stretch the bolt'
    : null;
}

function frictionWords({ words, k }: StatedFriction): string {
  return /\d/.test(words) ? `at a nut factor of ${k.toFixed(2)}` : `${words} (nut factor ${k.toFixed(2)})`;
}
