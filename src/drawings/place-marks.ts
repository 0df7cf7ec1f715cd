import type { FigureMark, PictureBox, PicturePlace } from '../model/block.ts';
import { assignLetters } from './assign-letters.ts';
import type { DrawingPoint, Leader } from './leader.ts';

/** A side of the picture on which letters stand in a row or a column. */
type MarkSide = 'above' | 'below' | 'left' | 'right';

/** A letter with its place and its leader, in units of the overlay. */
export interface PlacedMark {
  readonly letter: string;
  readonly side: MarkSide;
  /** Centre of the letter. */
  readonly centre: DrawingPoint;
  /** From the letter's edge to the dot. */
  readonly leader: Leader;
}

/** Where everything stands. The picture shown is 1000 units wide, its upper left corner at 0, 0. */
export interface MarkLayout {
  readonly placed: readonly PlacedMark[];
  /** Where more of what a letter stands for are: a dot without a line. */
  readonly also: readonly DrawingPoint[];
  /** Sides that have a margin with letters. */
  readonly sides: readonly MarkSide[];
  /** Height of the picture shown, in units. */
  readonly height: number;
  /** Letters whose marks lie outside the picture, or outside the part of it that is shown. */
  readonly outside: readonly string[];
  /** Size of the letters: all are alike. */
  readonly letterSize: number;
}

/** Width of the picture in units of the overlay. */
export const PICTURE_WIDTH = 1000;

/** Width of a margin with letters. */
export const MARGIN = 70;

/** Size of the letters: 5 mm high capitals (ISO 3098) on a picture printed 160 mm wide, 11 pixels on a phone. */
const LETTER_SIZE = 46;

/** Distance of neighbouring letters. */
const PITCH = 62;

/** What a further margin costs, in units of leader length. */
const MARGIN_COST = 250;

/**
 * Places the letters of a figure after ISO 6433: outside the outline (for a photo, its edge), in line in a row or
 * a column, with leaders that do not cross and end in a dot inside. Wide pictures get rows, which cost no width
 * on a phone; tall ones get columns.
 *
 * @param picture size of the upright, uncropped picture, in any unit
 * @param shown the part that is shown; `null` is all
 */
export function placeMarks(
  marks: readonly Placeable[],
  picture: PictureSize,
  shown: PictureBox | null,
): MarkLayout {
  const { height, placed } = overlayOf(picture, shown);
  const inside: { readonly letter: string; readonly point: DrawingPoint }[] = [];
  const others: DrawingPoint[] = [];
  const outside: string[] = [];
  for (const { letter, point: written, also = [] } of marks) {
    if (!written) continue;
    const [point, ...more] = [written, ...also].map(placed);
    const seen = more.filter((place) => place !== null);
    if (point) inside.push({ letter, point });
    others.push(...seen);
    if (!point || seen.length < more.length) outside.push(letter);
  }
  return { ...bestSides(inside, height), also: others, height, outside };
}

/** What of a mark is placed. */
interface Placeable extends Pick<FigureMark, 'letter' | 'point'>, Partial<Pick<FigureMark, 'also'>> {}

/** Of the upright, uncropped picture, in any unit. */
export interface PictureSize {
  readonly width: number;
  readonly height: number;
}

/** How places of a picture come to lie in the overlay: 1000 units wide, and so high; `null` for what is not shown. */
export function overlayOf(
  picture: PictureSize,
  shown: PictureBox | null,
): { readonly height: number; readonly placed: (place: PicturePlace) => DrawingPoint | null } {
  const part = shown ?? { left: 0, top: 0, width: 1, height: 1 };
  const height = tenth((PICTURE_WIDTH * part.height * picture.height) / (part.width * picture.width));
  const placed = (place: PicturePlace) => {
    const x = (place.x - part.left) / part.width;
    const y = (place.y - part.top) / part.height;
    if (x < 0 || x > 1 || y < 0 || y > 1) return null;
    return { x: tenth(x * PICTURE_WIDTH), y: tenth(y * height) };
  };
  return { height, placed };
}

/** Tenths of a unit are what is drawn, so that is what is reckoned with. */
function tenth(value: number): number {
  return Math.round(value * 10) / 10;
}

function bestSides(
  marks: readonly { readonly letter: string; readonly point: DrawingPoint }[],
  height: number,
): Pick<MarkLayout, 'placed' | 'sides' | 'letterSize'> {
  if (marks.length === 0) return { placed: [], sides: [], letterSize: LETTER_SIZE };
  const [first, second]: readonly MarkSide[] =
    height > 1.15 * PICTURE_WIDTH ? ['left', 'right'] : ['above', 'below'];
  if (!first || !second) throw new Error('a layout has two sides');
  const points = marks.map(({ point }) => point);
  const pitch = pitchFor(marks.length, first === 'left' ? height : PICTURE_WIDTH);
  const tried = [[first], [second], [first, second]]
    .map((sides) => ({ sides, slots: sides.flatMap((side) => slotsOn(side, height, pitch)) }))
    .filter(({ slots }) => slots.length >= marks.length)
    .map(({ sides, slots }) => ({ sides, slots, chosen: assignLetters(points, slots) }));
  const price = (one: (typeof tried)[number]) => one.chosen.cost + one.sides.length * MARGIN_COST;
  const best = tried.reduce((least, one) => (price(one) < price(least) ? one : least));
  const placed = marks.map(({ letter, point }, index): PlacedMark => {
    const slot = best.slots[best.chosen.slots[index] ?? 0];
    if (!slot) throw new Error('a mark without a slot');
    return {
      letter,
      side: slot.side,
      centre: slot.centre,
      leader: { from: { x: slot.x, y: slot.y }, to: point },
    };
  });
  const sides = best.sides.filter((side) => placed.some((mark) => mark.side === side));
  return { placed, sides, letterSize: Math.min(LETTER_SIZE, pitch * 0.74) };
}

/** Letters stand closer only where both sides together would not hold them. */
function pitchFor(count: number, length: number): number {
  return Math.min(PITCH, length / Math.ceil(count / 2));
}

interface Slot extends DrawingPoint {
  readonly side: MarkSide;
  readonly centre: DrawingPoint;
}

/** Places for letters on one side, evenly spaced and centred; the slot itself is where the leader begins. */
function slotsOn(side: MarkSide, height: number, pitch: number): Slot[] {
  const across = side === 'above' || side === 'below';
  const length = across ? PICTURE_WIDTH : height;
  const count = Math.max(1, Math.floor(length / pitch + 1e-9));
  return Array.from({ length: count }, (_, index) => {
    const along = length / 2 + (index - (count - 1) / 2) * pitch;
    return slotAt(side, along, height);
  });
}

function slotAt(side: MarkSide, along: number, height: number): Slot {
  const near = MARGIN * 0.2;
  const far = MARGIN * 0.56;
  switch (side) {
    case 'above':
      return { side, x: along, y: -near, centre: { x: along, y: -far } };
    case 'below':
      return { side, x: along, y: height + near, centre: { x: along, y: height + far } };
    case 'left':
      return { side, x: -near, y: along, centre: { x: -far, y: along } };
    case 'right':
      return { side, x: PICTURE_WIDTH + near, y: along, centre: { x: PICTURE_WIDTH + far, y: along } };
  }
}
