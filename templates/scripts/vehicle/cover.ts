import { say } from '../bay/elements.ts';
import { wordsOf } from '../bay/field.ts';
import type { KeptRecord } from './kept.ts';

type Line = KeptRecord['vehicle'][number];

/** The lines that tell the vehicle, as the cover of the print has them. */
export function vehicleLines(): readonly Line[] {
  return [...document.querySelectorAll<HTMLElement>('.cover th[data-fact]')].map((head) => ({
    key: head.dataset.fact ?? '',
    label: wordsOf(head),
    text: '',
  }));
}

/** Writes what the record tells of the vehicle on the cover of a print, and where it is typed in for the job sheet. */
export function fillCover(lines: readonly Line[]): void {
  for (const { key, text } of lines) {
    const name = CSS.escape(key);
    const cell = document.querySelector(`.cover th[data-fact="${name}"] + td`);
    if (cell) say(cell, text);
    const input = document.querySelector<HTMLInputElement>(`input[data-fact="${name}"]`);
    if (!input || input.value === text) continue;
    input.value = text;
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }
}
