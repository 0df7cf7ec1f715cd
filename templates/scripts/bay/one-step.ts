import { readAddress, writeAddress } from '../address.ts';

/** What is shown together when one step is shown at a time: the opening, a section without steps, or a step. */
interface Stop {
  readonly id: string;
  readonly at: Element;
}

/** The controls of that way of reading. */
export interface Turning {
  readonly toggle: HTMLButtonElement;
  readonly bar: HTMLElement;
  readonly back: HTMLButtonElement;
  readonly next: HTMLButtonElement;
  readonly all: HTMLButtonElement;
}

const KEY = 'baybook one step';

/** Lets the technician see one step alone, in the order of the job, and come back to it after a reload. */
export function startOneStep(main: HTMLElement, { toggle, bar, back, next, all }: Turning): void {
  let current: Stop | null = null;

  const show = (stop: Stop | null): void => {
    current = stop;
    bar.hidden = stop === null;
    main.classList.toggle('one-step', stop !== null && stop.id !== '');
    toggle.setAttribute('aria-pressed', String(stop !== null));
    remember(stop !== null);
    for (const element of main.querySelectorAll('.elsewhere')) element.classList.remove('elsewhere');
    if (!stop) return;
    for (const element of hiddenFor(stop, main)) element.classList.add('elsewhere');
    const stops = stopsOf(main);
    const index = stops.findIndex(({ id }) => id === stop.id);
    label(back, stops[index - 1], 'Back');
    label(next, stops[index + 1], 'Next');
  };
  const go = (way: 1 | -1): void => {
    const stops = stopsOf(main);
    const target = stops[stops.findIndex(({ id }) => id === current?.id) + way];
    if (!target) return;
    show(target);
    writeAddress(readAddress().build ?? new Map(), target.id === '' ? null : target.id);
    window.scrollTo(0, 0);
    focusOn(target);
  };
  const leave = (): void => {
    const at = current?.at;
    show(null);
    at?.scrollIntoView();
  };

  back.addEventListener('click', () => go(-1));
  next.addEventListener('click', () => go(1));
  all.addEventListener('click', () => {
    leave();
    toggle.focus({ preventScroll: true });
  });
  toggle.addEventListener('click', () => (current ? leave() : show(stopAt(main, readAddress().at))));
  window.addEventListener('hashchange', () => {
    if (!current) return;
    const { at } = readAddress();
    show(stopAt(main, at));
    if (at) document.getElementById(at)?.scrollIntoView();
  });
  if (remembered()) show(stopAt(main, readAddress().at));
}

/** In the order of the page; what is for another build is no stop. */
function stopsOf(main: HTMLElement): readonly Stop[] {
  const parts = [...main.querySelectorAll(':scope > .part')].flatMap((part) => {
    const steps = [...part.querySelectorAll(':scope > .step')];
    return steps.length > 0 ? steps : [part];
  });
  const shown = parts.filter((at) => at instanceof HTMLElement && !at.hidden);
  return [{ id: '', at: main }, ...shown.map((at) => ({ id: at.id, at }))];
}

/** The stop that holds a place of the page; the opening where none does. */
function stopAt(main: HTMLElement, place: string | null): Stop {
  const stops = stopsOf(main);
  const target = place === null ? null : document.getElementById(place);
  const [opening = { id: '', at: main }, ...rest] = stops;
  if (!target) return opening;
  return (
    rest.find(({ at }) => at.contains(target)) ??
    rest.find(({ at }) => target.contains(at)) ??
    inIntro(rest, target) ??
    opening
  );
}

/** A place before the steps of a section is shown with the first of them. */
function inIntro(stops: readonly Stop[], target: Element): Stop | undefined {
  const part = target.closest('.part');
  return part ? stops.find(({ at }) => part.contains(at)) : undefined;
}

/**
 * What is out of sight while a stop is shown. The safety messages in front of a section guard all its steps,
 * so they stand with each of them; the rest of the section's beginning stands with the first. The head of the
 * page says which guide and revision this is, so it stays.
 */
function hiddenFor(stop: Stop, main: HTMLElement): readonly Element[] {
  const parts = [...main.querySelectorAll(':scope > .part')];
  if (stop.id === '') return parts;
  const part = stop.at.closest('.part');
  const around = [...main.children].filter((child) => child !== part && !child.matches('.head, .bay-turn'));
  if (!part || part === stop.at) return around;
  const first = part.querySelector(':scope > .step:not([hidden])') === stop.at;
  const kept = first ? '.part-head, .message, :not(.step)' : '.part-head, .message';
  const within = [...part.children].filter((child) => child !== stop.at && !child.matches(kept));
  return [...around, ...within];
}

function label(button: HTMLButtonElement, stop: Stop | undefined, words: string): void {
  button.disabled = !stop;
  const title = stop?.at.querySelector('h2, h3, h4, h5, h6')?.textContent ?? '';
  button.setAttribute('aria-label', stop && stop.id !== '' ? `${words}: ${title}` : words);
}

/** A screen reader goes on where the eye does. */
function focusOn({ at }: Stop): void {
  const heading = at.querySelector<HTMLElement>('h1, h2, h3, h4, h5, h6');
  if (!heading) return;
  heading.tabIndex = -1;
  heading.focus({ preventScroll: true });
}

function remember(on: boolean): void {
  try {
    if (on) sessionStorage.setItem(KEY, 'yes');
    else sessionStorage.removeItem(KEY);
  } catch {
    // Storage that is switched off only forgets this choice.
  }
}

function remembered(): boolean {
  try {
    return sessionStorage.getItem(KEY) === 'yes';
  } catch {
    return false;
  }
}
