import type { BenchView } from '../../../src/preview/bench/bench.ts';
import type { PointedItem } from '../../../src/preview/bench/bench-items.ts';
import type { BenchMark } from '../../../src/preview/bench/figure-text.ts';
import { button, make } from '../bay/elements.ts';
import type { Draft } from './draft.ts';

/** What is said of the figure besides where its marks are. */
export function formOf(
  changed: () => void,
  press: { readonly write: () => Promise<void>; readonly undo: () => Promise<void> },
): {
  readonly element: HTMLElement;
  readonly draw: (draft: Draft | null, view: BenchView) => void;
} {
  const fields = make('div', '');
  const undo = button('bench-undo', 'Take back the last change', () => void press.undo());
  const write = button('bench-write', 'Write into the guide', () => void press.write());
  const element = make('div', '', fields, make('p', '', write, ' ', undo));
  let shown: Draft | null = null;
  let read: BenchView | null = null;
  let places: Draft['over'] | 'none' = 'none';
  const table = make('table', '');
  return {
    element,
    draw: (draft, view) => {
      undo.disabled = !view.undo;
      write.disabled = draft === null;
      // A field in which somebody types is not made anew.
      if (draft !== shown || view !== read || places === 'none') {
        shown = draft;
        read = view;
        places = draft?.over ?? null;
        fields.replaceChildren(...(draft ? [...wordsOf(draft, view, changed), table] : []));
      }
      if (draft) drawMarks(table, draft, view.items, changed);
    },
  };
}

function wordsOf(draft: Draft, { places }: BenchView, changed: () => void): readonly HTMLElement[] {
  const field = (name: 'caption' | 'alt', words: string): HTMLElement => {
    const input = make('input', '');
    input.value = draft[name];
    input.name = name;
    input.addEventListener('input', () => {
      draft[name] = input.value;
    });
    return make('label', '', words, input);
  };
  const shows = selectOf(
    'shows',
    [
      ['', 'not said'],
      ['left', 'left'],
      ['right', 'right'],
    ],
    draft.shows,
    (value) => {
      draft.shows = value;
      changed();
    },
  );
  const after = selectOf('after', placeChoices(places), String(draft.after ?? ''), (value) => {
    draft.after = Number(value);
  });
  return [
    field('caption', 'Caption'),
    field('alt', 'What the picture shows, for whoever cannot see it'),
    make('label', '', 'Side of the vehicle in the picture', shows),
    ...(draft.over === null ? [make('label', '', 'Stands in the guide under', after)] : []),
  ];
}

/** The places of a guide, to choose from. */
export function placeChoices(places: BenchView['places']): readonly (readonly [string, string])[] {
  return places.map(({ after, step, words }) => [
    String(after),
    words === '' ? `${step}: at its beginning` : `${step}: behind “${words}”`,
  ]);
}

/** A choice among values, each with its words. */
export function selectOf(
  name: string,
  choices: readonly (readonly [value: string, words: string])[],
  value: string,
  chosen: (value: string) => void,
): HTMLSelectElement {
  const select = make('select', '');
  select.name = name;
  for (const [own, words] of choices) select.append(new Option(words, own, false, own === value));
  select.addEventListener('change', () => chosen(select.value));
  return select;
}

/** A line for each mark: what it shows, from the guide's own list, and what else the key says. */
function drawMarks(
  table: HTMLTableElement,
  draft: Draft,
  items: readonly PointedItem[],
  changed: () => void,
): void {
  const isTyped = table.contains(document.activeElement) && table.rows.length === draft.marks.length;
  if (isTyped) return;
  table.replaceChildren(
    ...draft.marks.map((mark, index) => {
      const change = (text: string): void => {
        draft.marks = draft.marks.map((one, place) => (place === index ? { ...one, text } : one));
      };
      const words = make('input', '');
      words.value = mark.text;
      words.setAttribute('aria-label', `Mark ${mark.letter} in words`);
      words.addEventListener('input', () => change(words.value));
      const choice = selectOf(
        'item',
        [['', 'in words'], ...items.map((item) => [mentionOf(item), item.name] as const)],
        items.map(mentionOf).find((mention) => mark.text.startsWith(mention)) ?? '',
        (mention) => {
          words.value = afterMention(mark, mention, items);
          change(words.value);
        },
      );
      choice.setAttribute('aria-label', `Mark ${mark.letter} shows`);
      const away = button('', 'Away', () => {
        draft.marks = draft.marks.filter((_, place) => place !== index);
        draft.at = null;
        changed();
      });
      away.setAttribute('aria-label', `Take mark ${mark.letter} away`);
      const row = make(
        'tr',
        '',
        make('td', '', make('b', '', mark.letter)),
        make('td', '', choice, words),
        make('td', '', away),
      );
      return row;
    }),
  );
}

function mentionOf({ kind, id }: PointedItem): string {
  return `:${kind}[${id}]`;
}

/** What else was said of the mark stays behind another item. */
function afterMention({ text }: BenchMark, mention: string, items: readonly PointedItem[]): string {
  const old = items.map(mentionOf).find((one) => text.startsWith(one)) ?? '';
  return mention + (old === '' && mention !== '' ? '' : text.slice(old.length));
}
