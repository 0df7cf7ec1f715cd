import { contourBounds } from '../../geometry/contour.ts';
import { isInside } from '../../geometry/inside.ts';
import { add, distanceBetween, type Point, scale, subtract, unit } from '../../geometry/point.ts';
import { movePoint } from '../../geometry/transform.ts';
import { mm, type ResolvedCut, type Station } from '../shape/resolved.ts';
import { HEIGHT, lettering, stroke } from './drawing.ts';
import { letter, rule, seen, straight, type View } from './view.ts';

/** Distance from the two datums, as the list of positions gives it. */
export function placeOf({ point }: Station, origin: Point, factor: number): string {
  return `x ${signed((point.x - origin.x) / factor)}  y ${signed((point.y - origin.y) / factor)}`;
}

/** A coordinate to 0.1 mm, with a true minus sign. */
export function signed(value: number): string {
  const text = mm(Math.round(value * 10) / 10);
  return text.startsWith('-') ? `−${text.slice(1)}` : text;
}

/** Names every cut, keep-out and datum that a view shows. */
export function labelView(view: View): void {
  labelDatums(view);
  for (const cut of view.resolved.cuts) if (cut.kind === 'outline') labelOutline(view, cut);
  for (const keepOut of view.resolved.keepOuts) {
    const places = innerPlaces(view, keepOut.area);
    const text = `KEEP OUT: ${keepOut.label}`;
    if (!letter(view, text, HEIGHT.small, places)) letter(view, 'KEEP OUT', HEIGHT.small, places);
  }
  for (const cut of view.resolved.cuts) {
    for (const station of cut.stations) labelStation(view, cut, station);
  }
}

function labelDatums(view: View): void {
  const all = view.lines.datums.flatMap(({ label, axis, line: datum }) => {
    if (datum.kind !== 'line') return [];
    const [from, to] = [movePoint(datum.from, view.move), movePoint(datum.to, view.move)];
    return [{ label, axis, datum, from, to, upright: Math.abs(to.x - from.x) < 1e-6 }];
  });
  // Level ones first: their words fit along them, and leave room for the others.
  for (const { label, axis, datum, from, to, upright } of all.sort(
    (a, b) => Number(a.upright) - Number(b.upright),
  )) {
    const { origin } = view.resolved;
    const position = axis === 'vertical' ? datum.from.x - origin.x : datum.from.y - origin.y;
    const text = `DATUM ${label} (${axis === 'vertical' ? 'x' : 'y'} = ${signed(position / view.factor)})`;
    const places = Array.from({ length: 60 }, (_, i) => {
      // From both ends towards the middle.
      const t = (i % 2 === 0 ? i : 59 - i + 1) / 60;
      const at = { x: from.x + (to.x - from.x) * t, y: from.y + (to.y - from.y) * t };
      return [1, -1].map((side) => ({
        at: upright
          ? { x: at.x + (side > 0 ? -1.8 : 1.8 + HEIGHT.small), y: at.y }
          : { x: at.x, y: at.y + (side > 0 ? 1.8 : -1.8 - HEIGHT.small) },
        turn: upright ? (90 as const) : (0 as const),
      }));
    }).flat();
    // Where no room is along the line, the words stand square to it.
    const square = Array.from({ length: 60 }, (_, i) => {
      const at = { x: from.x + ((to.x - from.x) * i) / 59, y: from.y + ((to.y - from.y) * i) / 59 };
      return ([1.8, -1.8] as const).map((away) => ({
        at: upright ? { x: at.x + away, y: at.y } : { x: at.x, y: at.y + away },
        anchor: away > 0 ? ('start' as const) : ('end' as const),
        turn: upright ? (0 as const) : (90 as const),
      }));
    }).flat();
    letter(view, text, HEIGHT.small, [...places, ...square]);
  }
}

function labelOutline(view: View, cut: ResolvedCut): void {
  const places = innerPlaces(view, cut.area);
  if (letter(view, `${cut.mark}  CUT AWAY`, HEIGHT.title, places, true)) return;
  if (!letter(view, `${cut.mark}  cut away`, HEIGHT.normal, places, true))
    letter(view, cut.mark, HEIGHT.small, places, true);
}

/** Places within an area, from its middle outwards, as far as the window shows it. */
function innerPlaces(view: View, area: ResolvedCut['area']): { at: Point }[] {
  const b = contourBounds(area);
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
    .filter((p) => isInside(area, p) && seen(view, p))
    .sort((p, q) => distanceBetween(p, middle) - distanceBetween(q, middle) || p.y - q.y || p.x - q.x)
    .map((p) => {
      const at = movePoint(p, view.move);
      return { at: { x: at.x, y: at.y - 1.2 } };
    });
}

/** Names a corner or a hole: on two lines where there is room, else on one, else by its mark alone. */
function labelStation(view: View, cut: ResolvedCut, station: Station): void {
  const at = seen(view, station.point);
  if (!at) return;
  const radius = cut.kind === 'outline' ? 0 : (cut.diameter ?? 0) / 2;
  const name = station.size ? `${station.mark}  ${station.size}` : station.mark;
  if (block(view, at, radius, [name, placeOf(station, view.resolved.origin, view.factor)])) return;
  if (block(view, at, radius, [name])) return;
  block(view, at, radius, [station.mark]);
}

const RINGS = [2.2, 5, 9, 14, 20, 28];

function block(view: View, at: Point, radius: number, lines: readonly string[]): boolean {
  const height = HEIGHT.small;
  const pitch = height * 1.5;
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
