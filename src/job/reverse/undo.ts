import type { Step } from '../../model/guide.ts';
import type { Action, Ref, Verb } from '../../model/inline.ts';
import type { Item } from '../../model/item.ts';
import type { When } from '../../model/when.ts';
import { actionRule, isFixing } from '../actions/actions.ts';
import { actionsOf, type Placed, stepWhens } from '../actions/walk.ts';

/** An action that puts back what another took away, with the conditions on it beyond its step's. */
export interface Undone {
  readonly action: Action;
  readonly whens: readonly When[];
}

/** Why an action cannot simply be undone. */
export interface Unsound {
  readonly kind: 'for-good' | 'one-time' | 'lost' | 'replaced';
  readonly action: Action;
  /** What takes the old one's place, where something does. */
  readonly replacement: Item | null;
}

/** What must be known of the whole strip-down to undo one of its steps. */
export interface Undoing {
  readonly items: ReadonlyMap<string, Item>;
  /** Fasteners that an earlier step loosened: the reversal of that step tightens them. */
  readonly loosenedEarlier: ReadonlySet<string>;
  /** Items that are discarded or given to the owner. */
  readonly lost: ReadonlySet<string>;
  /** Items that some step of the strip-down takes out. */
  readonly removed: ReadonlySet<string>;
  /** Items that some written step puts in: what takes an old one's place there is no business of a reversal. */
  readonly fitted: ReadonlySet<string>;
}

/** Undoes the actions of a step, last first; all tightening stands at the end, after the last refit. */
export function undo(
  step: Step,
  undoing: Undoing,
): { readonly undone: readonly Undone[]; readonly unsound: readonly Unsound[] } {
  const { items, loosenedEarlier } = undoing;
  const undone: Undone[] = [];
  const tightened: Undone[] = [];
  const unsound: Unsound[] = [];
  const outer = stepWhens(step).length;
  const replacing = new Map([...items.values()].flatMap((item) => replacedBy(item)));

  for (const { node, whens } of net(actionsOf(step)).toReversed()) {
    const item = items.get(node.target.value) ?? null;
    const replacement = replacing.get(node.target.value) ?? null;
    const problem = unsoundness(node, item, replacement, undoing);
    if (problem) unsound.push({ kind: problem, action: node, replacement });
    const verb = problem ? null : inverse(node, item, replacement, undoing);
    if (!verb) continue;
    const put = (verb === 'fit' || verb === 'tighten') && replacement ? replacement : item;
    const back: Undone = { action: turned(node, verb, put), whens: whens.slice(outer) };
    if (verb === 'tighten') tightened.push(back);
    else undone.push(back);
    const started = (verb === 'refit' || verb === 'fit') && put && isFixing(put) && put.torque !== null;
    const told = tightened.some(({ action }) => action.target.value === put?.id);
    if (started && !told && !loosenedHere(step, node.target) && !loosenedEarlier.has(node.target.value)) {
      tightened.push({ ...back, action: turned(node, 'tighten', put) });
    }
  }
  return { undone: [...undone, ...inOrder(tightened)], unsound };
}

/** What is tightened as a sequence keeps its order, and is not reversed. */
function inOrder(tightened: readonly Undone[]): readonly Undone[] {
  const own = tightened.filter(({ action }) => action.inSequence);
  const forwards = own.toSorted(
    (a, b) => (a.action.inSequence?.place ?? 0) - (b.action.inSequence?.place ?? 0),
  );
  return tightened.map((one) => (one.action.inSequence ? (forwards.shift() ?? one) : one));
}

/** What is left of a step once everything that it undoes itself has gone: a trial fit leaves nothing. */
function net(actions: readonly Placed<Action>[]): readonly Placed<Action>[] {
  const kept: Placed<Action>[] = [];
  for (const placed of actions) {
    const earlier = kept.findLastIndex(({ node }) => node.target.value === placed.node.target.value);
    const last = kept[earlier];
    if (last && actionRule(last.node.verb).undoneBy.includes(placed.node.verb)) kept.splice(earlier, 1);
    else kept.push(placed);
  }
  return kept;
}

function replacedBy(item: Item): readonly (readonly [string, Item])[] {
  return 'replaces' in item && item.replaces ? [[item.replaces.value, item]] : [];
}

function unsoundness(
  action: Action,
  item: Item | null,
  replacement: Item | null,
  { lost, removed, fitted }: Undoing,
): Unsound['kind'] | null {
  const gone = action.verb === 'discard' || action.verb === 'hand-over';
  const oneTime = item !== null && isFixing(item) && !item.reuse;
  if (gone) return replacement || oneTime ? null : 'lost';
  if (actionRule(action.verb).forGood) return 'for-good';
  // Turned loose, it is used up; where it comes out as well, that is told there.
  if (action.verb === 'loosen' && oneTime && !removed.has(action.target.value)) return 'one-time';
  // What is not put back by turning a screw is put in by a step of its own, or the reversal asks for one.
  if (action.verb === 'remove' && replacement && !isFixing(replacement)) {
    return fitted.has(replacement.id) ? null : 'replaced';
  }
  if (action.verb !== 'remove' || lost.has(action.target.value)) {
    return action.verb === 'remove' && oneTime && !replacement ? 'one-time' : null;
  }
  if (replacement) return null;
  return oneTime ? 'one-time' : null;
}

function inverse(
  { verb, target }: Action,
  item: Item | null,
  replacement: Item | null,
  { lost, removed }: Undoing,
): Verb | null {
  switch (verb) {
    case 'loosen':
      // A new one with no torque is tight once it is in.
      if (replacement) return isFixing(replacement) && replacement.torque ? 'tighten' : null;
      return item !== null && isFixing(item) && !item.reuse && removed.has(target.value) ? null : 'tighten';
    case 'remove':
      if (replacement) return isFixing(replacement) ? 'fit' : null;
      if (lost.has(target.value)) return null;
      return item?.kind === 'kit' ? 'fit' : 'refit';
    case 'apply':
      return item?.kind === 'supply' && item.temporary ? 'take-off' : null;
    case 'set':
      return item?.kind === 'condition' && item.stays ? null : 'clear';
    // What is applied again needs an amount that nobody stated.
    case 'take-off':
    case 'discard':
    case 'hand-over':
      return null;
    default:
      return actionRule(verb).undoneBy[0] ?? null;
  }
}

/**
 * The inverse action with its source's place. The item's own tools serve all its actions; where it names none,
 * the tools that took it off put it back.
 */
function turned(source: Action, verb: Verb, item: Item | null): Action {
  return {
    ...source,
    verb,
    target:
      item && item.id !== source.target.value ? { value: item.id, at: source.target.at } : source.target,
    with: item && item.with.length > 0 ? [] : source.with,
    say: null,
    amount: null,
    on: [],
    over: null,
    to: null,
    trial: null,
    when: null,
  };
}

function loosenedHere(step: Step, target: Ref): boolean {
  return actionsOf(step).some(({ node }) => node.verb === 'loosen' && node.target.value === target.value);
}
