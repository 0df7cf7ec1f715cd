import { make } from '../bay/elements.ts';
import { guardsOf, stepsOf } from '../bay/screen/stops.ts';
import { blockOf, headAgain, messageOf, partsOf, stepOf } from './compact.ts';
import { copyOf, wordsIn } from './copy.ts';
import { coverPieces } from './cover.ts';
import { gatherPieces, labelPieces, recordPieces } from './lists.ts';

/** What stands under one head, before anything is measured. */
export interface Draft {
  /** What the contents on the cover call it; empty for what they leave out. */
  readonly name: string;
  readonly head: HTMLElement;
  /** Stands on each further sheet: the messages of a section are said on every sheet of it. */
  readonly again: HTMLElement;
  readonly columns: 1 | 2;
  readonly fresh: boolean;
  /** Whether it goes on below what comes before all the same, where that saves a sheet. */
  readonly joins: boolean;
  /** Whether its pieces share out what is left of their sheet. */
  readonly fills: boolean;
  readonly pieces: readonly { readonly element: HTMLElement; readonly keep: boolean }[];
}

const whole = (element: HTMLElement) => ({ element, keep: false });

/** The job sheet of the build that the page shows: cover, gather list, steps, records, the owner's sheet and labels. */
export function jobSheet(main: HTMLElement, sides: readonly string[]): readonly Draft[] {
  const cover: Draft = {
    ...draft('', [], []),
    pieces: coverPieces(main).map(whole),
    fresh: true,
    columns: 1,
  };
  return [
    cover,
    ...gatherDrafts(main),
    ...labelDrafts(main),
    ...joined(workDrafts(main, sides)),
    ...recordDrafts(main),
  ].filter(({ pieces, head }) => pieces.length > 0 || head.querySelector('.paper-guards') !== null);
}

function draft(title: string, messages: readonly HTMLElement[], lines: readonly string[]): Draft {
  const head = (words: string) =>
    make(
      'div',
      'paper-head',
      ...(words === ''
        ? []
        : [make('div', 'paper-turn', make('h2', '', words), ...lines.map((line) => make('span', '', line)))]),
      ...(messages.length === 0 ? [] : [make('div', 'paper-guards', ...messages.map(messageOf))]),
    );
  return {
    name: title,
    head: head(title),
    again: head(title === '' ? '' : `${title}, continued`),
    columns: 2,
    fresh: false,
    joins: false,
    fills: false,
    pieces: [],
  };
}

/** What must be laid out, on a sheet of its own. */
function gatherDrafts(main: HTMLElement): readonly Draft[] {
  return partsIn(main)
    .filter((part) => part.querySelector(':scope > .gather .box .tick'))
    .map((part, index) => {
      const table = part.querySelector(':scope > .gather:has(.box .tick)');
      const words = partsOf(part).filter(
        (one) => !one.matches('.part-head, .gather, .limits, .message, .step'),
      );
      return {
        ...draft('Lay these out first', guardsOf(part), [
          'at the end of each line, the step that asks for it first',
        ]),
        fresh: index === 0,
        pieces: [...(table ? gatherPieces(table) : []), ...words.map((one) => whole(blockOf(one)))],
      };
    });
}

const partsIn = (main: HTMLElement) =>
  [...main.querySelectorAll<HTMLElement>(':scope > .part')].filter(({ hidden }) => !hidden);

/** The sections of the job; the messages of a section and of those above it stand on each of its sheets. */
function workDrafts(main: HTMLElement, sides: readonly string[]): readonly Draft[] {
  let above: readonly { readonly level: number; readonly messages: readonly HTMLElement[] }[] = [];
  let first = true;
  return partsIn(main).flatMap((part) => {
    const level = Number(part.querySelector('.part-head :is(h2, h3, h4, h5, h6)')?.tagName.slice(1) ?? 2);
    above = [...above.filter((one) => one.level < level), { level, messages: guardsOf(part) }];
    if (part.querySelector(':scope > .gather .box .tick')) return [];
    const messages = above.flatMap((one) => one.messages);
    const intro = partsOf(part).filter(
      (one) =>
        !one.matches('.part-head, .step, .message, .gather, .limits, .owner') &&
        one.textContent?.trim() !== '',
    );
    const steps = stepsOf(part);
    if (intro.length + steps.length + guardsOf(part).length === 0) return [];
    const numbers = steps.map((step) => wordsIn(step.querySelector('.step-number [data-step]')));
    const range = numbers.length < 2 ? numbers : [`${numbers[0]} to ${numbers.at(-1)}`];
    const fresh = first;
    first = false;
    return {
      ...draft(
        wordsIn(part.querySelector('.part-head :is(h2, h3, h4, h5, h6)')),
        messages,
        range.map((words) => (numbers.length === 1 ? `step ${words}` : `steps ${words}`)),
      ),
      name: 'The steps',
      fresh,
      pieces: [
        ...intro.map((one) => whole(blockOf(one))),
        ...steps.map((step) => whole(stepOf(step, sides))),
      ],
    };
  });
}

/** Sections that no message guards run on in the columns, each with its name above its first piece. */
function joined(drafts: readonly Draft[]): readonly Draft[] {
  const runs: Draft[] = [];
  for (const one of drafts) {
    const last = runs.at(-1);
    const guarded = one.head.querySelector('.paper-guards') !== null;
    if (guarded) {
      runs.push(one);
      continue;
    }
    const pieces = [{ element: one.head, keep: true }, ...one.pieces];
    if (last && !last.head.querySelector('.paper-guards')) {
      runs.splice(-1, 1, { ...last, pieces: [...last.pieces, ...pieces] });
    } else runs.push({ ...one, head: make('div', 'paper-head'), again: make('div', 'paper-head'), pieces });
  }
  // What is one step of words alone fills the width, not one column beside nothing.
  return runs.map((run) => {
    const steps = run.pieces.filter(({ keep }) => !keep);
    const short = steps.length === 1 && !steps[0]?.element.querySelector('.paper-picture');
    return short ? { ...run, columns: 1 } : run;
  });
}

/** Notes to the text behind the last steps, what is filled in and kept, then what is handed on. */
function recordDrafts(main: HTMLElement): readonly Draft[] {
  const sheets = partsOf(main.querySelector('.sheets'));
  const owner = sheets.filter((sheet) => sheet.matches('.hand-over'));
  const rest = sheets.filter((sheet) => !sheet.matches('.hand-over, .labels'));
  const notes = [...main.querySelectorAll<HTMLElement>(':scope > .footnotes')].map(notesOf);
  return [
    { ...draft('', [], []), columns: 1 as const, pieces: notes.map(whole) },
    {
      ...draft('Records', [], []),
      fresh: true,
      joins: true,
      columns: 1 as const,
      pieces: rest.flatMap(recordPieces),
    },
    ...owner.map((sheet) => ({
      ...draft('For the owner', [], []),
      fresh: true,
      columns: 1 as const,
      pieces: partsOf(sheet)
        .filter((one) => !one.matches('h2'))
        .map((one) => whole(ownerPiece(one))),
    })),
  ];
}

/** Labels fill what the gather list leaves of its sheet, or a sheet of their own at the end. */
function labelDrafts(main: HTMLElement): readonly Draft[] {
  return [...main.querySelectorAll<HTMLElement>('.sheets > .labels')].map((sheet) => ({
    ...draft('Bag labels', [], ['cut them off']),
    fills: true,
    pieces: labelPieces(sheet),
  }));
}

function ownerPiece(from: HTMLElement): HTMLElement {
  const copy = copyOf(from);
  const title = copy.querySelector('caption');
  const words = title ? [make('h3', '', title.textContent ?? '')] : [];
  title?.remove();
  for (const blank of [...copy.querySelectorAll<HTMLElement>('.paper-blank')].slice(0, 1)) {
    if (from.matches('.of-vehicle')) blank.dataset.factOf = 'identity';
  }
  return make('div', 'paper-told', ...words, copy);
}

function notesOf(notes: HTMLElement): HTMLElement {
  const list = notes.querySelector('ol');
  return make('section', 'paper-table', make('h2', '', 'Notes to the text'), ...(list ? [copyOf(list)] : []));
}

/**
 * A step that is higher than a column, as several: each has the head of the step, and a message stays with what
 * follows it.
 *
 * @param heightsOf measures elements as they stand in a column
 */
export function split(
  step: HTMLElement,
  most: number,
  heightsOf: (elements: readonly HTMLElement[]) => readonly number[],
): readonly HTMLElement[] {
  const [head, ...parts] = [...step.children];
  if (!head || parts.length < 2) return [step];
  const isTooHigh = (element: HTMLElement) => heightsOf([element]).some((height) => height > most);
  const shell = (own: Element) => make('article', step.className, own);
  const pieces = [shell(head)];
  let held: Element[] = [];
  for (const part of parts) {
    held.push(part);
    if (part.matches('.paper-message, .paper-line')) continue;
    const last = pieces.at(-1);
    last?.append(...held);
    if (last && last.childElementCount > held.length + 1 && isTooHigh(last)) {
      const next = shell(headAgain(head));
      next.append(...held);
      pieces.push(next);
    }
    held = [];
  }
  pieces.at(-1)?.append(...held);
  return pieces;
}
