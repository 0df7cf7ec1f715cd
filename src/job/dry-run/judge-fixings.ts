import { type Fault, type Ledger, tell } from './ledger.ts';
import type { Lot } from './lot.ts';
import { isInPlace } from './next-state.ts';
import { noPlan, type PlanSet } from './plan-set.ts';
import type { Change } from './play.ts';
import type { Deed, Scene, Script } from './script.ts';
import { sharesSide } from './shares-side.ts';
import { type Standing, standingOf } from './standing.ts';
import type { Thing } from './thing.ts';

/** A bolt with all that lies on it, on one side. */
interface Stack {
  readonly bolt: Lot;
  readonly pieces: readonly Lot[];
  /** The bolt, and the nut where it has one. */
  readonly fixings: readonly Lot[];
}

/** What is gone through once more: stacks, coats, and what must never be loose together. */
interface Bench {
  readonly ledger: Ledger;
  readonly standing: Standing;
  readonly stacks: readonly Stack[];
  /** For each supply, the plans in which it is on and nothing has yet gone in with it. */
  readonly wet: Map<string, PlanSet>;
}

/**
 * Holds what was played against what is said of its fasteners: all that lies on a bolt is there when it is
 * tightened, what goes on its thread was put on, and what may not be loose together never is.
 */
export function judgeFixings(
  changes: readonly Change[],
  ledger: Ledger,
  scenes: readonly Scene[] = ledger.script.scenes,
): void {
  const { script } = ledger;
  if (!hasJoints(script)) return;
  const bench: Bench = { ledger, standing: standingOf(script), stacks: stacksOf(script), wet: new Map() };
  const byMove = new Map<Deed, Change[]>();
  for (const change of changes) byMove.set(change.move, [...(byMove.get(change.move) ?? []), change]);
  for (const scene of scenes) {
    if (scene.set !== noPlan) judgeScene(scene, byMove, bench);
  }
}

/** Whether anything is said of the fasteners of a guide that is held against the whole of what was played. */
export function hasJoints({ lots }: Script): boolean {
  return lots.some(({ thing }) => thing?.coat || thing?.oneByOne || thing?.stack.length);
}

function judgeScene(scene: Scene, byMove: ReadonlyMap<Deed, readonly Change[]>, bench: Bench): void {
  const used = new Set<string>();
  for (const move of scene.moves) {
    if (move.action.verb === 'apply') {
      const id = move.action.target.value;
      bench.wet.set(id, (bench.wet.get(id) ?? noPlan) | move.set);
    }
    const here = byMove.get(move) ?? [];
    for (const change of here) bench.standing.change(change);
    for (const change of here) {
      judgeCoat(change, used, bench);
      judgeStacks(change, bench);
      judgeOthersTight(change, bench);
    }
  }
  // What is put on in one step and not used in it is still wet in the next.
  for (const id of used) bench.wet.set(id, noPlan);
  if (scene.left) judgeLeftLoose(scene, byMove, bench);
}

function fixingOf({ thing }: Lot): Thing | null {
  return thing?.fixing ? thing : null;
}

function stacksOf({ lots }: Script): readonly Stack[] {
  return lots.flatMap((bolt) => {
    const stack = fixingOf(bolt)?.stack ?? [];
    if (stack.length === 0) return [];
    const ids = new Set(stack);
    const pieces = lots.filter((lot) => ids.has(lot.id) && lot !== bolt && sharesSide(bolt.side, lot.side));
    return [
      {
        bolt,
        pieces,
        fixings: [bolt, ...pieces.filter((lot) => fixingOf(lot)?.threaded || fixingOf(lot)?.torqued)],
      },
    ];
  });
}

/** When a joint is tight, every piece of it is in: what is missing now has to be put in by undoing it. */
function judgeStacks(change: Change, { stacks, standing, ledger }: Bench): void {
  for (const { bolt, pieces, fixings } of stacks) {
    const isOne = fixings.includes(change.lot);
    if (isOne && change.after === 'tight') {
      const closed = fixings.reduce((set, lot) => set & standing.where(lot, isInPlace), change.set);
      for (const piece of pieces) {
        const judged = fixings.includes(piece) && change.move.action.verb === 'tighten' ? change.set : closed;
        const there = ledger.script.lotSets[piece.index] ?? noPlan;
        const missing = judged & there & ~standing.where(piece, isInPlace);
        tellOf(piece, change, { kind: 'stack-open', item: bolt.id, part: piece.id }, missing, ledger);
      }
    }
    if (pieces.includes(change.lot) && !isOne && isInPlace(change.before) && !isInPlace(change.after)) {
      const tight = fixings.reduce(
        (set, lot) => set & standing.where(lot, (state) => state === 'tight'),
        change.set,
      );
      tellOf(bolt, change, { kind: 'still-held', item: change.lot.id, by: bolt.id }, tight, ledger);
    }
  }
}

/** What goes on a thread is on it when the fastener goes in. */
function judgeCoat(change: Change, used: Set<string>, { wet, ledger }: Bench): void {
  const coat = fixingOf(change.lot)?.coat;
  if (!coat || isInPlace(change.before) || !isInPlace(change.after)) return;
  used.add(coat);
  const dry = change.set & ~(wet.get(coat) ?? noPlan);
  tellOf(change.lot, change, { kind: 'coat-missing', item: change.lot.id, supply: coat }, dry, ledger);
}

const isLoose = (state: string) => state === 'off' || state === 'loosened' || state === 'started';

/** While one of them is loose, the others that hold the same thing stay tight. */
function judgeOthersTight(change: Change, { standing, ledger }: Bench): void {
  const one = fixingOf(change.lot);
  if (!one?.oneByOne || !isLoose(change.after) || change.before !== 'tight') return;
  for (const other of ledger.script.lots) {
    if (other === change.lot || !fixingOf(other)?.oneByOne) continue;
    if (!other.holds.some((held) => change.lot.holds.includes(held))) continue;
    const together = change.set & standing.where(other, isLoose);
    tellOf(other, change, { kind: 'loose-together', item: change.lot.id, by: other.id }, together, ledger);
  }
}

/** Several of a kind are done one after the other: each is tight, or its replacement is, before the step ends. */
function judgeLeftLoose(
  scene: Scene,
  byMove: ReadonlyMap<Deed, readonly Change[]>,
  { standing, ledger }: Bench,
): void {
  for (const change of scene.moves.flatMap((move) => byMove.get(move) ?? [])) {
    const one = fixingOf(change.lot);
    if (!one?.oneByOne || change.lot.count < 2 || change.before !== 'tight') continue;
    const replaced = change.lot.replacedBy.reduce((set, index) => {
      const lot = ledger.script.lots[index];
      return lot ? set | standing.where(lot, (state) => state === 'tight') : set;
    }, noPlan);
    const loose = change.set & standing.where(change.lot, isLoose) & ~replaced;
    const told = { kind: 'loose-together', item: change.lot.id, by: change.lot.id } as const;
    tellOf(change.lot, change, told, loose, ledger);
  }
}

type Kept = 'at' | 'action' | 'step' | 'side';
type Told = Fault extends infer F ? (F extends unknown ? Omit<F, Kept> : never) : never;

function tellOf(cause: Lot, { move, lot }: Change, what: Told, set: PlanSet, ledger: Ledger): void {
  const place = { at: move.action.at, action: move.action, step: move.step, side: lot.side };
  tell(ledger, cause, { ...what, ...place } as Fault, set);
}
