import type { BayData } from '../../../src/pages/guide/bay-data.ts';
import type { Picker } from '../guide/picker.ts';
import { make, say } from './elements.ts';
import { type Field, wordsOf } from './field.ts';
import type { Keeper } from './kept/keeper.ts';
import { isBegun, type Progress, TICKED } from './kept/progress.ts';
import { verdictOn } from './verdicts.ts';

/** A line of the evidence on the print, and the fields of the page that it stands for. */
interface Line {
  readonly row: HTMLTableRowElement;
  /** What is asked for: "Photograph: the clip seated". */
  readonly asked: string;
  /** The step that asks for it; `null` outside the steps. */
  readonly step: string | null;
  readonly fields: readonly Field[];
  /** The inspection whose finding it is; `null` for what is ticked or typed in. */
  readonly inspection: string | null;
}

/**
 * Fills the lines of the evidence, and keeps the sign-off shut while one is open: that of its step, where a second
 * person signs it, and that of the whole job. A print on which nothing has been ticked yet is left for the pen.
 */
export function holdSignOff(fields: readonly Field[], keeper: Keeper): void {
  const lines = linesOf(fields);
  if (lines.length === 0) return;
  const told = document.querySelector('.bay-evidence');
  const reminders = [...document.querySelectorAll<HTMLElement>('article.step')].map(reminderOf);
  const signed = [...document.querySelectorAll<HTMLElement>('[data-signs]')];
  const draw = (): void => {
    const progress = keeper.now();
    const { found } = keeper.picker;
    for (const line of lines) fill(line, progress, keeper.page, found);
    const open = isBegun(progress) ? lines.filter((line) => isOpen(line, progress, found)) : [];
    const openAt = (step: string | undefined) => open.filter((line) => line.step === step);
    for (const row of signed) shut(row, row.dataset.signs === '' ? open : openAt(row.dataset.signs));
    for (const { step, words } of reminders) {
      const left = progress.ticks.has(step) ? openAt(step) : [];
      say(words, left.length === 0 ? '' : `Evidence still open: ${askedOf(left)}.`);
    }
    if (told) say(told, open.length === 0 ? '' : `Before the sign-off: ${askedOf(open)}.`);
  };
  keeper.onChange(draw);
  keeper.picker.onPick(draw);
}

function linesOf(fields: readonly Field[]): readonly Line[] {
  return [...document.querySelectorAll<HTMLTableRowElement>('[data-evidence-of]')].map((row) => {
    const key = row.dataset.evidenceOf ?? '';
    const own = fields.filter((one) => one.key === key || one.key.startsWith(`${key} `));
    const inspection = / inspection (.+)$/.exec(key)?.[1] ?? null;
    const step = inspection === null ? (own[0]?.step ?? null) : (key.split(' ')[0] ?? null);
    return { row, asked: wordsOf(row.cells[1]), step, fields: own, inspection };
  });
}

/** What another build asks for stands in nobody's way. */
function isOpen({ row, fields, inspection }: Line, { values }: Progress, found: Picker['found']): boolean {
  if (row.hidden) return false;
  if (inspection !== null) return found(inspection) === '';
  return fields.some((field) => !isSeenTo(field, values));
}

/** Ticked, or a reading that is as it should be. */
function isSeenTo({ key, input }: Field, values: Progress['values']): boolean {
  return values.has(key) && verdictOn(input) === '';
}

function askedOf(lines: readonly Line[]): string {
  const told = lines.slice(0, MOST).map(({ asked }) => asked);
  const more = lines.length - told.length;
  return [...told, ...(more > 0 ? [`and ${more} more`] : [])].join('; ');
}

/** How many lines are told one by one. */
const MOST = 3;

function fill(
  { row, fields, inspection }: Line,
  { values }: Progress,
  { words }: BayData,
  foundBy: Picker['found'],
): void {
  const typed = fields.flatMap(({ key, input }) => {
    const text = values.get(key)?.text ?? '';
    if (text === '' || text === TICKED) return [];
    const { side } = input.dataset;
    return side === 'left' || side === 'right' ? `${words[side]} ${text}` : text;
  });
  const found = row.querySelector('.found');
  const outcome = inspection === null ? '' : foundBy(inspection);
  if (found) say(found, inspection === null ? typed.join(', ') : outcome.replaceAll('-', ' '));
  for (const [index, tick] of [...row.querySelectorAll('.tick')].entries()) {
    const field = fields[index];
    const isSeen = inspection === null ? field !== undefined && isSeenTo(field, values) : outcome !== '';
    tick.classList.toggle('seen-to', isSeen);
  }
}

/** A line that must not be signed says why where the name would stand. */
function shut(row: HTMLElement, left: readonly Line[]): void {
  row.classList.toggle('shut', left.length > 0);
  const name = row.querySelector('.write');
  if (name) say(name, left.length === 0 ? '' : `Not to be signed yet: ${openWords(left.length)}`);
}

/** A line under the ticks of a step, for what is still open when it is ticked. */
function reminderOf(step: HTMLElement): { readonly step: string; readonly words: HTMLElement } {
  const words = make('p', 'bay-open');
  words.setAttribute('role', 'status');
  step.querySelector('.bay-ticks')?.after(words);
  return { step: step.id, words };
}

function openWords(count: number): string {
  return count === 1 ? 'one line of the evidence is open' : `${count} lines of the evidence are open`;
}
