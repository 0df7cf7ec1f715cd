import type { BayData, BayStep } from '../../../../src/pages/guide/bay-data.ts';
import { button, make } from '../elements.ts';
import type { Keeper } from '../kept/keeper.ts';
import { type Part, type Progress, partsToTick } from '../kept/progress.ts';
import { doneWords } from '../ticks.ts';
import { numberOf, type Stop, stopsOf, titleOf } from './stops.ts';

/** Fills the list of steps of the build, each with what is done of it, and whatever else the screen can show. */
export function fillList(list: HTMLElement, main: HTMLElement, { page, progress, here, go }: ListData): void {
  const known = new Map(page.steps.map((step) => [step.id, step]));
  list.replaceChildren(
    ...stopsOf(main).map((stop) => {
      const done = stop.kind === 'step' ? progressWords(known.get(stop.id), progress, page) : '';
      const current = stop.id === here;
      const line = button(stop.kind === 'step' ? 'bay-line' : 'bay-line section', '', () => go(stop));
      line.append(
        make('b', '', numberOf(stop) ?? ''),
        make('span', '', stop.kind === 'opening' ? 'Before the work' : titleOf(stop)),
        make('small', '', [done, current ? 'you are here' : ''].filter((words) => words !== '').join(', ')),
      );
      if (current) line.setAttribute('aria-current', 'step');
      line.classList.toggle('done', done === '✓ done');
      return line;
    }),
  );
}

interface ListData {
  readonly page: BayData;
  readonly progress: Progress;
  /** The id of the stop that is shown. */
  readonly here: string;
  readonly go: (stop: Stop) => void;
}

/** What of a step is done: one side or all of it; empty where nothing is. */
export function progressWords(step: BayStep | undefined, { ticks }: Progress, { words }: BayData): string {
  const ticked = step ? [...(ticks.get(step.id) ?? [])] : [];
  const [first] = ticked;
  if (!step || !first) return '';
  return !step.sides || ticked.length > 1 ? '✓ done' : doneWords(first, words);
}

/** What of a step is still to be ticked, the left side before the right; `null` where all of it is. */
export function partToTick({ id, kind }: Stop, { page, now }: Keeper): Part | null {
  const step = kind === 'step' ? page.steps.find((one) => one.id === id) : undefined;
  if (!step) return null;
  const ticked = now().ticks.get(id);
  return partsToTick(step).find((part) => !ticked?.has(part)) ?? null;
}
