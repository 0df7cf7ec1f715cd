import type { BayData } from '../../../src/pages/guide/bay-data.ts';
import { readAddress } from '../guide/address.ts';
import type { PickTable } from '../guide/plan.ts';
import { button, make } from './elements.ts';
import type { Keeper } from './kept/keeper.ts';
import { fresh, isBegun, type Progress } from './kept/progress.ts';

/**
 * Tells in plain lines what the technician must know of: a guide that has changed, a device that keeps nothing,
 * ticks that belong to another build than the one that is shown.
 */
export function showNews(place: HTMLElement, keeper: Keeper): void {
  const seen = () => keeper.change((progress) => ({ ...progress, changed: null }));
  let shown = '';
  const draw = (progress: Progress, problem: string | null): void => {
    const lines = [
      ...(problem ? [make('p', '', problem)] : []),
      ...changeLines(progress, keeper.page, seen),
      ...buildLines(progress, keeper),
    ];
    const words = lines.map((line) => line.textContent).join('\n');
    // Drawn again it would be read out again.
    if (words === shown) return;
    shown = words;
    place.replaceChildren(...lines);
  };
  let problem: string | null = null;
  keeper.onChange((progress, met) => {
    problem = met;
    draw(progress, met);
  });
  keeper.picker.onPick(() => draw(keeper.now(), problem));
}

function buildLines(progress: Progress, { page, picker, change }: Keeper): readonly HTMLElement[] {
  const [begunFor, shown] = [progress.build, picker.shown()];
  if (begunFor === '' || shown === '' || begunFor === shown || !isBegun(progress)) return [];
  const build = picker.words(begunFor);
  const what = `What is ticked here belongs to another build${build === '' ? '' : ` (${build})`}.`;
  return [
    make('p', '', make('strong', '', what), ` Is this the same ${page.words.vehicle}?`),
    make(
      'p',
      'buttons',
      button('', 'The same: keep the ticks', () => change((now) => ({ ...now, build: picker.shown() }))),
      button('', `Another ${page.words.vehicle}: start again`, () => change(() => fresh(page))),
    ),
  ];
}

function changeLines({ changed }: Progress, page: BayData, seen: () => void): readonly HTMLElement[] {
  if (!changed) return [];
  const editions = changed.edition === page.edition ? '' : ` (then ${changed.edition}, now ${page.edition})`;
  const what =
    changed.lines.length === 0
      ? 'No step reads otherwise; what stands around them does.'
      : 'What has changed is not ticked; read it again:';
  return [
    make('p', '', make('strong', '', `This guide has changed since you began${editions}.`), ` ${what}`),
    make('ul', '', ...changed.lines.map(changeLine)),
    make('p', 'buttons', button('', 'I have read the changes', seen)),
  ];
}

function changeLine({ step, words }: { readonly step: string; readonly words: string }): HTMLElement {
  if (step === '') return make('li', '', words);
  const link = make('a', '', words);
  link.href = `#${step}`;
  return make('li', '', link);
}

/** What of the link no longer fits this page, as a line; empty where all of it does. */
export function linkWords(table: PickTable | null): string {
  const { build, at } = readAddress();
  const known = new Set(Object.keys(table?.builds ?? {}));
  const options = table?.options ?? [];
  const named = [...(build?.keys() ?? [])];
  const strange =
    named.some((option) => !options.includes(option)) ||
    (named.length > 0 &&
      options.every((option) => build?.has(option)) &&
      !known.has(options.map((option) => build?.get(option)).join(',')));
  const lines = [
    strange
      ? 'The link that you followed names a build that this guide no longer has. Pick your build again.'
      : '',
    at !== null && !document.getElementById(at)
      ? 'The link that you followed names a place that is no longer on this page.'
      : '',
  ];
  return lines.filter((line) => line !== '').join(' ');
}
