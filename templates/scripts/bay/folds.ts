import { readAddress } from '../guide/address.ts';
import { button, isOfBuild, say } from './elements.ts';
import { shownWords, wordsOf } from './field.ts';
import type { Keeper } from './kept/keeper.ts';

/** A list that may be folded, with what belongs to it, and what its line says. */
interface Fold {
  readonly at: readonly [HTMLElement, ...HTMLElement[]];
  readonly words: () => string;
}

/**
 * Folds the lists that stand before the work to a line each, so that the first step is near: a touch opens one, a link
 * into it too, and the browser's search where it can. Safety messages are not among them. On the bay screen and on paper
 * all of them are open.
 */
export function startFolds(main: HTMLElement, { onChange, picker }: Keeper): void {
  const lines = foldsOf(main).map(({ at, words }) => {
    const line = button('bay-fold', '', () => show(line.getAttribute('aria-expanded') !== 'true'));
    const show = (isOpen: boolean): void => {
      line.setAttribute('aria-expanded', String(isOpen));
      for (const one of at) fold(one, !isOpen);
    };
    show(false);
    for (const one of at) one.addEventListener('beforematch', () => show(true));
    at[0].before(line);
    const draw = () => say(line, words());
    onChange(draw);
    picker.onPick(draw);
    return { at, show };
  });
  /** Opens the list in which a place of the page stands, so that the browser finds it there. */
  const open = (id: string | null): HTMLElement | null => {
    const place = id === null ? null : document.getElementById(id);
    const line = place ? lines.find(({ at }) => at.some((one) => one.contains(place))) : undefined;
    line?.show(true);
    return line ? place : null;
  };
  document.addEventListener('click', ({ target }) => {
    const link = target instanceof Element ? target.closest<HTMLAnchorElement>('a[href^="#"]') : null;
    if (link) open(readAddress(link.hash).at);
  });
  const arrive = () => open(readAddress().at)?.scrollIntoView();
  window.addEventListener('hashchange', arrive);
  arrive();
}

/** A browser that searches in what is hidden until it is found (HTML, 6.1) is asked to; any other hides it. */
function fold(list: HTMLElement, isAway: boolean): void {
  if (!('onbeforematch' in HTMLElement.prototype)) list.classList.toggle('folded-away', isAway);
  else if (isAway) list.setAttribute('hidden', 'until-found');
  else list.removeAttribute('hidden');
}

function foldsOf(main: HTMLElement): readonly Fold[] {
  const lists = [...main.querySelectorAll<HTMLElement>('.part > :is(.gather, .limits)')];
  const glance = main.querySelector<HTMLElement>('.glance');
  const links = main.querySelectorAll<HTMLElement>('.glance ~ .schedule-link');
  const key = main.querySelector<HTMLElement>('.signal-key');
  return [
    ...(glance ? [{ at: [glance, ...links] as const, words: firstRow(glance) }] : []),
    ...(key ? [{ at: [key] as const, words: () => 'What the signal words mean' }] : []),
    ...lists.map((at) => ({ at: [at] as const, words: at.matches('.ticking') ? laidOut(at) : named(at) })),
  ];
}

/**
 * "Hands-on: 2 h 8 min to 5 h 9 min, likely 2 h 56 min". Where builds differ a line would be a paragraph: it then names
 * the ranges of two, "1 h to 3 h or 2 h to 4 h, by build", and of more that they differ.
 */
function firstRow(table: HTMLElement): () => string {
  return () => {
    const row = table.querySelector('tr');
    const lines = [...(row?.querySelectorAll('td > div:not(.detail)') ?? [])]
      .filter(isOfBuild)
      .map(shownWords);
    const ranges = lines.map((line) => line.replace(/,.*$/s, ''));
    const said =
      lines.length < 2
        ? lines.join('')
        : lines.length === 2
          ? `${ranges.join(' or ')}, by build`
          : 'differs by build';
    return `${wordsOf(row?.querySelector('th'))}: ${said}`;
  };
}

function laidOut(list: HTMLElement): () => string {
  return () => {
    const boxes = [...list.querySelectorAll<HTMLInputElement>('.box input')].filter(isOfBuild);
    const ready = boxes.filter(({ checked }) => checked).length;
    const things = boxes.length === 1 ? '1 thing' : `${boxes.length} things`;
    if (ready > 0 && ready === boxes.length) return `${things}, all laid out`;
    return ready === 0 ? `${things} to lay out` : `${things}, ${ready} laid out`;
  };
}

function named(list: HTMLElement): () => string {
  return () => {
    const rows = [...list.querySelectorAll('tbody tr')].filter(isOfBuild);
    return `${wordsOf(list.querySelector('caption'))}: ${rows.length}`;
  };
}
