import { type StackPiece, stackSection } from '../../../drawings/stack-section.ts';
import type { Markup } from '../../../html/markup.ts';
import { stringify } from '../../../html/stringify.ts';
import { actionsOf } from '../../../job/actions/walk.ts';
import {
  capitalised,
  gripOf,
  handledCount,
  isFixing,
  isNut,
  lengthless,
  listed,
  piecesOn,
} from '../../../job/index.ts';
import type { Step } from '../../../model/guide.ts';
import type { Fastener, Item, KitItem } from '../../../model/item.ts';
import { formatBoth, quantityOf } from '../../../units/format.ts';
import type { GuideContext } from '../../frame/context.ts';
import { shownWhen } from '../../frame/plans.ts';
import type { Shown } from '../../frame/shared-views.ts';

/** What lies on a bolt, drawn in section with its key. */
export interface StackView extends Shown {
  /** "2 bar bolts: what lies on each, from the head". */
  readonly title: string;
  readonly drawing: Markup;
  /** The bolt first. */
  readonly key: readonly { readonly letter: string; readonly text: string }[];
  /** The length of what is clamped against that of the bolt, or what is missing to say so. */
  readonly grip: string;
}

/** Where the bolts of a step differ: what lies at each position, a row a bolt. */
export interface PositionsView {
  readonly positions: readonly number[];
  readonly rows: readonly (Shown & { readonly bolt: string; readonly cells: readonly string[] })[];
}

/** The stacks of the bolts that a step puts in. */
export function stacksOf(
  step: Step,
  context: GuideContext,
): { readonly stacks: readonly StackView[]; readonly positions: PositionsView | null } {
  const bolts = boltsIn(step, context);
  const letters = lettersFor(bolts, context);
  const stacks = bolts.map((bolt) => stackView(bolt, letters, context));
  return { stacks, positions: bolts.length > 1 ? positionsView(bolts, letters, context) : null };
}

function boltsIn(step: Step, { guide }: GuideContext): readonly (Fastener | KitItem)[] {
  const goingIn = actionsOf(step).flatMap(({ node }) =>
    node.verb === 'start' || node.verb === 'fit' || node.verb === 'refit' ? [node.target.value] : [],
  );
  return [...new Set(goingIn)].flatMap((id) => {
    const item = guide.items.get(id);
    return item && isFixing(item) && item.stack.length > 0 ? [item] : [];
  });
}

/** One letter for one item, through all the stacks of a step: look-alikes are told apart by it. */
function lettersFor(
  bolts: readonly (Fastener | KitItem)[],
  { guide }: GuideContext,
): ReadonlyMap<string, string> {
  const ids = [...new Set(bolts.flatMap((bolt) => [bolt, ...piecesOn(bolt, guide)]).map(({ id }) => id))];
  return new Map(ids.map((id, index) => [id, letterAt(index)]));
}

/** A to Z without I and O, which are taken for numerals, then AA and so on. */
function letterAt(index: number): string {
  const letters = 'ABCDEFGHJKLMNPQRSTUVWXYZ';
  const last = letters[index % letters.length] ?? '';
  return index < letters.length ? last : letterAt(Math.floor(index / letters.length) - 1) + last;
}

function stackView(
  bolt: Fastener | KitItem,
  letters: ReadonlyMap<string, string>,
  context: GuideContext,
): StackView {
  const pieces = piecesOn(bolt, context.guide);
  const letterOf = ({ id }: Item) => letters.get(id) ?? '';
  const count = handledCount(bolt);
  return {
    ...shownWhen(context, bolt.when),
    title: `${count === 1 ? capitalised(bolt.noun.singular) : `${count} ${bolt.noun.plural}`}: what lies on ${count === 1 ? 'it' : 'each'}, from the head`,
    drawing: stringify([
      stackSection(
        letterOf(bolt),
        pieces.map((piece) => drawnAs(piece, bolt, letterOf(piece))),
      ),
    ]),
    key: [bolt, ...pieces].map((piece) => ({ letter: letterOf(piece), text: piece.noun.label })),
    grip: gripWords(bolt, context),
  };
}

function drawnAs(piece: Item, bolt: Fastener | KitItem, letter: string): StackPiece {
  const isClamped = piece.kind === 'part' || bolt.holds.some(({ value }) => value === piece.id);
  return {
    letter,
    shape: isNut(piece) ? 'nut' : isClamped ? 'clamped' : 'ring',
    length: 'length' in piece && piece.length ? piece.length.value.base : null,
  };
}

function gripWords(bolt: Fastener | KitItem, { guide }: GuideContext): string {
  const found = gripOf(bolt, guide);
  if (found) {
    const length = (value: number) => formatBoth(quantityOf('length', value, 'mm'));
    return `Between head and ${found.nut ? 'nut' : 'thread'}: ${length(found.grip)}. The bolt: ${length(found.length)}.`;
  }
  const missing = lengthless(bolt, guide).map(({ noun }) => `the ${noun.singular}`);
  return `The length of the bolt: not checked; no length is stated for ${listed([...new Set(missing)])}.`;
}

function positionsView(
  bolts: readonly (Fastener | KitItem)[],
  letters: ReadonlyMap<string, string>,
  context: GuideContext,
): PositionsView {
  const stacks = bolts.map((bolt) => piecesOn(bolt, context.guide));
  const most = Math.max(...stacks.map(({ length }) => length));
  return {
    positions: Array.from({ length: most }, (_, index) => index + 1),
    rows: bolts.map((bolt, row) => ({
      ...shownWhen(context, bolt.when),
      bolt: bolt.noun.label,
      cells: Array.from({ length: most }, (_, index) => {
        const piece = stacks[row]?.[index];
        return piece ? `${letters.get(piece.id)} ${piece.noun.label}` : '';
      }),
    })),
  };
}
