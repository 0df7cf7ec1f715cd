import { say } from '../elements.ts';
import type { Keeper } from './keeper.ts';
import { fresh, isBegun, type Progress } from './progress.ts';
import { progressText, readProgress } from './progress-text.ts';

/** Takes progress along as text, takes it over from text, and starts again. */
export function startMove(box: HTMLElement, keeper: Keeper): void {
  const text = box.querySelector('textarea');
  const said = box.querySelector('.bay-said');
  if (!text || !said) return;
  const on = (name: string, press: () => void) =>
    box.querySelector(name)?.addEventListener('click', () => {
      // What was said before must not stand beside what is said now.
      said.textContent = '';
      press();
    });

  on('.bay-copy', () => {
    text.value = progressText(keeper.now());
    text.focus();
    text.select();
    void copied(text.value).then((done) =>
      say(said, done ? 'Copied.' : 'Marked above: copy it from there, all of it.'),
    );
  });
  on('.bay-take', () => {
    const outcome = taken(text.value, keeper);
    if (typeof outcome === 'string') return say(said, outcome);
    keeper.picker.show(outcome.build);
    keeper.change(() => outcome);
    text.value = '';
    say(said, 'Taken over: the ticks and readings of that text stand on this page now.');
  });
  const again = box.querySelector<HTMLElement>('.bay-again');
  on('.bay-clear', () => {
    if (!isBegun(keeper.now())) return say(said, 'Nothing is ticked or typed in.');
    if (again) again.hidden = false;
    again?.querySelector('button')?.focus();
  });
  on('.bay-again button', () => {
    keeper.change(() => fresh(keeper.page));
    if (again) again.hidden = true;
    say(said, 'Nothing is ticked any more.');
  });
}

/** Progress from a text that someone has pasted, or why it is not taken. */
function taken(text: string, { page, fitted }: Keeper): Progress | string {
  if (text.trim() === '') return 'Put the text of the other device into the field first.';
  const found = readProgress(text.trim());
  if (!found) {
    return 'This is not the text of a job, or not all of it. Nothing was changed. Copy it again on the other device, from “{” to “}”.';
  }
  if (found.guide !== page.guide) {
    return `This text belongs to another guide: “${found.title}”. Nothing was changed.`;
  }
  return fitted(found);
}

async function copied(text: string): Promise<boolean> {
  try {
    await navigator.clipboard.writeText(text);
    return true;
  } catch {
    return false;
  }
}
