import { contourBounds } from '../../geometry/contour.ts';
import { isInside } from '../../geometry/inside.ts';
import { add, distanceBetween, type Point, scale, subtract, unit } from '../../geometry/point.ts';
import { movePoint } from '../../geometry/transform.ts';
import { mm, type ResolvedCut, type Station } from '../shape/resolved.ts';
import { HEIGHT, lettering, stroke } from './drawing.ts';
import { letter, rule, seen, straight, type View } from './view.ts';

/** Distance from the two datums, as the list of positions gives it. */
function placeOf({ point }: Station, origin: Point, factor: number): string {
  return `x ${signed((point.x - origin.x) / factor)}  y ${signed((point.y - origin.y) / factor)}`;
}

/** A coordinate with a true minus sign. */
export function signed(value: number): string {
  const text = mm(value);
  return text.startsWith('-') ? `−${text.slice(1)}` : text;
}

/** Names every cut, corner, hole and keep-out that a view shows. */
export function labelView(view: View): void {
  labelAreas(view);
  labelStations(view);
}

/** Names what falls away, and what must be kept clear of. */
export function labelAreas(view: View): void {
  for (const cut of view.resolved.cuts) if (cut.kind === 'outline') labelOutline(view, cut);
  for (const keepOut of view.resolved.keepOuts) {
    const places = innerPlaces(view, keepOut.area);
    const text = `KEEP OUT: ${keepOut.label}`;
    if (letter(view, text, HEIGHT.small, places)) continue;
    letter(view, 'KEEP OUT', HEIGHT.small, places);
    letter(view, keepOut.label, HEIGHT.small, places);
  }
}

/** Names every corner and hole, with its place. */
export function labelStations(view: View): void {
  for (const cut of view.resolved.cuts) {
    for (const station of cut.stations) labelStation(view, cut, station);
  }
}

/** Says of every datum, and of every line parallel to one, what it is. */
export function labelReferences(view: View): void {
  const all = view.references.flatMap(({ line: at, words: said }) => {
    if (at.kind !== 'line') return [];
    const [from, to] = [movePoint(at.from, view.move), movePoint(at.to, view.move)];
    return [{ said, from, to, upright: Math.abs(to.x - from.x) < 1e-6 }];
  });
  // Level ones first: their words fit along them, and leave room for the others.
  for (const { said, from, to, upright } of all.sort((a, b) => Number(a.upright) - Number(b.upright))) {
    const on = (i: number, count: number): Point => ({
      x: from.x + ((to.x - from.x) * i) / count,
      y: from.y + ((to.y - from.y) * i) / count,
    });
    const along = Array.from({ length: 90 }, (_, i) => {
      // From both ends towards the middle.
      const at = on(i % 2 === 0 ? i : 89 - i + 1, 90);
      return [1, -1].map((side) => ({
        at: upright
          ? { x: at.x + (side > 0 ? -1.8 : 1.8 + HEIGHT.small), y: at.y }
          : { x: at.x, y: at.y + (side > 0 ? 1.8 : -1.8 - HEIGHT.small) },
        turn: upright ? (90 as const) : (0 as const),
      }));
    }).flat();
    // Where no room is along the line, the words stand square to it.
    const square = Array.from({ length: 90 }, (_, i) => {
      const at = on(i, 89);
      return ([1.8, -1.8] as const).map((away) => ({
        at: upright ? { x: at.x + away, y: at.y } : { x: at.x, y: at.y + away },
        anchor: away > 0 ? ('start' as const) : ('end' as const),
        turn: upright ? (0 as const) : (90 as const),
      }));
    }).flat();
    const places = [...along, ...square];
    if (!said.some((text) => letter(view, text, HEIGHT.small, places)))
      said.some((text) => letter(view, text, HEIGHT.ruler, places));
  }
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
    .filter((p) => isInside(area, p) && seen(view, p))
    .sort((p, q) => distanceBetween(p, middle) - distanceBetween(q, middle) || p.y - q.y || p.x - q.x)
    .map((p) => {
      const at = movePoint(p, view.move);
      return { at: { x: at.x, y: at.y - 1.2 } };
    });
}

/** Names a corner or a hole: on two lines where there is room, else on one, else by its mark alone. */
function labelStation(view: View, cut: ResolvedCut, station: Station): void {
  const radius = cut.kind === 'outline' ? 0 : (cut.diameter ?? 0) / 2;
  const corner = seen(view, station.point);
  const arc = station.on ? seen(view, station.on) : null;
  // A rounded corner is named at its point, or else at its arc from the waste, past the hatching.
  const places = [
    ...(corner ? [{ at: corner, radius }] : []),
    ...(arc ? [{ at: arc, radius: PAST_HATCH }] : []),
  ];
  const name = station.size ? `${station.mark}  ${station.size}` : station.mark;
  const place = placeOf(station, view.resolved.origin, view.factor);
  for (const lines of [[name, place], [`${name}  ${place}`], [name], [station.mark]]) {
    if (places.some(({ at, radius: away }) => block(view, at, away, lines))) return;
  }
}

const RINGS = [2.2, 5, 9, 14, 20, 28, 38, 50];

/** How far from a line its hatching reaches, mm. */
const PAST_HATCH = 2.4;

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
