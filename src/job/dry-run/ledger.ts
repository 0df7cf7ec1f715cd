import type { StateName, Violation } from '../../model/violation.ts';
import type { Span } from '../../source/span.ts';
import type { Lot } from './lot.ts';
import type { Move, Script } from './script.ts';

type Distribute<T> = T extends unknown ? Omit<T, 'sides' | 'witness'> : never;

/** A fault on one side in one build; the witness is worked out when all builds have been played. */
export type Fault = Distribute<Violation> & { readonly side: 'left' | 'right' | null };

/** What is known of every lot while a guide is played for one build. Lists are by the lots' positions. */
export interface Ledger {
  readonly script: Script;
  /** For each condition of the script, whether it holds for this build. */
  readonly truth: readonly boolean[];
  readonly state: StateName[];
  /** The move that brought each lot into its state; `null` while it is as it began. */
  readonly last: (Move | null)[];
  /** Fasteners that were loosened before they came off: they are only started when they go back. */
  readonly loosenedFirst: boolean[];
  readonly bonded: boolean[];
  /** Lots of which a fault has been told: what follows from it is not told again. */
  readonly told: boolean[];
  /** Amount of each supply that was used, in base units. */
  readonly used: number[];
  readonly usedAt: Span[][];
  readonly stepsBegun: Set<string>;
  readonly faults: Fault[];
}

/** Whether a lot is on this build. */
export function isHere(lot: Lot, { script, truth }: Ledger): boolean {
  const when = script.lotWhens[lot.index] ?? -1;
  return when < 0 || truth[when] === true;
}

/** The state of a lot. */
export function stateOf(lot: Lot, ledger: Ledger): StateName {
  return ledger.state[lot.index] ?? lot.start;
}

/** The lots at some positions that are on this build. */
export function lotsAt(indexes: readonly number[], ledger: Ledger): readonly Lot[] {
  return indexes.flatMap((index) => {
    const lot = ledger.script.lots[index];
    return lot && isHere(lot, ledger) ? [lot] : [];
  });
}

/** Everything as it is before the work begins. */
export function openLedger(script: Script, truth: readonly boolean[]): Ledger {
  const { lots } = script;
  return {
    script,
    truth,
    state: lots.map((lot) => lot.start),
    last: lots.map(() => null),
    loosenedFirst: lots.map(() => false),
    bonded: lots.map(() => false),
    told: lots.map(() => false),
    used: lots.map(() => 0),
    usedAt: lots.map(() => []),
    stepsBegun: new Set(),
    faults: [],
  };
}

/** Tells of a fault, unless one has been told of the lot that causes it. */
export function tell(ledger: Ledger, cause: Lot, told: Fault): void {
  if (ledger.told[cause.index]) return;
  ledger.told[cause.index] = true;
  ledger.faults.push(told);
}
