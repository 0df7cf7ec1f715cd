import { button, make } from './bay/elements.ts';
import { answers, openStage, type Stage } from './rehearse/parts.ts';

/** The page's cards, which read without this script: here they come one at a time, in another order each time. */
const all = document.getElementById('cards-all');
const turn = document.getElementById('cards-turn');
const cards = [...(all?.querySelectorAll<HTMLDetailsElement>('.card') ?? [])];
if (all && turn && cards.length > 1) offer(all, turn);

function offer(list: HTMLElement, root: HTMLElement): void {
  const begin = () => {
    list.hidden = true;
    ask(openStage(root), shuffled(cards), back);
  };
  const back = () => {
    list.hidden = false;
    showOffer().focus();
  };
  const showOffer = (): HTMLElement => {
    const start = button('reh-answer', 'One card at a time, in any order', begin);
    root.replaceChildren(start);
    root.hidden = false;
    return start;
  };
  showOffer();
}

/** Fisher and Yates. */
function shuffled<T>(list: readonly T[]): readonly T[] {
  const order = [...list];
  for (let last = order.length - 1; last > 0; last -= 1) {
    const other = Math.floor(Math.random() * (last + 1));
    const [a, b] = [order[last], order[other]];
    if (a !== undefined && b !== undefined) [order[last], order[other]] = [b, a];
  }
  return order;
}

/** Shows the first of what is left; once its answer is open, it is done with or comes again after the others. */
function ask(stage: Stage, left: readonly HTMLDetailsElement[], back: () => void): void {
  const [card, ...rest] = left;
  const toList = { words: 'To the list of all cards', press: back };
  if (!card) {
    const again = { words: 'Once more', press: () => ask(stage, shuffled(cards), back) };
    stage.show('That was the last card', '', answers([again, toList]));
    return;
  }
  const words = card.querySelector('.card-ask')?.textContent ?? '';
  const copies = (part: string) => [...card.querySelectorAll(part)].map((one) => one.cloneNode(true));
  const looks = () => make('p', 'card-looks', ...copies('summary svg'));
  const still = make(
    'p',
    'quiet',
    rest.length === 0 ? 'The last one.' : `${rest.length} more after this one.`,
  );
  const open = () =>
    stage.show(
      words,
      '',
      looks(),
      ...copies('.card-back'),
      answers([
        { words: 'Next card', press: () => ask(stage, rest, back) },
        { words: 'Ask this one again later', press: () => ask(stage, [...rest, card], back) },
        toList,
      ]),
      still,
    );
  stage.show(words, '', looks(), answers([{ words: 'Show the answer', press: open }, toList]), still);
}
