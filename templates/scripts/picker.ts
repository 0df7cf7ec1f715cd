import { buildText, readAddress, readBuild, writeAddress } from './address.ts';
import { type PickTable, showPlan } from './plan.ts';

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
}

/** Of a guide without options. */
export const noPicker: Picker = { shown: () => '', words: () => '', show: () => {}, onPick: () => {} };

/**
 * Lets the technician say which vehicle stands in the bay, shows that build alone, and keeps the pick in the
 * link. Without this script the page shows every build and says in words what is for which.
 */
export function startPicker(picker: HTMLElement, state: HTMLElement, table: PickTable): Picker {
  const inputs = [...picker.querySelectorAll('input')];
  const everyBuild = state.textContent ?? '';
  const listeners: (() => void)[] = [];
  /** The choices by option, as far as the technician has made them. */
  let picked: ReadonlyMap<string, string> = new Map();

  const pick = (choices: ReadonlyMap<string, string>): void => {
    picked = choices;
    for (const input of inputs) input.checked = choices.get(input.name) === input.value;
    const plan = planOf(choices, table);
    showPlan(plan, table);
    state.textContent =
      choices.size === 0 ? everyBuild : stateWords(plan, choices, table, state.dataset.unknown ?? '');
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
      if (planOf(picked, table) === null) return '';
      return buildText(new Map(table.options.map((option) => [option, picked.get(option) ?? ''])));
    },
    words: (text) => {
      const plan = planOf(readBuild(text), table);
      return plan === null ? '' : planWords(plan);
    },
    show: (text) => {
      const choices = readBuild(text);
      if (planOf(choices, table) !== null) pickAndLink(choices, readAddress().at);
    },
    onPick: (then) => listeners.push(then),
  };
}

function planOf(choices: ReadonlyMap<string, string>, table: PickTable): number | null {
  return table.builds[table.options.map((option) => choices.get(option)).join(',')] ?? null;
}

function planWords(plan: number): string {
  const lines = [...document.querySelectorAll<HTMLElement>('.plans > li')];
  return lines.find(({ dataset }) => dataset.plans?.split(' ').includes(String(plan)))?.textContent ?? '';
}

function stateWords(
  plan: number | null,
  choices: ReadonlyMap<string, string>,
  table: PickTable,
  unknown: string,
): string {
  if (plan !== null) return 'This page shows one build:';
  if (table.options.some((option) => !choices.has(option))) {
    return 'Make a choice in each line. Until then every build is shown.';
  }
  return unknown;
}
