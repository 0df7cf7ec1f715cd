import { button, make } from '../elements.ts';
import { guardsOf } from './stops.ts';

/**
 * Above a step the messages of its section are one line with their signal words and hazards, which opens them.
 * In full they have filled a screen before the section. Messages of the step itself are never folded.
 */
export function showHeld(part: HTMLElement): void {
  part.querySelector(':scope > .bay-held')?.remove();
  part.classList.remove('folded');
  const guards = guardsOf(part);
  if (guards.length === 0) return;
  part.classList.add('folded');
  const line = button('bay-held', '', () => {
    line.setAttribute('aria-expanded', String(!part.classList.toggle('folded')));
  });
  line.setAttribute('aria-expanded', 'false');
  line.append(...guards.map(nameOf));
  part.querySelector(':scope > .part-head')?.after(line);
}

/** The bar of a message, and its hazard. */
function nameOf(message: HTMLElement): HTMLElement {
  const bar = message.querySelector('.signal')?.cloneNode(true);
  const words = [...message.querySelectorAll('.hazard')].map((hazard) => hazard.textContent?.trim() ?? '');
  const name = make('span', message.className, ...(bar ? [bar] : []), make('b', '', words.join('; ')));
  for (const paragraph of name.querySelectorAll('p')) {
    const span = make('span', paragraph.className);
    span.append(...paragraph.childNodes);
    paragraph.replaceWith(span);
  }
  return name;
}
