import type { Guide, Step } from '../../model/guide.ts';
import type { Action, Verb } from '../../model/inline.ts';
import type { Item, Side } from '../../model/item.ts';
import type { Build, When } from '../../model/when.ts';
import { actionRule, targetKinds } from '../actions.ts';
import { findTarget } from '../target.ts';
import { actionsOf, placedIn, provesOf, stepWhens } from '../walk.ts';
import { holds, whenKey } from '../when.ts';
import { type Lot, lotsOf } from './lot.ts';

/** One action on one side of the vehicle, or on all that it names. */
export interface Move {
  readonly action: Action;
  readonly step: Step | null;
  readonly lots: readonly Lot[];
  /** Positions in {@link Script.whens} of what must hold, beyond its step's. */
  readonly whens: readonly number[];
}

/** A step as it is played. */
export interface Scene {
  readonly step: Step | null;
  readonly whens: readonly number[];
  /** Conditions and measures that the step asks for. */
  readonly needs: readonly Lot[];
  readonly moves: readonly Move[];
}

/** A guide made ready for playing: ids looked up and conditions numbered once, for all builds. */
export interface Script {
  readonly lots: readonly Lot[];
  readonly scenes: readonly Scene[];
  readonly whens: readonly When[];
  /** For each lot, the position of its item's condition; -1 where it is on every build. */
  readonly lotWhens: readonly number[];
  /** For each lot, the conditions and measures that its item asks for. */
  readonly lotNeeds: readonly (readonly Lot[])[];
  /** False where an action could not be understood: what follows from it is then not known either. */
  readonly sound: boolean;
}

/** Makes a guide ready for playing. */
export function scriptOf(guide: Guide): Script {
  const lots = lotsOf(guide);
  const byId = new Map<string, Lot[]>();
  for (const one of lots) byId.set(one.id, [...(byId.get(one.id) ?? []), one]);
  const whens = numbered();
  const needsOf = (refs: readonly { readonly value: string }[]) =>
    refs.flatMap((ref) => byId.get(ref.value) ?? []);
  let sound = true;
  const movesOf = (step: Step | null, placed: ReturnType<typeof actionsOf>, outer: number): Move[] =>
    passesOf(step).flatMap((pass) =>
      placed.flatMap(({ node, whens: inner }) => {
        if (!isUnderstood(node, guide)) {
          sound = false;
          return [];
        }
        const targets = byId.get(node.target.value) ?? [];
        const here = targets.filter((lot) => pass === null || lot.side === null || lot.side === pass);
        return [{ action: node, step, lots: here, whens: inner.slice(outer).map(whens.number) }];
      }),
    );
  const scenes: Scene[] = guide.sections.flatMap((section) =>
    section.steps.map((step) => {
      const own = stepWhens(step);
      const moves = movesOf(step, actionsOf(step), own.length);
      return { step, whens: own.map(whens.number), needs: needsOf(step.needs), moves };
    }),
  );
  const proved = placedIn(provesOf(guide)).flatMap(({ node, block, whens: inner }) =>
    node.type === 'action' && node.verb === 'measure' ? [{ node, block, whens: inner }] : [],
  );
  const proving: Scene = { step: null, whens: [], needs: [], moves: movesOf(null, proved, 0) };
  return {
    lots,
    scenes: [...scenes, proving],
    lotWhens: lots.map(({ item }) => (item?.when ? whens.number(item.when.value) : -1)),
    lotNeeds: lots.map(({ item }) => (item ? needsOf(item.needs) : [])),
    whens: whens.all,
    sound,
  };
}

/** For each numbered condition, whether it holds for a build. */
export function truthOf(script: Script, build: Build): readonly boolean[] {
  return script.whens.map((when) => holds(when, build));
}

/** A step that is done on each side is played on the left, then on the right. */
function passesOf(step: Step | null): readonly ('left' | 'right' | null)[] {
  const side: Side | null = step?.side?.value ?? null;
  return side === 'each' ? ['left', 'right'] : [side];
}

/** Whether an action names something that it can be done to; where it does not, another rule has told so. */
function isUnderstood(action: Action, guide: Guide): boolean {
  if (action.unknown.has('when')) return false;
  const target = findTarget(guide, action.target.value);
  if (!target) return false;
  const kinds = target.kind === 'item' ? kindsOf(target.item) : [target.kind];
  return actionRule(action.verb).on.some((kind) => kinds.includes(kind));
}

function kindsOf(item: Item) {
  return item.unknown.has('when') ? [] : targetKinds(item);
}

/** Gives each wording of a condition one number. */
function numbered() {
  const numbers = new Map<string, number>();
  const all: When[] = [];
  const number = (when: When): number => {
    const key = whenKey(when);
    const known = numbers.get(key);
    if (known !== undefined) return known;
    numbers.set(key, all.length);
    all.push(when);
    return all.length - 1;
  };
  return { all, number };
}

/** The first move after another that does one of some things to a lot. */
export function laterMove(script: Script, after: Move, lot: Lot, verbs: readonly Verb[]): Move | null {
  const moves = script.scenes.flatMap((scene) => scene.moves);
  const rest = moves.slice(moves.indexOf(after) + 1);
  return rest.find((move) => verbs.includes(move.action.verb) && move.lots.includes(lot)) ?? null;
}
