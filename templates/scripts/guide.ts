import { readAddress, writeAddress } from './address.ts';
import { startBay } from './bay/start.ts';
import { type PickTable, readTable, showPlan } from './plan.ts';
import { startPrintChecks } from './print-check.ts';

/**
 * The page of a guide: lets the technician say which vehicle stands in the bay, shows that build alone, and
 * keeps the pick in the link. Without this script the page shows every build and says in words what is for which.
 */
function start(picker: HTMLElement, state: HTMLElement, table: PickTable): void {
  const inputs = [...picker.querySelectorAll('input')];
  const everyBuild = state.textContent ?? '';
  /** The choices by option, as far as the technician has made them. */
  let picked: ReadonlyMap<string, string> = new Map();

  const pick = (choices: ReadonlyMap<string, string>): void => {
    picked = choices;
    for (const input of inputs) input.checked = choices.get(input.name) === input.value;
    const plan = table.builds[table.options.map((option) => choices.get(option)).join(',')] ?? null;
    showPlan(plan, table);
    state.textContent = choices.size === 0 ? everyBuild : stateWords(plan, choices, table);
  };

  picker.hidden = false;
  picker.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    pick(new Map([...picked, [target.name, target.value]]));
    writeAddress(picked, null);
  });
  picker.querySelector('.every-build')?.addEventListener('click', () => {
    pick(new Map());
    writeAddress(picked, null);
  });
  window.addEventListener('hashchange', () => {
    const { build, at } = readAddress();
    if (build) pick(build);
    else writeAddress(picked, at);
  });
  const { build, at } = readAddress();
  if (build) pick(build);
  if (build && at) document.getElementById(at)?.scrollIntoView();
}

function stateWords(plan: number | null, choices: ReadonlyMap<string, string>, table: PickTable): string {
  if (plan !== null) return 'This page shows one build:';
  if (table.options.some((option) => !choices.has(option))) {
    return 'Make a choice in each line. Until then every build is shown.';
  }
  return 'This guide knows no vehicle that is built like this. Every build is shown.';
}

const picker = document.querySelector<HTMLElement>('.pick');
const state = document.querySelector<HTMLElement>('.pick-state');
const table = readTable();
if (picker && state && table) start(picker, state, table);
startPrintChecks();
startBay(table);
