import type { Question, RehearsalData } from '../../../src/pages/rehearsal/rehearsal-data.ts';
import type { Session } from './session.ts';

/** What was chosen wrongly, and what would have been right. */
export interface Slip {
  /** What it was about: what is done next, what is laid out, or a question about an action. */
  readonly about: 'next' | 'lay-out' | Question['about'];
  /** The task by its key; what was not laid out, by its id. */
  readonly key: string;
  /** How much had been done before it. */
  readonly after: number;
  /** The step that explains it; `null` for a proof. */
  readonly step: string | null;
  readonly chosen: string;
  readonly answer: string;
}

/** A rehearsal as far as it has come. */
export interface Rehearsed {
  readonly version: 1;
  readonly guide: string;
  readonly fingerprint: string;
  readonly edition: string;
  /** The builds that it is for, in words. */
  readonly statement: string;
  /** When it was last kept, in milliseconds since 1970: the latest of several is taken up. */
  readonly saved: number;
  /** What lies ready, by id; `null` as long as nothing has been laid out. */
  readonly laid: readonly string[] | null;
  /** What has been done, in that order: the key of each task, and how it read. */
  readonly done: readonly (readonly [key: string, text: string])[];
  readonly slips: readonly Slip[];
}

/** A rehearsal that begins. */
export function freshRehearsal(data: RehearsalData, plan: number): Rehearsed {
  return {
    version: 1,
    guide: data.guide,
    fingerprint: data.fingerprint,
    edition: data.edition,
    statement: data.plans[plan]?.statement ?? '',
    saved: 0,
    laid: null,
    done: [],
    slips: [],
  };
}

/** What of a rehearsal of another edition still reads the same, and what does not. */
export interface CarriedOver {
  readonly rehearsed: Rehearsed;
  /** How what is dropped read. */
  readonly dropped: readonly string[];
}

/**
 * Takes a rehearsal over into this edition: what its step still says, word for word, and what can still be done in
 * that order.
 */
export function carryRehearsal(
  old: Rehearsed,
  data: RehearsalData,
  plan: number,
  { tasks, judge }: Session,
): CarriedOver {
  const byKey = new Map(tasks.map(({ key, index }) => [key, index]));
  const kept: number[] = [];
  const done: Rehearsed['done'][number][] = [];
  const dropped: string[] = [];
  for (const [key, text] of old.done) {
    const index = byKey.get(key);
    if (index !== undefined && judge(kept, index).kind === 'done') {
      kept.push(index);
      done.push([key, text]);
    } else dropped.push(text);
  }
  const lying = new Set(data.plans[plan]?.layOut.map(({ id }) => id));
  const isThere = ({ about, key, step }: Slip) =>
    (about === 'lay-out' ? lying.has(key) : byKey.has(key)) &&
    (step === null || Object.hasOwn(data.steps, step));
  // Whatever stands there, it is so much of what was done.
  const within = (after: number) => Math.min(Math.max(Math.trunc(after), 0), done.length);
  return {
    rehearsed: {
      ...freshRehearsal(data, plan),
      laid: old.laid?.filter((id) => lying.has(id)) ?? null,
      done,
      slips: old.slips.filter(isThere).map((slip) => ({ ...slip, after: within(slip.after) })),
    },
    dropped,
  };
}

/** Notes a slip; the same one is not noted twice. */
export function withSlip(rehearsed: Rehearsed, slip: Slip): Rehearsed {
  const isKnown = rehearsed.slips.some(
    ({ about, key, chosen }) => about === slip.about && key === slip.key && chosen === slip.chosen,
  );
  return isKnown ? rehearsed : { ...rehearsed, slips: [...rehearsed.slips, slip] };
}

const prefix = (guide: string) => `baybook rehearsal ${guide} `;

function keyOf({ guide, fingerprint, statement }: Rehearsed): string {
  return `${prefix(guide)}${fingerprint} ${statement}`;
}

/** What the device has of a rehearsal: of this edition, else the latest of another. Never throws. */
export function findRehearsal(fresh: Rehearsed): Rehearsed | null {
  try {
    const here = read(localStorage.getItem(keyOf(fresh)));
    if (here) return here;
    const others = Object.keys(localStorage).flatMap((key) =>
      key.startsWith(prefix(fresh.guide)) ? (read(localStorage.getItem(key)) ?? []) : [],
    );
    const same = others.filter(
      ({ statement, guide }) => statement === fresh.statement && guide === fresh.guide,
    );
    return same.toSorted((a, b) => b.saved - a.saved)[0] ?? null;
  } catch {
    return null;
  }
}

function read(text: string | null): Rehearsed | null {
  if (text === null) return null;
  try {
    const value: Partial<Rehearsed> | null = JSON.parse(text);
    const isList = (list: unknown): list is readonly unknown[] => Array.isArray(list);
    const isPair = (one: unknown) =>
      isList(one) && one.length === 2 && one.every((part) => typeof part === 'string');
    const sound =
      value?.version === 1 &&
      [value.guide, value.fingerprint, value.edition, value.statement].every(
        (part) => typeof part === 'string',
      ) &&
      typeof value.saved === 'number' &&
      (value.laid === null || (isList(value.laid) && value.laid.every((id) => typeof id === 'string'))) &&
      isList(value.done) &&
      value.done.every(isPair) &&
      isList(value.slips) &&
      value.slips.every(isSlip);
    return sound ? (value as Rehearsed) : null;
  } catch {
    return null;
  }
}

const abouts: ReadonlySet<unknown> = new Set(['next', 'lay-out', 'tool', 'torque', 'order', 'side']);

function isSlip(value: unknown): value is Slip {
  if (typeof value !== 'object' || value === null) return false;
  const { about, key, after, step, chosen, answer }: Partial<Slip> = value;
  return (
    abouts.has(about) &&
    [key, chosen, answer].every((part) => typeof part === 'string') &&
    (step === null || typeof step === 'string') &&
    typeof after === 'number'
  );
}

/** Keeps a rehearsal on the device, in the place of those of other editions; false where the device refuses. */
export function keepRehearsal(rehearsed: Rehearsed): boolean {
  try {
    localStorage.setItem(keyOf(rehearsed), JSON.stringify({ ...rehearsed, saved: Date.now() }));
    for (const key of Object.keys(localStorage)) {
      const other = key.startsWith(prefix(rehearsed.guide)) ? read(localStorage.getItem(key)) : null;
      if (other?.statement === rehearsed.statement && other.fingerprint !== rehearsed.fingerprint)
        localStorage.removeItem(key);
    }
    return true;
  } catch {
    return false;
  }
}
