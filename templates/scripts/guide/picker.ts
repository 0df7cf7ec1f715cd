import { buildText, readAddress, readBuild, writeAddress } from './address.ts';
import { type PickTable, type Plans, showPlans } from './plan.ts';

/** The build that the page shows, as other parts of the page ask for it and set it. */
export interface Picker {
  /** As a link names it; empty while every build is shown. */
  readonly shown: () => string;
  /** How the page describes a build that a link names; empty for one that the guide does not know. */
  readonly words: (build: string) => string;
  /** Shows the build that a link would name, where the guide knows it. */
  readonly show: (build: string) => void;
  /** Has something done after each pick. */
  readonly onPick: (then: () => void) => void;
  /** What an inspection has found; empty while it is open. */
  readonly found: (inspection: string) => string;
  /** Has something done after the technician has said what was found. */
  readonly onFind: (then: () => void) => void;
}

/** Of a guide without options. */
export const noPicker: Picker = {
  shown: () => '',
  words: () => '',
  show: () => {},
  onPick: () => {},
  found: () => '',
  onFind: () => {},
};

/**
 * Lets the technician say which vehicle stands in the bay, shows that build alone, and keeps the pick in the
 * link. Without this script the page shows every build and says in words what is for which.
 */
export function startPicker(picker: HTMLElement, state: HTMLElement, table: PickTable): Picker {
  const inputs = [...picker.querySelectorAll('input')];
  const findings = [...document.querySelectorAll<HTMLInputElement>('input[data-inspection]')];
  const everyBuild = state.textContent ?? '';
  const listeners: (() => void)[] = [];
  const finders: (() => void)[] = [];
  /** The choices by option, as far as the technician has made them. */
  let picked: ReadonlyMap<string, string> = new Map();

  const pick = (choices: ReadonlyMap<string, string>): void => {
    picked = choices;
    for (const input of inputs) input.checked = choices.get(input.name) === input.value;
    for (const input of findings) input.checked = choices.get(input.dataset.inspection ?? '') === input.value;
    const plans = plansOf(choices, table);
    showPlans(plans, table);
    state.textContent =
      choices.size === 0 ? everyBuild : stateWords(plans, choices, table, state.dataset.unknown ?? '');
    for (const then of listeners) then();
  };
  const pickAndLink = (choices: ReadonlyMap<string, string>, at: string | null): void => {
    pick(choices);
    writeAddress(picked, at);
    if (at) document.getElementById(at)?.scrollIntoView();
  };

  picker.hidden = false;
  picker.addEventListener('change', ({ target }) => {
    if (!(target instanceof HTMLInputElement)) return;
    pickAndLink(new Map([...picked, [target.name, target.value]]), null);
  });
  for (const input of findings) {
    input.addEventListener('change', () => {
      pickAndLink(new Map([...picked, [input.dataset.inspection ?? '', input.value]]), null);
      for (const then of finders) then();
    });
  }
  picker.querySelector('.every-build')?.addEventListener('click', () => pickAndLink(new Map(), null));
  window.addEventListener('hashchange', () => {
    const { build, at } = readAddress();
    if (build) pick(build);
    else writeAddress(picked, at);
  });
  const { build, at } = readAddress();
  if (build) pick(build);
  if (build && at) document.getElementById(at)?.scrollIntoView();

  return {
    shown: () => {
      if (plansOf(picked, table) === null) return '';
      return buildText(new Map(table.options.map((option) => [option, picked.get(option) ?? ''])));
    },
    words: (text) => {
      const [plan] = plansOf(readBuild(text), table) ?? [];
      return plan === undefined ? '' : planWords(plan);
    },
    show: (text) => {
      const choices = readBuild(text);
      if (plansOf(choices, table) !== null) pickAndLink(choices, readAddress().at);
    },
    onPick: (then) => listeners.push(then),
    found: (inspection) => picked.get(inspection) ?? '',
    onFind: (then) => finders.push(then),
  };
}

/** The plans that these choices leave, where the build is settled; an inspection may be open. */
function plansOf(choices: ReadonlyMap<string, string>, table: PickTable): Plans | null {
  const settled = table.options.map((option) => choices.get(option));
  const isOpen = table.options.some((option) => !choices.has(option) && !table.inspections.includes(option));
  const plans = Object.entries(table.builds).flatMap(([key, plan]) => {
    const values = key.split(',');
    return settled.every((value, index) => value === undefined || value === values[index]) ? [plan] : [];
  });
  return isOpen || plans.length === 0 ? null : [...new Set(plans)];
}

function planWords(plan: number): string {
  const lines = [...document.querySelectorAll<HTMLElement>('.plans > li')];
  return lines.find(({ dataset }) => dataset.plans?.split(' ').includes(String(plan)))?.textContent ?? '';
}

function stateWords(
  plans: Plans | null,
  choices: ReadonlyMap<string, string>,
  table: PickTable,
  unknown: string,
): string {
  if (plans !== null) return 'This page shows one build:';
  if (table.options.some((option) => !choices.has(option) && !table.inspections.includes(option))) {
    return 'Make a choice in each line. Until then every build is shown.';
  }
  return unknown;
}
