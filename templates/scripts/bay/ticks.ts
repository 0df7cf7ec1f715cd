import type { BayData, BayStep } from '../../../src/pages/guide/bay-data.ts';
import { capitalised, make, say } from './elements.ts';
import type { Keeper } from './kept/keeper.ts';
import { type Part, partsToTick, withTick } from './kept/progress.ts';

/** Gives each step its tick, one for each side where it is done on each, below the step's text. */
export function addTicks(keeper: Keeper): void {
  for (const step of keeper.page.steps) {
    const article = document.getElementById(step.id);
    if (article) addTo(article, step, keeper);
  }
}

function addTo(article: HTMLElement, step: BayStep, keeper: Keeper): void {
  const parts = partsToTick(step);
  const boxes = parts.map((part) => ({ part, box: checkbox(step, part, keeper) }));
  const changed = make('p', 'bay-changed');
  changed.hidden = true;
  const group = make(
    'div',
    'bay-ticks',
    ...boxes.map(({ part, box }) => labelled(box, part, step, keeper.page)),
  );
  article.querySelector('.step-head')?.after(changed);
  (article.querySelector('.step-body') ?? article).append(group);
  keeper.onChange((progress) => {
    const ticked = progress.ticks.get(step.id);
    for (const { part, box } of boxes) box.checked = ticked?.has(part) ?? false;
    article.classList.toggle(
      'ticked',
      parts.every((part) => ticked?.has(part)),
    );
    const change = progress.changed?.lines.find((line) => line.step === step.id);
    changed.hidden = !change;
    say(changed, change ? 'This step is not as it was when you began. Read it again.' : '');
  });
}

function checkbox(step: BayStep, part: Part, keeper: Keeper): HTMLInputElement {
  const box = make('input', '');
  box.type = 'checkbox';
  box.addEventListener('change', () =>
    keeper.change((progress) => withTick(progress, step.id, part, box.checked)),
  );
  return box;
}

/** What is said of a part of a step that is done. */
export function doneWords(part: Part, words: BayData['words']): string {
  return part === 'whole' ? 'Done' : `${capitalised(words[part])} side done`;
}

function labelled(box: HTMLInputElement, part: Part, step: BayStep, { words }: BayData): HTMLElement {
  return make('label', 'bay-tick', box, doneWords(part, words), make('span', 'unseen', `: ${step.title}`));
}
