import type { Block } from '../../model/block.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { When } from '../../model/when.ts';
import type { Span, Written } from '../../source/span.ts';
import type { TradeWords } from '../../trade/words.ts';
import type { Estimate } from '../../units/estimate.ts';
import { base } from '../../units/quantity.ts';
import { findTarget } from '../actions/target.ts';
import { actionsOf } from '../actions/walk.ts';
import { actionWords } from '../words/phrase.ts';
import { derivedBlocks } from './reverse-text.ts';
import { type Undone, type Unsound, undo } from './undo.ts';

/** What is to be reversed. */
interface Reversal {
  /** The strip-down, in the order in which it was done. */
  readonly steps: readonly Step[];
  /** What guards all of it; the first derived step repeats its safety messages. */
  readonly guards: readonly Block[];
  readonly items: ReadonlyMap<string, Item>;
  readonly templates: ReadonlyMap<string, CutTemplate>;
  readonly words: TradeWords;
  /** Items that some written step puts in. */
  readonly fitted: ReadonlySet<string>;
  /** Hands-on time of the whole refit; `null` takes each step's from the strip-down. */
  readonly time: Written<Estimate> | null;
  readonly when: Written<When> | null;
  /** Ids of steps beside these that the author leaves out. */
  readonly leftOut: readonly string[];
  /** The line that asks for it. */
  readonly at: Span;
}

/** A step of the strip-down that cannot simply be undone, and why. */
export interface ReverseProblem extends Unsound {
  readonly step: Step;
}

/**
 * The refit as real steps: in reverse order, with inverse actions and the tools, helpers, torques, safety
 * messages and refit notes of their sources. Steps with nothing to undo vanish. Undoing one by one is sound
 * where every operation can be undone by itself (Homem de Mello and Sanderson, 1990); what cannot is told.
 */
export function reverseSteps(reversal: Reversal): {
  readonly steps: readonly Step[];
  readonly problems: readonly ReverseProblem[];
} {
  const { steps, items } = reversal;
  const problems: ReverseProblem[] = [];
  const lost = new Set(
    steps
      .flatMap(actionsOf)
      .flatMap(({ node }) =>
        node.verb === 'discard' || node.verb === 'hand-over' ? [node.target.value] : [],
      ),
  );
  const removed = new Set(
    steps.flatMap(actionsOf).flatMap(({ node }) => (node.verb === 'remove' ? [node.target.value] : [])),
  );
  const derived = steps.toReversed().flatMap((step) => {
    const loosenedEarlier = loosenedIn(steps.slice(0, steps.indexOf(step)));
    const { undone, unsound } = undo(step, {
      items,
      loosenedEarlier,
      lost,
      removed,
      fitted: reversal.fitted,
    });
    problems.push(...unsound.map((problem) => ({ ...problem, step })));
    return undone.length === 0 ? [] : [derivedStep(step, undone, reversal)];
  });
  return { steps: guarded(timed(derived, reversal.time), reversal.guards), problems };
}

function loosenedIn(steps: readonly Step[]): ReadonlySet<string> {
  const actions = steps.flatMap(actionsOf);
  return new Set(actions.flatMap(({ node }) => (node.verb === 'loosen' ? [node.target.value] : [])));
}

function derivedStep(step: Step, undone: readonly Undone[], reversal: Reversal): Step {
  const title = step.refitTitle ?? titleOf(step, undone, reversal);
  const cleared = undone.flatMap(({ action }) => (action.verb === 'clear' ? [action.target.value] : []));
  return {
    ...step,
    id: `refit-${step.id}`,
    title: [{ type: 'text', value: title, at: null }],
    titleText: title,
    refitTitle: null,
    times: null,
    until: null,
    wait: null,
    // What had to come first is undone last.
    after: reversal.steps.flatMap(({ id, after }) =>
      after.some(({ value }) => value === step.id) ? [{ value: `refit-${id}`, at: reversal.at }] : [],
    ),
    // A reading that the strip-down waited for says nothing about the refit; a state of the vehicle does.
    needs: step.needs.filter(
      ({ value }) => reversal.items.get(value)?.kind === 'condition' && !cleared.includes(value),
    ),
    when: both(reversal.when, step.when),
    blocks: derivedBlocks(step, undone, reversal.at),
    origins: [
      ...step.origins,
      { kind: 'reverse', step: step.id, leftOut: reversal.leftOut, at: reversal.at },
    ],
    at: reversal.at,
  };
}

/** The sentence of the first action that every build does, or else of the first. */
function titleOf(step: Step, undone: readonly Undone[], { items, templates, words }: Reversal): string {
  const first = undone.find(({ whens }) => whens.length === 0) ?? undone[0];
  const target = first && findTarget({ items, templates }, first.action.target.value);
  if (!first || !target) return step.titleText;
  return actionWords(first.action, target, { stepSide: step.side?.value ?? null, starts: true, words });
}

/** A time that is stated for the whole refit is shared out as the strip-down's was. */
function timed(steps: readonly Step[], time: Written<Estimate> | null): readonly Step[] {
  if (!time) return steps;
  const likely = steps.map((step) => step.time?.value.likely ?? 0);
  const sum = likely.reduce<number>((a, b) => a + b, 0);
  const { least, likely: usual, most } = time.value;
  return steps.map((step, index) => {
    const share = sum > 0 ? (likely[index] ?? 0) / sum : 1 / steps.length;
    const part = (minutes: number) => base<'time'>(minutes * share);
    return {
      ...step,
      time: { at: time.at, value: { least: part(least), likely: part(usual), most: part(most) } },
    };
  });
}

function guarded(steps: readonly Step[], guards: readonly Block[]): readonly Step[] {
  const [first, ...rest] = steps;
  if (!first) return steps;
  return [
    { ...first, blocks: [...guards.filter(({ type }) => type === 'message'), ...first.blocks] },
    ...rest,
  ];
}

function both(one: Written<When> | null, other: Written<When> | null): Written<When> | null {
  if (!one || !other) return one ?? other;
  return { value: { kind: 'and', of: [one.value, other.value], at: other.at }, at: other.at };
}
