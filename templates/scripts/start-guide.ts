import { startBay } from './bay/start.ts';
import { noPicker, startPicker } from './picker.ts';
import { readTable } from './plan.ts';

/** What every guide does, on its page and in its one file: which build it shows, and what is ticked in the bay. */
export function startGuide(): void {
  const picker = document.querySelector<HTMLElement>('.pick');
  const state = document.querySelector<HTMLElement>('.pick-state');
  const table = readTable();
  const shown = picker && state && table ? startPicker(picker, state, table) : noPicker;
  startBay(table, shown);
}
