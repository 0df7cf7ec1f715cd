import { startBay } from './bay/start.ts';
import { noPicker, startPicker } from './picker.ts';
import { readTable } from './plan.ts';
import { startPrintChecks } from './print-check.ts';

/** The page of a guide: which build it shows, the checks of its prints, and what is ticked in the bay. */
const picker = document.querySelector<HTMLElement>('.pick');
const state = document.querySelector<HTMLElement>('.pick-state');
const table = readTable();
const shown = picker && state && table ? startPicker(picker, state, table) : noPicker;
startPrintChecks();
startBay(table, shown);
