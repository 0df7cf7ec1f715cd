import type { ToolFinder } from './crib-names.ts';
import type { Inventory } from './inventory.ts';
import type { OldPiece, OldSection } from './outline.ts';
import { countedThing } from './quantities.ts';
import { keptWords, toDecide } from './read/markdown-text.ts';

/** What the lists of an old guide gave. */
export interface Lists {
  readonly hasKitList: boolean;
  /** Lines for what its author has to decide about an entry, and the old words of each list. */
  readonly decide: readonly string[];
  /** What of a section is no entry of a list, and stands in the guide as text. */
  readonly left: (section: OldSection) => readonly OldPiece[];
}

/** Declares what the lists of an old guide name: the kit with its numbers, tools and what is worn as the crib knows them. */
export function listsOf(sections: readonly OldSection[], inventory: Inventory, findTools: ToolFinder): Lists {
  const decide: string[] = [];
  const listed = sections.filter(({ kind }) => kind !== 'work' && kind !== 'prove');
  for (const { title, kind, pieces } of listed) {
    const entries = pieces.flatMap((piece) => (piece.kind === 'entry' ? [piece] : []));
    const columns = pieces.flatMap((piece) => (piece.kind === 'columns' ? [piece.text] : []));
    const doubts = entries.flatMap((piece) =>
      kind === 'kit' ? kitEntry(piece, inventory) : otherEntry(piece, kind, inventory, findTools),
    );
    decide.push(
      ...doubts,
      keptWords(
        [title, ...columns, ...entries.map(({ whole }) => whole)].filter((one) => one !== '').join('; '),
      ),
    );
  }
  return {
    hasKitList: listed.some(({ kind }) => kind === 'kit'),
    decide,
    left: ({ kind, pieces }) =>
      kind === 'work' ? pieces : pieces.filter((piece) => piece.kind !== 'entry' && piece.kind !== 'columns'),
  };
}

type Entry = OldPiece & { readonly kind: 'entry' };

function kitEntry({ text, count, whole, place }: Entry, inventory: Inventory): readonly string[] {
  const thing = countedThing(text, count);
  const made = inventory.add({ kind: 'kit', name: thing.name, count: thing.count });
  const doubt = thing.count === null ? [toDecide('how many there are in the box', whole, place)] : [];
  return [...doubt, ...made.doubts.map((what) => toDecide(what, whole, place))];
}

function otherEntry(
  { text, whole, place }: Entry,
  kind: OldSection['kind'],
  inventory: Inventory,
  findTools: ToolFinder,
): readonly string[] {
  const found = findTools(text, true);
  for (const { tool } of found) inventory.own(tool);
  const named = found.some(({ from, to }) => (to - from) * 2 > text.length);
  if (named) return [];
  if (kind === 'supplies') {
    inventory.add({ kind: 'supply', name: text.replace(/\.$/, ''), count: 1 });
    return [];
  }
  const what = {
    tools: 'which tool of the crib this is, in a line like ::tool',
    wear: 'what of the crib is worn, in a line like ::wear',
    kit: '',
    needs: 'whether this is a tool, a supply or from the box, in a line like ::tool, ::supply or ::kit',
    prove: '',
    work: '',
  }[kind];
  inventory.open.push(text);
  return [toDecide(what, whole, place)];
}
