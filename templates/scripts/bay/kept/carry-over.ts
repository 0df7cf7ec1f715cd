import type { BayData } from '../../../../src/pages/guide/bay-data.ts';
import { type Change, fresh, isBegun, type Progress, TICKED, type Value } from './progress.ts';

/**
 * Progress of another edition of the guide, for the one on this page. What a step was ticked for must read as
 * it read then: of a step that has changed nothing is kept, nor any proof of the whole, and the change is told.
 *
 * @param asked what each field of this page asks for, by its key
 */
export function carryOver(old: Progress, page: BayData, asked: ReadonlyMap<string, string>): Progress {
  const before = new Map(old.steps.map((step) => [step.id, step]));
  const same = new Set(
    page.steps
      .filter(({ id, fingerprint }) => before.get(id)?.fingerprint === fingerprint)
      .map(({ id }) => id),
  );
  const allSame = same.size === page.steps.length && same.size === old.steps.length;
  const stands = ([key, value]: readonly [string, Value]) =>
    asked.get(key) === value.asked && (value.proof ? allSame : value.step === null || same.has(value.step));
  const ofSame = <T>(map: ReadonlyMap<string, T>) => new Map([...map].filter(([id]) => same.has(id)));
  const dropped = [...old.values].filter((entry) => !stands(entry)).map(([, value]) => value);
  return {
    ...fresh(page),
    build: old.build,
    ticks: ofSame(old.ticks),
    waits: ofSame(old.waits),
    values: new Map([...old.values].filter(stands)),
    changed: isBegun(old) ? { edition: old.edition, lines: changes(old, page, same, dropped) } : null,
  };
}

function changes(
  old: Progress,
  page: BayData,
  same: ReadonlySet<string>,
  dropped: readonly Value[],
): readonly Change[] {
  const known = new Set(old.steps.map(({ id }) => id));
  const here = new Set(page.steps.map(({ id }) => id));
  const words = (step: string, what: string, title: string): Change => ({ step, words: `${what}: ${title}` });
  return [
    ...page.steps
      .filter(({ id }) => !same.has(id))
      .map(({ id, title }) => words(id, known.has(id) ? 'Changed' : 'New', title)),
    ...old.steps.filter(({ id }) => !here.has(id)).map(({ title }) => words('', 'No longer there', title)),
    ...dropped.map(({ asked, text }) =>
      text === TICKED
        ? words('', 'To be ticked again', asked)
        : words('', 'To be taken again', `${asked} (was ${text})`),
    ),
  ];
}
