import type { RecordedWork } from '../../../src/vehicle/record.ts';
import type { Keeper } from '../bay/kept/keeper.ts';
import type { Progress } from '../bay/kept/progress.ts';
import type { KeptRecord } from './kept.ts';
import { findings } from './page-facts.ts';

/** What is ticked and typed in on the page, as a record has it. */
export function workOn({ page, picker }: Keeper, progress: Progress, since: string): RecordedWork {
  return {
    revision: page.revision,
    fingerprint: page.fingerprint,
    edition: page.edition,
    guides: page.guides.map((one) => ({ ...one })),
    since,
    build: progress.build,
    buildWords: picker.words(progress.build),
    found: findings(),
    steps: progress.steps.map((step) => ({ ...step, done: [...(progress.ticks.get(step.id) ?? [])] })),
    values: [...progress.values].map(([key, value]) => ({ key, ...value })),
    waits: [...progress.waits].map(([step, begun]) => ({ step, begun })),
  };
}

/** The other way round: what the page shows where work goes on. */
export function progressOf({ guide, work }: KeptRecord): Progress | null {
  const last = work.at(-1);
  if (!last) return null;
  return {
    guide: guide.id,
    title: guide.title,
    edition: last.edition,
    fingerprint: last.fingerprint,
    build: last.build,
    saved: 0,
    steps: last.steps.map(({ id, title, fingerprint }) => ({ id, title, fingerprint })),
    ticks: new Map(
      last.steps.flatMap(({ id, done }) => (done.length > 0 ? [[id, new Set(done)] as const] : [])),
    ),
    values: new Map(last.values.map(({ key, ...value }) => [key, value])),
    waits: new Map(last.waits.map(({ step, begun }) => [step, begun])),
    changed: null,
  };
}

/** What of work tells whether anything was done. */
function contentOf({ build, steps, values, waits, found }: RecordedWork): string {
  return JSON.stringify([build, steps.map(({ id, done }) => [id, done]), values, waits, found]);
}

/**
 * The work of a record with what stands on the page now. Work that was done under another edition of the guide stays as
 * it was; the work under this one begins with the first thing that is done, not with looking.
 *
 * @param seen what the page showed before anything was done on it
 */
export function withWork(
  work: readonly RecordedWork[],
  now: RecordedWork,
  seen: RecordedWork,
): RecordedWork[] {
  const last = work.at(-1);
  if (last?.fingerprint === now.fingerprint) return [...work.slice(0, -1), { ...now, since: last.since }];
  return contentOf(now) === contentOf(seen) && last ? [...work] : [...work, now];
}
