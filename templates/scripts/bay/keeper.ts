import type { BayData } from '../../../src/pages/bay-data.ts';
import { carryOver } from './carry-over.ts';
import { findProgress, keepProgress, keyOf } from './device.ts';
import { fresh, type Progress } from './progress.ts';

/** Holds the progress of the page, keeps each change on the device, and has everything drawn again. */
export interface Keeper {
  readonly now: () => Progress;
  readonly change: (edit: (progress: Progress) => Progress) => void;
  /** Has something drawn now, and after each change. */
  readonly onChange: (draw: (progress: Progress, problem: string | null) => void) => void;
}

/** @param asked what each field of the page asks for, by its key */
export function openKeeper(page: BayData, asked: ReadonlyMap<string, string>): Keeper {
  const draws: ((progress: Progress, problem: string | null) => void)[] = [];
  const found = findProgress(page);
  let progress = found.here ?? (found.other ? carryOver(found.other, page, asked) : fresh(page));
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
    now: () => progress,
    change: (edit) => {
      progress = { ...edit(progress), saved: Date.now() };
      problem = keepProgress(progress, page);
      draw();
    },
    onChange: (one) => {
      draws.push(one);
      one(progress, problem);
    },
  };
}
