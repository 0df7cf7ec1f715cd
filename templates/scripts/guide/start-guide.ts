import type { Keeper } from '../bay/kept/keeper.ts';
import { startBay } from '../bay/start.ts';
import { tellAfterSteps } from './after-step.ts';
import { offerLargeDrawings } from './large-drawings.ts';
import { noPicker, startPicker } from './picker.ts';
import { readTable } from './plan.ts';

/**
 * What every guide does, on its page and in its one file: which build it shows, and what is ticked in the bay.
 * Returns what keeps the ticks; `null` where a shop's own layout has no place for them.
 */
export function startGuide(): Keeper | null {
  const picker = document.querySelector<HTMLElement>('.pick');
  const state = document.querySelector<HTMLElement>('.pick-state');
  const table = readTable();
  const shown = picker && state && table ? startPicker(picker, state, table) : noPicker;
  tellAfterSteps(shown);
  offerLargeDrawings();
  return startBay(table, shown);
}
