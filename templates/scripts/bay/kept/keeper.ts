import type { BayData } from '../../../../src/pages/guide/bay-data.ts';
import type { Picker } from '../../guide/picker.ts';
import { carryOver } from './carry-over.ts';
import { findProgress, keepProgress, keyOf } from './device.ts';
import { fresh, isBegun, type Progress } from './progress.ts';

/** Holds the progress of the page, keeps each change on the device, and has everything drawn again. */
export interface Keeper {
  readonly page: BayData;
  /** Which build the page shows. */
  readonly picker: Picker;
  readonly now: () => Progress;
  readonly change: (edit: (progress: Progress) => Progress) => void;
  /** Progress of this guide as it fits this edition of it. */
  readonly fitted: (progress: Progress) => Progress;
  /** Has something drawn now, and after each change. */
  readonly onChange: (draw: (progress: Progress, problem: string | null) => void) => void;
}

/** @param asked what each field of the page asks for, by its key */
export function openKeeper(page: BayData, asked: ReadonlyMap<string, string>, picker: Picker): Keeper {
  const fitted = (progress: Progress) =>
    progress.fingerprint === page.fingerprint ? progress : carryOver(progress, page, asked);
  const draws: ((progress: Progress, problem: string | null) => void)[] = [];
  const found = findProgress(page);
  let progress = found.here ?? (found.other ? fitted(found.other) : fresh(page));
  let problem = found.problem;
  const draw = (): void => {
    for (const one of draws) one(progress, problem);
  };
  // Another tab has ticked something: show that, and do not write over it.
  window.addEventListener('storage', ({ key }) => {
    if (key !== null && key !== keyOf(page)) return;
    const other = findProgress(page);
    progress = other.here ?? fresh(page);
    problem = other.problem;
    draw();
  });
  return {
    page,
    picker,
    now: () => progress,
    change: (edit) => {
      const edited = edit(progress);
      // What is ticked belongs to the build that it was begun on, until the technician says otherwise.
      const settled = isBegun(progress) || edited.build !== progress.build;
      const build = settled && edited.build !== '' ? edited.build : picker.shown();
      progress = { ...edited, build, saved: Date.now() };
      problem = keepProgress(progress, page);
      draw();
    },
    fitted,
    onChange: (one) => {
      draws.push(one);
      one(progress, problem);
    },
  };
}
