import { make } from './elements.ts';
import type { Keeper } from './kept/keeper.ts';
import { partToTick, progressWords } from './screen/step-list.ts';
import { numberOf, type Stop, stopsOf, titleOf } from './screen/stops.ts';

/**
 * The map of the guide: what stands where and what of it is done, beside the page where there is room, else one touch
 * away. From anywhere any step is two touches or keys away.
 */
export function startMap(main: HTMLElement, keeper: Keeper): void {
  const rail = document.querySelector<HTMLElement>('.map');
  const dialog = document.querySelector<HTMLDialogElement>('.map-list');
  const bar = document.querySelector<HTMLElement>('.map-bar');
  const open = bar?.querySelector<HTMLButtonElement>('.map-open');
  const list = dialog?.querySelector('nav');
  if (!rail || !dialog || !bar || !open || !list) return;
  const draw = (): void => {
    const stops = stopsOf(main).filter(({ kind }) => kind !== 'opening');
    for (const place of [rail, list]) place.replaceChildren(...stops.map((stop) => lineOf(stop, keeper)));
    leadOn(bar.querySelector('a'), stops, keeper);
  };
  keeper.onChange(draw);
  keeper.picker.onPick(draw);
  open.addEventListener('click', () => dialog.showModal());
  dialog.querySelector('.bay-shut')?.addEventListener('click', () => dialog.close());
  list.addEventListener('click', ({ target }) => {
    if (target instanceof Element && target.closest('a')) dialog.close();
  });
  rail.hidden = bar.hidden = false;
  document.documentElement.classList.add('mapped');
  addSkips(main);
}

/** The step that is next, one touch away: the first that is not done. */
function leadOn(link: HTMLAnchorElement | null, stops: readonly Stop[], keeper: Keeper): void {
  const next = stops.find((stop) => partToTick(stop, keeper) !== null);
  if (!link) return;
  link.hidden = next === undefined;
  if (!next) return;
  link.href = `#${next.id}`;
  link.replaceChildren(make('b', '', `To step ${numberOf(next) ?? ''}`), make('span', '', titleOf(next)));
}

function lineOf(stop: Stop, { page, now }: Keeper): HTMLAnchorElement {
  const step = page.steps.find(({ id }) => id === stop.id);
  const done = stop.kind === 'step' ? progressWords(step, now(), page) : '';
  const line = make('a', stop.kind === 'step' ? 'bay-line' : 'bay-line section');
  line.href = `#${stop.id}`;
  line.append(make('b', '', numberOf(stop) ?? ''), make('span', '', titleOf(stop)), make('small', '', done));
  return line;
}

/** For the keyboard: past what comes before the work, in one key after that to the content. */
function addSkips(main: HTMLElement): void {
  const places = [
    ['To the steps', main.querySelector('.step')],
    ['To the templates', main.querySelector('.template')],
  ] as const;
  const skips = places.flatMap(([words, place]) => {
    if (!place?.id) return [];
    const link = make('a', 'skip', words);
    link.href = `#${place.id}`;
    return [link];
  });
  document.querySelector('.skip')?.after(...skips);
}
