import type { PickTable } from '../../src/pages/overview/pick-data.ts';

export type { PickTable };

/** The table that ships with the page; `null` where there is none. */
export function readTable(): PickTable | null {
  const text = document.getElementById('pick_table')?.textContent;
  return text ? JSON.parse(text) : null;
}

/** Shows what stands for a plan and hides the rest; `null` shows everything. */
export function showPlan(plan: number | null, table: PickTable): void {
  const root = document.documentElement;
  if (plan === null) delete root.dataset.plan;
  else root.dataset.plan = String(plan);
  for (const element of document.querySelectorAll<HTMLElement>('[data-plans]')) {
    const plans = element.dataset.plans?.split(' ') ?? [];
    element.hidden = plan !== null && !plans.includes(String(plan));
  }
  for (const element of document.querySelectorAll<HTMLElement>('[data-step]')) {
    const numbers = table.numbers[element.dataset.step ?? ''];
    const number = plan === null ? numbers?.every : numbers?.plans[plan];
    if (number) element.textContent = String(number);
  }
}
