import type { PickTable, PlanCode } from '../../../src/pages/overview/pick-data.ts';

import { codeDrawing } from './code.ts';
import { sayAtHead } from './sheet-heads.ts';

export type { PickTable };

/** Positions of plans. */
export type Plans = readonly number[];

/** The table that ships with the page; `null` where there is none. */
export function readTable(): PickTable | null {
  const text = document.getElementById('pick_table')?.textContent;
  return text ? JSON.parse(text) : null;
}

/**
 * Shows what stands for some plans and hides the rest; `null` shows everything. They are several while it is open
 * what an inspection finds.
 */
export function showPlans(plans: Plans | null, table: PickTable): void {
  const plan = plans?.length === 1 ? (plans[0] ?? null) : null;
  const root = document.documentElement;
  if (plan === null) delete root.dataset.plan;
  else root.dataset.plan = String(plan);
  for (const element of document.querySelectorAll<HTMLElement>('[data-plans]')) {
    element.hidden = !standsFor(element, plans);
  }
  const numbers = numbersOf(plans);
  for (const element of document.querySelectorAll<HTMLElement>('[data-step]')) {
    const number = numbers.get(element.dataset.step ?? '');
    if (number) element.textContent = String(number);
  }
  // What is open is what an inspection finds: the build is the same in all of them.
  showCodeOf(plans?.[0] ?? null, table);
  showSheetsOf(plans?.[0] ?? null, table);
}

const sheets = new CSSStyleSheet();

/** The head of each printed sheet names the build; without one there is a line to write it on. */
function showSheetsOf(plan: number | null, { statements }: PickTable): void {
  const statement = plan === null ? '' : (statements[plan] ?? '');
  sayAtHead(sheets, 'left', statement && `Build: ${statement}`);
}

function standsFor({ dataset }: HTMLElement, plans: Plans | null): boolean {
  if (plans === null || dataset.plans === undefined) return true;
  const own = dataset.plans.split(' ');
  return plans.some((plan) => own.includes(String(plan)));
}

/** The steps of a plan, or of the page on which all builds stand, are numbered in the order of the page. */
function numbersOf(plans: Plans | null): ReadonlyMap<string, number> {
  const steps = [...document.querySelectorAll<HTMLElement>('article.step')];
  const own = steps.filter((step) => standsFor(step, plans));
  return new Map(own.map(({ id }, index) => [id, index + 1]));
}

/** A print of one build carries the code that leads to it. */
function showCodeOf(plan: number | null, { codes }: PickTable): void {
  const box = document.querySelector<HTMLElement>('.code');
  const code = codes[plan === null ? 0 : plan + 1];
  if (box && code) showCode(box, code);
}

/** Turns the code of a print into another of the same page. */
function showCode(box: HTMLElement, [fragment, modules]: PlanCode): void {
  const { size, path } = codeDrawing(modules);
  const words = box.querySelector('.code-address');
  const address = (words?.textContent ?? '').replace(/#.*$/, '') + fragment;
  if (words) words.textContent = address;
  const drawing = box.querySelector('svg');
  drawing?.setAttribute('viewBox', `0 0 ${size} ${size}`);
  drawing?.setAttribute('aria-label', `QR code of ${address}`);
  drawing?.querySelector('rect')?.setAttribute('width', String(size));
  drawing?.querySelector('rect')?.setAttribute('height', String(size));
  drawing?.querySelector('path')?.setAttribute('d', path);
}
