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

/** Writes what the record tells of the vehicle where it is typed in for a print, and with that on all prints. */
export function fillCover(lines: readonly Line[]): void {
  for (const { key, text } of lines) {
    const input = document.querySelector<HTMLInputElement>(`input[data-fact="${CSS.escape(key)}"]`);
    if (!input || input.value === text) continue;
    input.value = text;
    input.dispatchEvent(new Event('input', { bubbles: true }));
  }
}
