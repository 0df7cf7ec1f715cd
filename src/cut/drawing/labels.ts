import { contourBounds } from '../../geometry/contour.ts';
import { isInside } from '../../geometry/inside.ts';
import {
  add,
  type Bounds,
  distanceBetween,
  type Point,
  scale,
  subtract,
  unit,
} from '../../geometry/point.ts';
import { moveContour, movePoint } from '../../geometry/transform.ts';
import { mm, type Resolved, type ResolvedCut, type Station } from '../shape/resolved.ts';
import { HEIGHT, lettering, stroke } from './drawing.ts';
import { nearness, type Spot } from './nearness.ts';
import { PAST_EDGE } from './panel-marks.ts';
import { letter, letterLines, PITCH, rule, seen, straight, type TextPlace, type View } from './view.ts';

/** Distance from the two datums, as the list of positions gives it. */
function placeOf({ point }: Station, origin: Point, factor: number): string {
  return `x ${signed((point.x - origin.x) / factor)}  y ${signed((point.y - origin.y) / factor)}`;
}

/** A coordinate with a true minus sign. */
export function signed(value: number): string {
  const text = mm(value);
  return text.startsWith('-') ? `−${text.slice(1)}` : text;
}

/** Names what falls away, and what must be kept clear of. */
export function labelAreas(view: View): void {
  for (const cut of view.resolved.cuts) if (cut.kind === 'outline') labelOutline(view, cut);
  for (const { area, label } of view.resolved.keepOuts) labelKeepOut(view, area, label);
}

/** A keep-out bears its name: on one line, else on several, else upwards along it, else in small letters. */
function labelKeepOut(view: View, area: ResolvedCut['area'], label: string): void {
  const text = `KEEP OUT: ${label}`;
  const inner = innerPlaces(view, area);
  const upward = inner.map(({ at }) => ({ at: { x: at.x + HEIGHT.small / 2, y: at.y }, turn: 90 as const }));
  for (const height of [HEIGHT.small, HEIGHT.ruler]) {
    const lines = [[text], ...broken(view, text, height, [60, 42, 30, 22])];
    if ([inner, upward].some((places) => lines.some((one) => letterLines(view, one, height, places)))) return;
  }
  letter(view, 'KEEP OUT', HEIGHT.ruler, [...inner, ...upward]);
}

/** More corners than a person would mark out; lines with more are curves that a program has written as points. */
const MOST_MARKED_OUT = 200;

/** How many names such curves have: the leaders of more would cover what is cut. */
const NAMES_OF_CURVES = 24;

/**
 * Of how many corners of the outlines one is named on a drawing: each, but for curves that are written as points. The list
 * of positions has each of those too.
 */
export function cornersToAName({ cuts }: Resolved): number {
  const corners = cuts.flatMap(({ kind, stations }) => (kind === 'outline' ? stations : []));
  return corners.length > MOST_MARKED_OUT ? Math.ceil(corners.length / NAMES_OF_CURVES) : 1;
}

/** Names corners with their places, as evenly as they stand, and every hole and slot. */
export function labelStations(view: View): void {
  const all = view.resolved.cuts.flatMap((cut) =>
    cut.stations.map((station) => ({ cut, station, own: spotsOf(view, cut, station) })),
  );
  const isNearAnother = nearness(all.map(({ own }) => own));
  const pace = cornersToAName(view.resolved);
  const corners = all.filter(({ cut }) => cut.kind === 'outline');
  const unnamed = new Set(corners.filter((_, index) => index % pace !== 0));
  for (const one of all) {
    const { station, own } = one;
    if (!unnamed.has(one)) labelStation(view, station, own, (box) => isNearAnother(box, own));
  }
}

/** Where a corner or hole is seen: a rounded corner at its point, or else at its arc from the waste, past the hatching. */
function spotsOf(view: View, cut: ResolvedCut, { point, on }: Station): Spot[] {
  const radius = cut.kind === 'outline' ? 0 : (cut.diameter ?? 0) / 2;
  const corner = seen(view, point);
  const arc = on ? seen(view, on) : null;
  return [
    ...(corner ? [{ at: corner, radius, reach: radius > 0 ? radius + PAST_EDGE : 0 }] : []),
    ...(arc ? [{ at: arc, radius: PAST_HATCH, reach: 0 }] : []),
  ];
}

/** Says of every datum, and of every line parallel to one, what it is. */
export function labelReferences(view: View): void {
  const all = view.references.flatMap(({ line: at, words: said }): ReferenceLine[] => {
    if (at.kind !== 'line') return [];
    const [from, to] = [movePoint(at.from, view.move), movePoint(at.to, view.move)];
    return [{ said, from, to, upright: Math.abs(to.x - from.x) < 1e-6 }];
  });
  // Level ones first: their words fit along them, and leave room for the others.
  for (const one of all.toSorted((a, b) => Number(a.upright) - Number(b.upright))) {
    if (!labelReference(view, one, all, HEIGHT.small)) labelReference(view, one, all, HEIGHT.ruler);
  }
}

/** A line by which a sheet is laid, as it stands on the sheet, with what is said of it. */
interface ReferenceLine {
  readonly said: readonly string[];
  readonly from: Point;
  readonly to: Point;
  readonly upright: boolean;
}

/** Widths into which the words of a line are broken where it has no room for them on one line, mm. */
const BROKEN = [120, 90, 66, 48, 34] as const;

/**
 * The words stand along their line, broken if need be. Square to it they could be read as another line's, so that
 * is left for where nothing else fits, and never beside a line that runs their way.
 */
function labelReference(
  view: View,
  { said, from, to, upright }: ReferenceLine,
  all: readonly ReferenceLine[],
  height: number,
): boolean {
  const on = (i: number, count: number): Point => ({
    x: from.x + ((to.x - from.x) * i) / count,
    y: from.y + ((to.y - from.y) * i) / count,
  });
  const pitch = height * PITCH;
  const turn = upright ? (90 as const) : (0 as const);
  const along = (lines: number): TextPlace[] =>
    Array.from({ length: 90 }, (_, i) => {
      // From both ends towards the middle.
      const at = on(i % 2 === 0 ? i : 89 - i + 1, 90);
      return [1.8 + (lines - 1) * pitch, -1.8 - height].map((away) => ({
        at: upright ? { x: at.x - away, y: at.y } : { x: at.x, y: at.y + away },
        turn,
      }));
    }).flat();
  const square = (lines: number): TextPlace[] =>
    Array.from({ length: 90 }, (_, i) => {
      const at = on(i, 89);
      return [1.8, -1.8].map((away): TextPlace => {
        const anchor = away > 0 ? 'start' : 'end';
        const first = (0.5 * (lines - 1) + 0.5) * pitch;
        return upright
          ? { at: { x: at.x + away, y: at.y + first }, anchor, turn: 0 }
          : { at: { x: at.x - first, y: at.y + away }, anchor, turn: 90 };
      });
    })
      .flat()
      .filter(({ at }) =>
        all.every(
          (one) =>
            one.upright === upright ||
            Math.abs(upright ? at.y - one.from.y : at.x - one.from.x) > (lines + 3) * height,
        ),
      );
  const off = outsideKeepOuts(view);
  const stands = (text: string, held: (place: TextPlace) => boolean): boolean => {
    // How far a line lies from its datum stays on the first line where that fits.
    const [head = '', rest] = text.split(/(?<=datum:) /);
    const more = broken(view, rest ?? head, height, BROKEN);
    const ways = [
      [text],
      ...(rest === undefined ? more : [[head, rest], ...more.map((one) => [head, ...one])]),
      ...(rest === undefined ? [] : broken(view, text, height, BROKEN)),
    ];
    return [along, square].some((places) =>
      ways.some((lines) => letterLines(view, lines, height, places(lines.length).filter(held))),
    );
  };
  const [telling, bare] = [said.slice(0, -1), said.slice(-1)];
  return (
    telling.some((text) => stands(text, off)) ||
    telling.some((text) => stands(text, () => true)) ||
    bare.some((text) => stands(text, () => true))
  );
}

/** Whether a place lies in no keep-out: words in one are taken for what is behind. */
function outsideKeepOuts({ resolved, move }: View): (place: TextPlace) => boolean {
  const areas = resolved.keepOuts.map(({ area }) => moveContour(area, move));
  return ({ at }) => !areas.some((area) => isInside(area, at));
}

/** A text on two to four lines, for each of some widths that holds its longest word. */
function broken(view: View, text: string, height: number, widths: readonly number[]): string[][] {
  // A figure stays with its unit.
  const kept = text.replaceAll(/(\d) mm/g, '$1\u00a0mm');
  return widths
    .map((width) => view.metrics.wrap(kept, height, width).map((one) => one.replaceAll('\u00a0', ' ')))
    .filter((lines) => lines.length > 1 && lines.length < 5 && lines.join(' ') === text);
}

function labelOutline(view: View, cut: ResolvedCut): void {
  const places = innerPlaces(view, cut.area);
  if (letter(view, `${cut.mark}  CUT AWAY`, HEIGHT.title, places, true)) return;
  if (!letter(view, `${cut.mark}  cut away`, HEIGHT.normal, places, true))
    letter(view, cut.mark, HEIGHT.small, places, true);
}

/** Places within what the window shows of an area, from the middle of that outwards. */
function innerPlaces(view: View, area: ResolvedCut['area']): { at: Point }[] {
  const [whole, shown] = [contourBounds(area), view.shown];
  const b = {
    minX: Math.max(whole.minX, shown.minX),
    maxX: Math.min(whole.maxX, shown.maxX),
    minY: Math.max(whole.minY, shown.minY),
    maxY: Math.min(whole.maxY, shown.maxY),
  };
  if (b.minX >= b.maxX || b.minY >= b.maxY) return [];
  const middle = { x: (b.minX + b.maxX) / 2, y: (b.minY + b.maxY) / 2 };
  const places: Point[] = [];
  for (let i = 0; i <= 14; i++) {
    for (let j = 0; j <= 14; j++) {
      places.push({
        x: b.minX + ((b.maxX - b.minX) * (i + 0.5)) / 15,
        y: b.minY + ((b.maxY - b.minY) * (j + 0.5)) / 15,
      });
    }
  }
  return [middle, ...places]
    .filter((p) => seen(view, p) && isInside(area, p))
    .sort((p, q) => distanceBetween(p, middle) - distanceBetween(q, middle) || p.y - q.y || p.x - q.x)
    .map((p) => {
      const at = movePoint(p, view.move);
      return { at: { x: at.x, y: at.y - 1.2 } };
    });
}

/** Names a corner or a hole with its place: on two lines where there is room, else on one, else smaller; else by its mark alone. */
function labelStation(
  view: View,
  station: Station,
  own: readonly Spot[],
  isNearAnother: (box: Bounds) => boolean,
): void {
  const name = station.size ? `${station.mark}  ${station.size}` : station.mark;
  const place = placeOf(station, view.resolved.origin, view.factor);
  const full = [[name, place], [`${name}  ${place}`]];
  const tries = [
    ...[HEIGHT.small, HEIGHT.ruler].flatMap((height) => full.map((lines) => ({ lines, height }))),
    ...[name, station.mark].map((text) => ({ lines: [text], height: HEIGHT.small })),
  ];
  for (const { lines, height } of tries) {
    if (own.some((spot) => block(view, spot, isNearAnother, lines, height))) return;
  }
}

const RINGS = [2.2, 5, 9, 14, 20, 28, 38, 50];

/** How far from a line its hatching reaches, mm. */
const PAST_HATCH = 2.4;

function block(
  view: View,
  { at, radius }: Spot,
  isNearAnother: (box: Bounds) => boolean,
  lines: readonly string[],
  height: number,
): boolean {
  const pitch = height * PITCH;
  const wide = Math.max(...lines.map((text, i) => view.metrics.width(text, height, i === 0)));
  const tall = pitch * (lines.length - 1) + height;
  for (const ring of RINGS) {
    for (let k = 0; k < 16; k++) {
      const angle = Math.PI / 4 + (k * Math.PI) / 8;
      const way = { x: Math.cos(angle), y: Math.sin(angle) };
      const anchor = add(at, scale(way, radius + ring));
      const left = way.x > 0.38 ? anchor.x : way.x < -0.38 ? anchor.x - wide : anchor.x - wide / 2;
      const low = way.y > 0.38 ? anchor.y : way.y < -0.38 ? anchor.y - tall : anchor.y - tall / 2;
      const box = {
        minX: left,
        minY: low - 0.35 * height,
        maxX: left + wide,
        maxY: low + tall + 0.1 * height,
      };
      if (!view.floor.isFree(box)) continue;
      // Without a leader a name is read as that of what is nearest.
      if (ring <= 5 && isNearAnother(box)) continue;
      if (ring > 5 && !leader(view, at, radius, anchor)) continue;
      view.floor.blockBox(box);
      lines.forEach((text, i) => {
        view.marks.push(
          lettering(text, left, low + pitch * (lines.length - 1 - i), height, { bold: i === 0 }),
        );
      });
      return true;
    }
  }
  return false;
}

/** A leader line (ISO 128, continuous narrow) from a label to its corner or to the edge of its hole. */
function leader(view: View, at: Point, radius: number, to: Point): boolean {
  const way = unit(subtract(to, at));
  const from = add(at, scale(way, radius + 0.9));
  const end = subtract(to, scale(way, 0.8));
  if (!view.floor.isClear(from, end)) return false;
  rule(view, stroke('thin', straight(from, end)));
  return true;
}
