import { make } from '../bay/elements.ts';
import { type Draft, split } from './job-sheet.ts';
import { type Band, pack, type Run } from './pack.ts';

/** Space that stays free at the foot of a column, since a print sets its letters a little otherwise than a screen. */
const SLACK = 3;

/** CSS pixels to a millimetre. */
const MM = 96 / 25.4;

/** Space between two sections on one sheet, as the style sheet has it. */
const GAP = 5 * MM;

/**
 * Fills sheets with what is to be printed. Each sheet is a box of its own, so that no browser breaks anything, and all
 * print the same.
 *
 * @param into where the sheets stand; it is part of the page, since what stands there is measured
 * @param foot makes the foot of a sheet
 */
export function layOut(
  drafts: readonly Draft[],
  into: HTMLElement,
  foot: (number: number, of: number) => HTMLElement,
): void {
  const body = make('div', 'paper-body');
  into.replaceChildren(make('section', 'paper-sheet', body, foot(1, 10)));
  const room = body.clientHeight - SLACK * MM;
  const [wide, narrow] = [make('div', ''), make('div', 'paper-column')];
  body.append(wide, make('div', 'paper-columns', narrow, make('div', 'paper-column')));
  const measured = (columns: 1 | 2) => (elements: readonly HTMLElement[]) => {
    const place = columns === 1 ? wide : narrow;
    place.replaceChildren(...elements);
    return elements.map((element) => element.getBoundingClientRect().height);
  };
  const [across, inColumn] = [once(measured(1)), once(measured(2))];
  const heights = (columns: 1 | 2) => (columns === 1 ? across : inColumn);
  // Room for the contents, whose numbers are known last.
  fillContents(drafts, () => [10, 11]);
  const drawn = drafts.flatMap((draft) => {
    const [repeated = 0] = heights(1)([draft.again]);
    return widened(draft, room - repeated, heights(draft.columns)).map((one): Drawn => {
      const heightsOf = heights(one.columns);
      const [head = 0, again = 0] = heights(1)([one.head, one.again]);
      const wholes = heightsOf(one.pieces.map(({ element }) => element));
      const pieces = one.pieces.flatMap(({ element, keep }, index) => {
        const parts =
          (wholes[index] ?? 0) > room - again
            ? split(element, room - again, measured(one.columns))
            : [element];
        return parts.map((part) => ({ element: part, keep }));
      });
      const wides = one.columns === 2 ? widths(pieces, heights(1)) : [];
      const sizes = heightsOf(pieces.map(({ element }) => element)).map((height, index) => ({
        height,
        wide: wides[index] ?? null,
        keep: pieces[index]?.keep === true,
      }));
      return {
        draft: one,
        pieces,
        run: { head, again, columns: one.columns, fresh: one.fresh, pieces: sizes },
      };
    });
  });
  const plan = planOf(drawn, room);
  into.replaceChildren(
    ...plan.map((bands, index) => {
      const elements = bands.map(bandOf);
      return make(
        'section',
        'paper-sheet',
        make('div', 'paper-body', ...elements),
        foot(index + 1, plan.length),
      );
    }),
  );
  fillContents(drafts, (name) =>
    plan.flatMap((bands, sheet) => (bands.some(({ of }) => of.draft.name === name) ? [sheet + 1] : [])),
  );
}

/**
 * Measures elements as they stand in a column, all at once: each look at the page after a change of it makes the browser
 * lay everything out again.
 */
type Heights = (elements: readonly HTMLElement[]) => readonly number[];

/** Measures no element twice: for what is not changed in between. */
function once(heightsOf: Heights): Heights {
  const known = new Map<HTMLElement, number>();
  return (elements) => {
    const unknown = elements.filter((element) => !known.has(element));
    const heights = unknown.length === 0 ? [] : heightsOf(unknown);
    for (const [index, element] of unknown.entries()) known.set(element, heights[index] ?? 0);
    return elements.map((element) => known.get(element) ?? 0);
  };
}

/** A step that is higher than a column takes the width of the sheet, with its own words in two columns. */
function widened(draft: Draft, most: number, heightsOf: Heights): readonly Draft[] {
  if (draft.columns === 1) return [draft];
  const drafts: Draft[] = [];
  const wholes = heightsOf(draft.pieces.map(({ element }) => element));
  for (const [index, piece] of draft.pieces.entries()) {
    const columns = piece.element.matches('.paper-step') && (wholes[index] ?? 0) > most ? 1 : 2;
    if (columns === 1) piece.element.classList.add(WIDE);
    const last = drafts.at(-1);
    if (!last || last.columns === columns) {
      drafts.splice(-1, 1, { ...(last ?? draft), columns, pieces: [...(last?.pieces ?? []), piece] });
      continue;
    }
    // A heading goes along with what stands under it.
    const led = last.pieces.findLastIndex(({ keep }) => !keep) + 1;
    const again = draft.again.cloneNode(true) as HTMLElement;
    if (led === 0) drafts.splice(-1, 1, { ...last, columns, pieces: [...last.pieces, piece] });
    else {
      drafts.splice(-1, 1, { ...last, pieces: last.pieces.slice(0, led) });
      drafts.push({
        ...draft,
        head: again,
        fresh: false,
        columns,
        pieces: [...last.pieces.slice(led), piece],
      });
    }
  }
  return drafts.length === 0 ? [draft] : drafts;
}

/** Heights of steps, and of headings before them, across the sheet. */
function widths(pieces: Draft['pieces'], heightsOf: Heights): readonly (number | null)[] {
  const elements = pieces.map(({ element }) => element);
  const steps = elements.filter((element) => element.matches('.paper-step'));
  for (const step of steps) step.classList.add(WIDE);
  const heights = heightsOf(elements);
  for (const step of steps) step.classList.remove(WIDE);
  return pieces.map(({ element, keep }, index) =>
    keep || element.matches('.paper-step') ? (heights[index] ?? null) : null,
  );
}

/** Sets the words of a step across the sheet in two columns. */
const WIDE = 'paper-wide';

/** A draft that is measured. */
interface Drawn {
  readonly draft: Draft;
  readonly pieces: readonly { readonly element: HTMLElement }[];
  readonly run: Run;
}

/** What a sheet holds of a draft. */
interface Placed extends Band {
  readonly of: Drawn;
}

/** Records begin a sheet of their own, unless it saves one that they stand below the last steps. */
function planOf(drawn: readonly Drawn[], room: number): readonly (readonly Placed[])[] {
  const apart = filled(drawn, room);
  const below = filled(
    drawn.map((one) => (one.draft.joins ? { ...one, run: { ...one.run, fresh: false } } : one)),
    room,
  );
  return below.length < apart.length ? below : apart;
}

/** What fills the rest of a sheet stands there, or at the end where the sheet is full already. */
function filled(drawn: readonly Drawn[], room: number): readonly (readonly Placed[])[] {
  const inOrder = packed(drawn, room);
  const alone = inOrder.flatMap(([first]) => (first?.of.draft.fills ? [first.of] : []));
  if (alone.length === 0) return inOrder;
  const end = alone.map((one) => ({ ...one, run: { ...one.run, fresh: true } }));
  return packed([...drawn.filter((one) => !alone.includes(one)), ...end], room);
}

function packed(drawn: readonly Drawn[], room: number): readonly (readonly Placed[])[] {
  const plan = pack(
    drawn.map(({ run }) => run),
    room,
    GAP,
  );
  return plan.map((bands) =>
    bands.flatMap((band) => {
      const of = drawn[band.run];
      return of ? [{ ...band, of }] : [];
    }),
  );
}

function bandOf({ begins, parts, of: { draft, pieces } }: Placed): HTMLElement {
  const inside = parts.map(({ columns, wide }) => {
    const elements = columns.map(({ from, to }) => {
      const own = pieces.slice(from, to).map(({ element }) => element);
      if (wide) for (const step of own.filter((one) => one.matches('.paper-step'))) step.classList.add(WIDE);
      return make('div', 'paper-column', ...own);
    });
    return make('div', draft.columns === 1 || wide ? 'paper-one' : 'paper-columns', ...elements);
  });
  const head = begins ? draft.head : (draft.again.cloneNode(true) as HTMLElement);
  return make('div', draft.fills ? 'paper-band paper-fills' : 'paper-band', head, ...inside);
}

/** Says on the cover what stands in the print, and on which sheets. */
function fillContents(drafts: readonly Draft[], sheetsOf: (name: string) => readonly number[]): void {
  const place = drafts
    .flatMap(({ pieces }) => pieces)
    .find(({ element }) => element.matches('.paper-contents'))?.element;
  const names = new Set(drafts.flatMap(({ name }) => (name === '' ? [] : [name])));
  const rows = [...names].map((name) => {
    const on = sheetsOf(name);
    const words = on.length === 1 ? `sheet ${on[0]}` : `sheets ${on[0]} to ${on.at(-1)}`;
    return make('span', '', `${name}: ${words}`);
  });
  place?.replaceChildren(make('b', '', 'In this print'), ...rows);
}
