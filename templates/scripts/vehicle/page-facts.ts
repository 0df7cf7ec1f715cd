import type { BayData } from '../../../src/pages/guide/bay-data.ts';
import { parseRecheck } from '../../../src/units/recheck.ts';
import { wordsOf } from '../bay/field.ts';
import type { Keeper } from '../bay/kept/keeper.ts';
import type { KeptRecord } from './kept.ts';

type Line = KeptRecord['intake'][number];

/** What is asked of every vehicle that comes in, whatever the job touches. */
const always: readonly Line[] = [
  { key: 'lights', label: 'Warning lights that are lit', text: '' },
  { key: 'codes', label: 'Fault codes that are stored', text: '' },
];

/** What is looked over before this job, on the build that the page shows. */
export function intakeLines({ intake }: BayData): readonly Line[] {
  const shown = intake.filter(({ plans }) => isShown(plans));
  return [...always, ...shown.map(({ id, name }) => ({ key: `part ${id}`, label: name, text: '' }))];
}

/** Who signs what, on the build that the page shows: each step with a second person, then the whole job. */
export function signatureLines({ steps }: Pick<BayData, 'steps'>): KeptRecord['signatures'] {
  const rows = [...document.querySelectorAll<HTMLElement>('[data-signs]')].filter(({ hidden }) => !hidden);
  return rows.map(({ dataset: { signs = '' } }) => {
    const step = steps.find(({ id }) => id === signs);
    const what = step ? `Second person: ${step.title}` : 'The whole job';
    return { key: signs, what, name: '', on: '' };
  });
}

/** Whether a line of the evidence is still open, so that nobody may sign for it. */
export function isShut(key: string): boolean {
  return document.querySelector(`[data-signs="${CSS.escape(key)}"]`)?.classList.contains('shut') ?? false;
}

/** What inspections have found, each with what was asked. */
export function findings(): KeptRecord['work'][number]['found'] {
  return [...document.querySelectorAll<HTMLInputElement>('input[data-inspection]:checked')].map((input) => ({
    asked: wordsOf(input.closest('fieldset')?.querySelector('legend')),
    text: wordsOf(input.closest('label')),
  }));
}

/** What is looked at again, with the day or the distance on this vehicle, as far as its intake tells. */
export function recheckLines(
  { page }: Pick<Keeper, 'page'>,
  record: Pick<KeptRecord, 'vehicle' | 'rechecks' | 'begun'>,
): KeptRecord['rechecks'] {
  const from = new Date(record.begun);
  const odometer = record.vehicle.find(({ key }) => key === 'odometer')?.text ?? '';
  return page.rechecks
    .filter(({ plans }) => isShown(plans))
    .map(({ what, detail, when, terms }) => {
      const before = record.rechecks.find((one) => one.what === what && one.when === when);
      const { on = '', by = '', found = '' } = before ?? {};
      return { what, detail, when, due: dueWords(terms, odometer, from), on, by, found };
    });
}

/** "at 84500 km or by 2027-01-02"; empty where nothing can be said. */
export function dueWords(terms: string, odometer: string, from: Date): string {
  const read = parseRecheck(terms);
  if (!read.ok) return '';
  const [, digits = '', unit = ''] =
    /^\s*([\d.,\s\u00a0\u202f]+?)\s*(km|mi|miles|h)?\s*$/i.exec(odometer) ?? [];
  // A vehicle's odometer counts whole ones: points, commas and spaces part the thousands.
  const counted = /^\d{1,3}(?:[.,\s]\d{3})*$|^\d+$/.test(digits.trim())
    ? Number(digits.replace(/\D/g, ''))
    : null;
  const counts = unit.toLowerCase().replace('miles', 'mi');
  const told = read.recheck.flatMap(({ amount, unit: term }) => {
    if (term === 'km' || term === 'mi' || term === 'h')
      return counted !== null && counts === term ? `at ${counted + amount} ${term}` : [];
    return `by ${dayAfter(from, amount, term)}`;
  });
  return told.join(' or ');
}

/** A month or a year after the 31st ends with its own last day. */
function dayAfter(from: Date, amount: number, unit: 'day' | 'week' | 'month' | 'year'): string {
  const [year, month, day] = [from.getFullYear(), from.getMonth(), from.getDate()];
  const days = unit === 'day' ? amount : unit === 'week' ? 7 * amount : 0;
  const months = unit === 'month' ? amount : unit === 'year' ? 12 * amount : 0;
  const last = new Date(Date.UTC(year, month + months + 1, 0)).getUTCDate();
  return new Date(Date.UTC(year, month + months, Math.min(day, last) + days)).toISOString().slice(0, 10);
}

function isShown(plans: string | null): boolean {
  const { plan } = document.documentElement.dataset;
  return plans === null || plan === undefined || plans.split(' ').includes(plan);
}
