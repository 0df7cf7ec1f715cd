import type { BayData } from '../../../../src/pages/guide/bay-data.ts';
import { readAddress, writeAddress } from '../../guide/address.ts';
import { say } from '../elements.ts';
import { startFacts } from '../facts.ts';
import type { Keeper } from '../kept/keeper.ts';
import { type Part, withTick } from '../kept/progress.ts';
import { splitSentences } from '../lines.ts';
import { doneWords } from '../ticks.ts';
import { showPlace } from '../zones.ts';
import { showHeld } from './held.ts';
import { fitPicture } from './room.ts';
import { fillList, partToTick } from './step-list.ts';
import { hiddenFor, numberOf, type Stop, stopAt, stopsOf, titleOf } from './stops.ts';

/** The elements of the bay screen. */
interface Screen {
  readonly main: HTMLElement;
  readonly toggle: HTMLButtonElement;
  readonly head: HTMLElement;
  readonly bar: HTMLElement;
  readonly back: HTMLButtonElement;
  readonly all: HTMLButtonElement;
  readonly next: HTMLButtonElement;
  readonly list: HTMLDialogElement;
  readonly facts: HTMLDialogElement;
}

/** Lets the technician see one step alone, in the order of the job, and come back to it after the page was closed. */
export function startScreen(keeper: Keeper): void {
  const screen = findScreen();
  if (!screen) return;
  const { main, toggle, bar, back, next, all, list, facts } = screen;
  splitSentences(main);
  let current: Stop | null = null;
  const draw = (): void => {
    if (current) drawStop(current, screen, keeper);
  };
  const show = (stop: Stop | null): void => {
    current = stop;
    document.documentElement.classList.toggle('in-bay', stop !== null);
    screen.head.hidden = bar.hidden = stop === null;
    main.classList.toggle('one-step', stop !== null && stop.kind !== 'opening');
    toggle.setAttribute('aria-pressed', String(stop !== null));
    remember(keeper, stop);
    for (const element of main.querySelectorAll('.elsewhere')) element.classList.remove('elsewhere');
    if (!stop) return;
    for (const element of hiddenFor(stop, main)) element.classList.add('elsewhere');
    window.scrollTo(0, 0);
    if (stop.kind === 'step' && stop.at.parentElement) showHeld(stop.at.parentElement);
    else stop.at.classList.remove('folded');
    draw();
  };
  const go = (stop: Stop | undefined): void => {
    list.close();
    if (!stop) return;
    show(stop);
    writeAddress(readAddress().build ?? new Map(), stop.id === '' ? null : stop.id);
    focusOn(stop);
  };
  const beside = (way: 1 | -1) => {
    const stops = stopsOf(main);
    return stops[stops.findIndex(({ id }) => id === current?.id) + way];
  };
  const leave = (): void => {
    list.close();
    const at = current?.at;
    show(null);
    at?.scrollIntoView();
    toggle.focus({ preventScroll: true });
  };

  back.addEventListener('click', () => go(beside(-1)));
  next.addEventListener('click', () => {
    const part = current ? partToTick(current, keeper) : null;
    const id = current?.id ?? '';
    if (part) keeper.change((progress) => withTick(progress, id, part, true));
    if (part !== 'left') go(beside(1));
  });
  all.addEventListener('click', () => {
    const lines = list.querySelector('nav');
    if (!lines) return;
    const { page, now } = keeper;
    fillList(lines, main, { page, progress: now(), here: current?.id ?? '', go });
    list.showModal();
    lines.querySelector<HTMLElement>('[aria-current]')?.focus();
  });
  list.querySelector('.bay-shut')?.addEventListener('click', () => list.close());
  list.querySelector('.bay-leave')?.addEventListener('click', leave);
  toggle.addEventListener('click', () => (current ? leave() : show(stopAt(main, readAddress().at))));
  window.addEventListener('hashchange', () => {
    if (!current) return;
    const { at } = readAddress();
    const stop = stopAt(main, at);
    show(stop);
    if (at && at !== stop.id) document.getElementById(at)?.scrollIntoView();
  });
  window.addEventListener('resize', draw);
  keeper.onChange(draw);
  keeper.picker.onPick(() => {
    if (!current) return;
    // The build is picked in the middle of a page that stays where it is.
    const { scrollY } = window;
    show(stopAt(main, current.id === '' ? null : current.id));
    window.scrollTo(0, scrollY);
  });
  startFacts(main, facts, () => current !== null);
  const place = remembered(keeper);
  if (place !== null) show(stopAt(main, readAddress().at ?? (place === '' ? null : place)));
}

function findScreen(): Screen | null {
  const find = <T extends Element>(name: string) => document.querySelector<T>(name);
  const main = find<HTMLElement>('main');
  const toggle = find<HTMLButtonElement>('.bay-one');
  const [head, bar] = [find<HTMLElement>('.bay-head'), find<HTMLElement>('.bay-turn')];
  const [back, all] = [find<HTMLButtonElement>('.bay-back'), find<HTMLButtonElement>('.bay-all')];
  const next = find<HTMLButtonElement>('.bay-next');
  const [list, facts] = [find<HTMLDialogElement>('.bay-list'), find<HTMLDialogElement>('.bay-facts')];
  if (!main || !toggle || !head || !bar || !back || !all || !next || !list || !facts) return null;
  return { main, toggle, head, bar, back, all, next, list, facts };
}

function drawStop(stop: Stop, screen: Screen, keeper: Keeper): void {
  const { main, head, bar, back, all, next } = screen;
  const stops = stopsOf(main);
  const index = stops.findIndex(({ id }) => id === stop.id);
  const total = stops.filter(({ kind }) => kind === 'step').length;
  const part = stop.kind === 'step' ? stop.at.closest('.part') : null;
  const number = numberOf(stop);
  const facts = stop.kind === 'step' ? stop.at.querySelector('.step-head .facts') : null;
  const title = document.querySelector('h1')?.textContent ?? '';
  words(head.querySelector('.bay-count b'), number ?? '');
  words(head.querySelector('.bay-count span'), number === null ? `${total} steps` : `of ${total}`);
  words(
    head.querySelector('.bay-place b'),
    part?.querySelector('.part-head :is(h2, h3, h4, h5, h6)')?.textContent ?? title,
  );
  const short = facts?.textContent ?? (part ? '' : 'Read this first');
  words(head.querySelector('.bay-place > span'), short);
  showPlace(head.querySelector('.bay-where'), stop.kind === 'step' ? stop.at : null);
  const before = stops[index - 1];
  back.disabled = !before;
  words(back.querySelector('span'), before ? `Back to ${placeOf(before)}` : 'Back');
  words(all.querySelector('span'), `All ${total} steps`);
  const after = stops[index + 1];
  const tick = partToTick(stop, keeper);
  next.disabled = !after && tick === null;
  const sides = keeper.page.words;
  words(next.querySelector('b'), nextWords(tick, after, sides));
  words(
    next.querySelector('span'),
    tick === 'left' ? `Then the ${sides.right} side` : after ? titleOf(after) : '',
  );
  if (stop.kind === 'step') fitPicture(stop.at, bar);
}

/** What the button that goes on says first; the title of what follows stands under it. */
function nextWords(tick: Part | null, after: Stop | undefined, sides: BayData['words']): string {
  const done = tick === null ? '' : doneWords(tick, sides);
  if (tick === 'left' || !after) return done === '' ? 'The end' : done;
  const to = after.kind === 'step' ? `To step ${numberOf(after)}` : 'Read on';
  return done === '' ? to : `${done}. ${to}`;
}

function placeOf(stop: Stop): string {
  return stop.kind === 'step' ? `step ${numberOf(stop)}` : titleOf(stop);
}

function words(element: Element | null, text: string): void {
  if (element) say(element, text.trim());
}

/** A screen reader goes on where the eye does. */
function focusOn({ at }: Stop): void {
  const heading = at.querySelector<HTMLElement>('h1, h2, h3, h4, h5, h6');
  if (!heading) return;
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
}

const keyOf = ({ page }: Keeper) => `baybook place ${page.guide}`;

function remember(keeper: Keeper, stop: Stop | null): void {
  try {
    if (stop) localStorage.setItem(keyOf(keeper), stop.id);
    else localStorage.removeItem(keyOf(keeper));
  } catch {
    // Storage that is switched off only forgets this place.
  }
}

function remembered(keeper: Keeper): string | null {
  try {
    return localStorage.getItem(keyOf(keeper));
  } catch {
    return null;
  }
}
