import type { CribEntry } from '../../../src/pages/rehearsal/crib-data.ts';
import type { LaidOut, Question, RehearsalData, Wait } from '../../../src/pages/rehearsal/rehearsal-data.ts';
import { forgotten } from './lay-out.ts';
import {
  carryRehearsal,
  findRehearsal,
  freshRehearsal,
  keepRehearsal,
  type Rehearsed,
  type Slip,
  withSlip,
} from './record.ts';
import { openSession, type Session, type Task, type Verdict } from './session.ts';
import { listed, type Speaker, speaker } from './words.ts';

/** What is said to a choice, and what follows from it. */
export interface Reply {
  readonly verdict: Verdict;
  /** What is told; empty where there is nothing to tell. */
  readonly words: string;
  /** Steps whose safety messages stop the rehearsal; empty where nobody would have been hurt. */
  readonly stops: readonly string[];
  /** What the step has in hand and does not lie ready. */
  readonly missing: readonly LaidOut[];
  /** What is asked before it is done. */
  readonly questions: readonly Question[];
  /** The longest wait that is not over, in minutes, with the step after which it runs; `null` without any. */
  readonly wait: Wait | null;
}

/** A rehearsal of one build under way: what has been chosen, and what is said to it. */
export interface Course {
  readonly data: RehearsalData;
  readonly plan: number;
  readonly crib: readonly CribEntry[];
  readonly session: Session;
  readonly say: Speaker;
  readonly now: () => Rehearsed;
  /** The positions of what has been done, in that order. */
  readonly done: () => readonly number[];
  /** How what an older edition had, and this one has not, read. */
  readonly dropped: readonly string[];
  /** The edition from which it was taken over; `null` where there was none. */
  readonly from: string | null;
  /** False where the device keeps nothing. */
  readonly isKept: () => boolean;
  readonly layOut: (ids: readonly string[]) => void;
  readonly choose: (task: Task, after?: readonly number[]) => Reply;
  readonly finish: (task: Task) => void;
  /** Lets so many minutes pass in which nothing is done. */
  readonly letPass: (minutes: number) => void;
  readonly slip: (slip: Slip) => void;
  readonly settle: (slip: Slip) => void;
  readonly restart: () => void;
}

/** Opens the rehearsal of a build, where the device has left it. */
export function openCourse(data: RehearsalData, plan: number, crib: readonly CribEntry[]): Course {
  const session = openSession(data, plan);
  const say = speaker(data, plan, session);
  const fresh = freshRehearsal(data, plan);
  const found = findRehearsal(fresh);
  const carried = found && carryRehearsal(found, data, plan, session);
  const isOlder = found !== null && found.fingerprint !== data.fingerprint;
  const byKey = new Map(session.tasks.map(({ key, index }) => [key, index]));
  let now = carried?.rehearsed ?? fresh;
  let kept = true;
  const set = (next: Rehearsed): void => {
    now = next;
    kept = keepRehearsal(now);
  };
  // How much had been done when time was let pass: it is not kept, since asking again does no harm.
  const pauses: { readonly after: number; readonly minutes: number }[] = [];
  const done = () => now.done.flatMap(([key]) => byKey.get(key) ?? []);

  function choose(task: Task, after: readonly number[] = done()): Reply {
    const verdict = session.judge(after, task.index);
    const none: Reply = {
      verdict,
      words: say.verdict(verdict),
      stops: [],
      missing: [],
      questions: [],
      wait: null,
    };
    if (verdict.kind === 'refused') return { ...none, stops: stopsFor(task, verdict) };
    if (verdict.kind !== 'done') return none;
    const isBegun = after.some((index) => session.tasks[index]?.scene === task.scene);
    const missing = isBegun ? [] : forgotten(data, plan, task.step, new Set(now.laid ?? []));
    const isAsked = after.some((index) => session.tasks[index]?.action === task.action);
    const questions = task.action === null || isAsked ? [] : (data.actions[task.action]?.asks ?? []);
    const bare = missing.filter(({ kind }) => kind === 'wear');
    const hurts = task.step !== null && bare.length > 0 && data.steps[task.step]?.hurts;
    return {
      verdict,
      words: missing.length === 0 ? '' : missingWords(task, missing),
      stops: hurts && task.step !== null ? [task.step] : [],
      missing,
      questions,
      wait: isBegun ? null : waitFor(task, after),
    };
  }

  /** What is done meanwhile counts: each step that has come to its end since then, by its likely time. */
  function waitFor({ step }: Task, after: readonly number[]): Wait | null {
    const { minutes = {}, waits = {} } = data.plans[plan] ?? {};
    const left = (step === null ? [] : (waits[step] ?? [])).flatMap((wait) => {
      const end = after.findLastIndex((index) => session.tasks[index]?.step === wait.step);
      if (end < 0) return [];
      const since = after.slice(end + 1).flatMap((index) => session.tasks[index]?.step ?? []);
      const worked = [...new Set(since)].reduce((sum, id) => sum + (minutes[id] ?? 0), 0);
      const passed = pauses.reduce((sum, pause) => (pause.after > end ? sum + pause.minutes : sum), 0);
      return [{ step: wait.step, minutes: wait.minutes - worked - passed }];
    });
    const [longest] = left.filter((wait) => wait.minutes > 0).toSorted((a, b) => b.minutes - a.minutes);
    return longest ?? null;
  }

  function missingWords(task: Task, missing: readonly LaidOut[]): string {
    const names = listed(missing.map(({ id }) => data.names[id]?.one ?? id));
    return `Not laid out: ${names}. It is needed now: ${say.place(task)}. It is fetched.`;
  }

  /** A state that is not seen to hurts where the step that sees to it, or the one that asks for it, says so. */
  function stopsFor(task: Task, verdict: Verdict & { readonly kind: 'refused' }): readonly string[] {
    const needs = new Set(
      verdict.faults.flatMap((fault) => (fault.kind === 'needs-unmet' ? [fault.need] : [])),
    );
    // What is so already needs nothing.
    if (needs.size === 0 || verdict.faults.some(({ kind }) => kind === 'wrong-state')) return [];
    const setters = session.tasks.filter(
      ({ move }) => move?.action.verb === 'set' && needs.has(move.action.target.value),
    );
    const steps = [...setters, task].flatMap(({ step }) => step ?? []);
    return [...new Set(steps)].filter((step) => data.steps[step]?.hurts);
  }

  return {
    data,
    plan,
    crib,
    session,
    say,
    now: () => now,
    done,
    dropped: carried?.dropped ?? [],
    from: isOlder ? found.edition : null,
    isKept: () => kept,
    layOut: (ids) => set({ ...now, laid: [...new Set(ids)] }),
    choose,
    finish: (task) => {
      const used = forgotten(data, plan, task.step, new Set(now.laid ?? []));
      const laid = [...(now.laid ?? []), ...used.map(({ id }) => id)];
      set({ ...now, laid, done: [...now.done, [task.key, say.task(task)]] });
    },
    letPass: (minutes) => pauses.push({ after: done().length, minutes }),
    slip: (slip) => set(withSlip(now, slip)),
    settle: (slip) => set({ ...now, slips: now.slips.filter((one) => one !== slip) }),
    restart: () => {
      pauses.length = 0;
      set(fresh);
    },
  };
}
