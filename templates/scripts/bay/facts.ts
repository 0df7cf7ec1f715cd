import { make } from './elements.ts';
import { shownWords } from './field.ts';

/** The dialog in which the facts of an item stand over the step that names it. */
export function startFacts(main: HTMLElement, dialog: HTMLDialogElement, on: () => boolean): void {
  const place = dialog.querySelector('div');
  const page = dialog.querySelector('a');
  dialog.querySelector('.bay-shut')?.addEventListener('click', () => dialog.close());
  main.addEventListener('click', (event) => {
    const link =
      event.target instanceof Element ? event.target.closest<HTMLAnchorElement>('.step a.item') : null;
    const row = link ? document.getElementById(decodeURIComponent(link.hash.slice(1))) : null;
    if (!link || !row || !place || !page || !on()) return;
    event.preventDefault();
    const own = row.querySelector<HTMLAnchorElement>('a.item');
    place.replaceChildren(...factsOf(row));
    page.hidden = !own;
    if (own) page.href = own.href;
    dialog.showModal();
  });
}

/** A row of a list, as lines, with the picture of the thing. */
function factsOf(row: HTMLElement): readonly HTMLElement[] {
  // One size of a set stands in the row of the set.
  const whole = row.closest('tr') ?? row;
  const name = whole.querySelector('th');
  const title = name?.cloneNode(true);
  if (!(title instanceof Element)) return [];
  const details = [...title.querySelectorAll('.detail, .only')];
  for (const detail of details) detail.remove();
  const looks = row.querySelector('.own')?.cloneNode(true);
  const size = row === whole ? '' : shownWords(row.querySelector('.item, span'));
  const lines = [
    ...details.map((detail) => shownWords(detail)),
    ...[...whole.querySelectorAll('td:not(.box, .first)')].map((cell) => shownWords(cell)),
  ];
  const heading = [shownWords(title), size].filter((words) => words !== '').join(', ');
  return [
    make('h2', '', heading),
    ...(looks instanceof HTMLElement ? [looks] : []),
    ...lines.filter((words) => words !== '').map((words) => make('p', '', words)),
  ];
}
