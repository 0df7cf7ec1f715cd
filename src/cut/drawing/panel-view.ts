import { contourBounds } from '../../geometry/contour.ts';
import { areaDistance, shortestBetween } from '../../geometry/distance.ts';
import { type Bounds, grow, midpoint, unite } from '../../geometry/point.ts';
import { line, type Segment } from '../../geometry/segment.ts';
import { escapeXml, number, pathData } from '../files/path-data.ts';
import { type OnOnePanel, shareAPanel } from '../shape/neighbours.ts';
import { onOtherSides, type PanelCut, type PanelSide, sidesOnPanel } from '../shape/on-panel.ts';
import { mm } from '../shape/resolved.ts';
import { HEIGHT, LINES, type LineKind } from './drawing.ts';
import { shifted } from './shifted.ts';

/** Width of the drawing as it is shown, mm: line widths and lettering are for this. */
const WIDTH = 84;

/** Height of a capital letter, as a part of the size of the page's face. */
const CAPITAL = 0.729;

/** What several templates cut in one panel, on one drawing. */
export interface PanelView {
  /** The side of the vehicle; `null` where the templates have none. */
  readonly side: 'left' | 'right' | null;
  /** Positions in the list of templates, in its order: the first is 1 on the drawing. */
  readonly templates: readonly number[];
  /** An SVG element, in the page's own colours: the panel seen from outside. */
  readonly drawing: string;
  /** The least panel that stays between cuts of two templates, mm; 0 where they overlap or one lies in the other. */
  readonly least: Gap;
}

/** Two cuts of different templates, and the panel between them. */
interface Gap {
  readonly apart: number;
  /** Each as the drawing names it: "1A". */
  readonly between: readonly [string, string];
  /** What the templates ask for, mm; 0 where neither says. */
  readonly web: number;
}

interface Placed {
  readonly name: string;
  readonly template: number;
  readonly cut: PanelCut;
}

/** Each panel, on each side, that more than one of some templates cuts. */
export function panelViews(templates: readonly OnOnePanel[]): readonly PanelView[] {
  const left = new Set(templates.keys());
  const views: PanelView[] = [];
  for (const [index, first] of templates.entries()) {
    if (!left.has(index)) continue;
    const group = [...left].filter(
      (other) => other === index || shareAPanel(first.template, templates[other]?.template ?? first.template),
    );
    for (const one of group) left.delete(one);
    if (group.length > 1) views.push(...viewsOf(group, templates));
  }
  return views;
}

/** The drawings of one panel: what lies on the left has nothing to do with what lies on the right. */
function viewsOf(group: readonly number[], templates: readonly OnOnePanel[]): readonly PanelView[] {
  const sides = group.flatMap((index, place) => {
    const one = templates[index];
    return one ? sidesOnPanel(one.template, one.resolved).map((side) => ({ side, index, place })) : [];
  });
  const named = [...new Set(sides.flatMap(({ side }) => side.side ?? []))];
  return (named.length === 0 ? [null] : named).flatMap((view) => {
    const here = sides.filter(({ side }) => !onOtherSides(side, { side: view }));
    const cuts = here.flatMap(({ side, index, place }) =>
      side.cuts.map((cut): Placed => ({ name: `${place + 1}${cut.mark}`, template: index, cut })),
    );
    const webs = group.map((index) => templates[index]?.template.web?.value ?? 0);
    const least = leastGap(cuts, Math.max(...webs));
    if (!least) return [];
    const drawing = drawn(
      cuts,
      here.map(({ side }) => side),
      least,
    );
    return [{ side: view, templates: group, drawing, least }];
  });
}

function leastGap(cuts: readonly Placed[], web: number): Gap | null {
  let least: Gap | null = null;
  for (const [index, one] of cuts.entries()) {
    for (const other of cuts.slice(index + 1)) {
      if (one.template === other.template) continue;
      const apart = areaDistance(one.cut.area, other.cut.area);
      if (!least || apart < least.apart) least = { apart, between: [one.name, other.name], web };
    }
  }
  return least;
}

function drawn(cuts: readonly Placed[], sides: readonly PanelSide[], least: Gap): string {
  const panels = sides.flatMap(({ panel }) => panel ?? []);
  const keepOuts = sides.flatMap((side) => side.keepOuts);
  const all = [...cuts.map(({ cut }) => cut.area), ...keepOuts.map(({ area }) => area), ...panels];
  const tight = unite(all.map(contourBounds));
  /** Millimetres of the panel per millimetre of the drawing as it is shown. */
  const factor = Math.max(tight.maxX - tight.minX, (tight.maxY - tight.minY) * 0.75, 1) / WIDTH;
  const window = grow(tight, 8 * factor);
  // What is too near, or overlaps, is drawn twice as wide.
  const isClose = (name: string) => least.apart < least.web - 1e-6 && least.between.includes(name);
  const [from, to] = least.between.map((name) => cuts.find((one) => one.name === name)?.cut.area);
  const ends = from && to && least.apart > 0 ? shortestBetween(from, to) : null;
  const taken = cuts.map(({ cut }) => contourBounds(cut.area));
  const names = cuts.map(({ name, cut }) => {
    const one = lettered(name, contourBounds(cut.area), taken, factor);
    taken.push(one.box);
    return one;
  });
  const between =
    ends && lettered(`${mm(least.apart)} mm`, aPointAt(midpoint(ends.from, ends.to)), taken, factor);
  const inner = [
    path(
      'thin',
      'cut-panel-edge',
      panels.flatMap((one) => one.segments),
      window,
      factor,
    ),
    path(
      'keepOut',
      'cut-keep-out',
      keepOuts.flatMap(({ area }) => area.segments),
      window,
      factor,
    ),
    ...cuts.map(({ name, cut }) =>
      path('cut', 'cut-line', cut.area.segments, window, isClose(name) ? 2 * factor : factor),
    ),
    ...(ends
      ? [
          path('thin', 'cut-dimension', [line(ends.from, ends.to)], window, factor),
          // The distance stands below the drawing too: where it would hide a cut, it is left to that.
          ...(between?.free ? [words(between, window, factor)] : []),
        ]
      : []),
    ...names.map((one) => words(one, window, factor)),
  ].join('');
  const size = `${number(window.maxX - window.minX)} ${number(window.maxY - window.minY)}`;
  return `<svg xmlns="http://www.w3.org/2000/svg" class="cut-preview" viewBox="0 0 ${size}" role="img" aria-label="The cuts of ${new Set(cuts.map(({ template }) => template)).size} templates on one panel, seen from outside: reduced drawing, not for measuring" fill="none" stroke="currentColor">${inner}</svg>`;
}

/** Words on the drawing, with the room that they take on the panel. */
interface Lettered {
  readonly text: string;
  readonly box: Bounds;
  /** Whether they lie on nothing else. */
  readonly free: boolean;
}

/** Words beside something, where they lie on nothing if there is such a place; above it and to the right otherwise. */
function lettered(text: string, beside: Bounds, taken: readonly Bounds[], factor: number): Lettered {
  const height = HEIGHT.small * factor;
  // Wide enough for any letter and figure of the page's face.
  const width = 0.65 * (HEIGHT.small / CAPITAL) * factor * text.length;
  const across = { right: beside.maxX + factor, left: beside.minX - factor - width };
  const up = { above: beside.maxY + factor, below: beside.minY - factor - height };
  const middle = { x: (beside.minX + beside.maxX - width) / 2, y: (beside.minY + beside.maxY - height) / 2 };
  const places: readonly (readonly [x: number, y: number])[] = [
    [across.right, up.above],
    [across.right, up.below],
    [across.left, up.above],
    [across.left, up.below],
    [across.right, middle.y],
    [across.left, middle.y],
    [middle.x, up.above],
    [middle.x, up.below],
  ];
  const boxes = places.map(([x, y]) => ({ minX: x, minY: y, maxX: x + width, maxY: y + height }));
  const free = boxes.find((box) => !taken.some((one) => meet(box, one)));
  const [first = beside] = boxes;
  return { text, box: free ?? first, free: free !== undefined };
}

function meet(a: Bounds, b: Bounds): boolean {
  return a.minX < b.maxX && b.minX < a.maxX && a.minY < b.maxY && b.minY < a.maxY;
}

function aPointAt({ x, y }: { readonly x: number; readonly y: number }): Bounds {
  return { minX: x, minY: y, maxX: x, maxY: y };
}

function words({ text, box }: Lettered, window: Bounds, factor: number): string {
  return `<text class="cut-text" x="${number(box.minX - window.minX)}" y="${number(window.maxY - box.minY)}" font-size="${number((HEIGHT.small / CAPITAL) * factor)}" fill="currentColor" stroke="none">${escapeXml(text)}</text>`;
}

function path(kind: LineKind, name: string, segments: readonly Segment[], w: Bounds, factor: number): string {
  if (segments.length === 0) return '';
  const { width, dash } = LINES[kind];
  const dashes =
    dash.length > 0 ? ` stroke-dasharray="${dash.map((part) => number(part * factor)).join(' ')}"` : '';
  const d = pathData(
    segments.map((one) => shifted(one, w)),
    w.maxY - w.minY,
  );
  return `<path class="${name}" d="${d}" stroke-width="${number(width * factor)}"${dashes}/>`;
}
