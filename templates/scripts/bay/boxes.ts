import type { BayData } from '../../../src/pages/guide/bay-data.ts';
import { make } from './elements.ts';
import { type Field, field, wordsOf } from './field.ts';

/** Gives each row of the gather list a box, for when the thing lies ready. */
export function gatherBoxes(): readonly Field[] {
  // Old browsers know no `:has`, and would stop here.
  return [...document.querySelectorAll('.gather .box > .tick')].flatMap((tick) => {
    const [cell, row] = [tick.parentElement, tick.closest('tr')];
    if (!cell) return [];
    row?.closest('table')?.classList.add('ticking');
    const [thing, amount] = [wordsOf(row?.querySelector('th')), wordsOf(row?.querySelector('.amount'))];
    const asked = amount === '' ? thing : `${thing}: ${amount}`;
    const id = row?.id || row?.querySelector('.size')?.id;
    return field(box(cell, 'Laid out', asked), `gather ${id}`, asked);
  });
}

/** Gives each line that proves the job a box, for when it holds. */
export function proofBoxes(): readonly Field[] {
  const lines = [...document.querySelectorAll<HTMLElement>('.prove li')];
  return lines
    .filter((line) => line.querySelector('li') === null)
    .map((line) => {
      const asked = wordsOf(line);
      line.classList.add('ticking');
      return field(box(line, 'Proved', asked), `prove ${asked}`, asked);
    });
}

/** Gives each photograph and setting that is evidence a box, or one for each side. */
export function evidenceBoxes({ words }: Pick<BayData, 'words'>): readonly Field[] {
  return [...document.querySelectorAll<HTMLElement>('[data-evidence]')].flatMap((line) => {
    const asked = wordsOf(line);
    const place = line.querySelector<HTMLElement>('.evidence-line') ?? line;
    line.classList.add('ticking');
    if (!line.dataset.sides) return field(box(place, 'Seen to', asked), line.dataset.evidence ?? '', asked);
    // Each box goes in front of those before it.
    const [right, left] = (['right', 'left'] as const).map((side) => {
      const sided = `${asked}, ${words[side]} side`;
      const input = box(place, 'Seen to', sided);
      input.after(make('span', 'bay-side', words[side]));
      return field(input, `${line.dataset.evidence} ${side}`, sided);
    });
    return [left, right].filter((one) => one !== undefined);
  });
}

/** Gives each time that a step is done a box. */
export function roundBoxes(): readonly Field[] {
  return [...document.querySelectorAll<HTMLElement>('.round')].map((round) => {
    const asked = wordsOf(round);
    round.classList.add('ticking');
    return field(box(round, 'Done, time', asked), `round ${asked}`, asked);
  });
}

function box(place: HTMLElement, done: string, asked: string): HTMLInputElement {
  const input = make('input', '');
  input.type = 'checkbox';
  input.setAttribute('aria-label', `${done}: ${asked}`);
  place.prepend(make('label', 'bay-box', input));
  return input;
}
