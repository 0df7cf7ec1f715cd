import { make } from '../bay/elements.ts';
import type { Picker } from './picker.ts';

/**
 * Lets each step tell the vehicle as it is when the step is done, worked out when it is opened from the one table that
 * says what is so from which step until which.
 */
export function tellAfterSteps({ onPick }: Picker): void {
  const course = document.querySelector<HTMLTableElement>('.course table');
  if (!course) return;
  const steps = [...document.querySelectorAll<HTMLElement>('article.step')];
  const places = new Map(steps.map(({ id }, index) => [id, index]));
  for (const [index, step] of steps.entries()) {
    const details = document.createElement('details');
    details.className = 'bench';
    const lines = make('dl', 'lines');
    details.append(make('summary', '', course.dataset.after ?? ''), lines);
    const tell = () => {
      if (details.open)
        lines.replaceChildren(...[...course.tBodies].flatMap((state) => lineOf(state, index, places)));
    };
    details.addEventListener('toggle', tell);
    onPick(tell);
    const body = step.querySelector('.step-body');
    body?.insertBefore(details, body.querySelector(':scope > :is(.inspection, .stop, .sign)'));
  }
}

/** What is in a state after the step at a place; nothing where nothing is, as far as the build is known. */
function lineOf(
  state: HTMLTableSectionElement,
  place: number,
  places: ReadonlyMap<string, number>,
): readonly HTMLElement[] {
  const [head, ...rows] = state.rows;
  const words = make('dd', '');
  for (const row of rows) {
    const [from = 0, until = places.size] = [...row.querySelectorAll('a')].map(
      ({ hash }) => places.get(hash.slice(1)) ?? 0,
    );
    const what = row.cells[0];
    if (!what || row.hidden || place < from || place >= until) continue;
    if (words.hasChildNodes()) words.append('; ');
    words.append(...what.cloneNode(true).childNodes);
  }
  return words.hasChildNodes() ? [make('div', '', make('dt', '', head?.textContent ?? ''), words)] : [];
}
