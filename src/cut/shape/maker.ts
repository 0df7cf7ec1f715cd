import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { type Contour, contourBounds } from '../../geometry/contour.ts';
import { type Point, samePoint } from '../../geometry/point.ts';
import type { CutOutline, CutPattern, CutTemplate, MakersDrawing } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';
import { type DrawnShape, type ReadDrawing, readDrawing, shapesInWords } from '../read/read-drawing.ts';
import { mm } from './resolved.ts';
import { FILE_HOLES, FILE_UNREADABLE } from './rules.ts';

/** A circle of a maker's drawing and a diameter that an author typed are one size within this, mm. */
const SAME_DIAMETER = 0.05;

/** A circle of a file that a pattern takes as one of its holes. */
export interface TakenHole {
  readonly path: string;
  readonly centre: Point;
  readonly diameter: number;
}

/** What a drawing holds, or `null`, with a finding where it cannot be read as drawn. */
function read(drawing: MakersDrawing, at: Span, report: Report): ReadDrawing | null {
  // A file that is missing has its finding where files are read.
  if (drawing.text === null) return null;
  const found = readDrawing(drawing.path, drawing.text, drawing);
  if (found.ok) return found;
  const where = found.line > 0 ? `${drawing.path}, line ${found.line}` : drawing.path;
  report(finding(FILE_UNREADABLE, at, `${where}: ${found.message}`));
  return null;
}

/** The holes that patterns take from makers' drawings, each pattern's in the order of its file. */
export function makersHoles(
  { patterns }: CutTemplate,
  report: Report,
): { readonly centres: ReadonlyMap<CutPattern, readonly Point[]>; readonly taken: readonly TakenHole[] } {
  const centres = new Map<CutPattern, readonly Point[]>();
  const taken: TakenHole[] = [];
  for (const pattern of patterns) {
    const { layout, diameter, count, at } = pattern;
    if (layout.kind !== 'file') continue;
    const drawing = read(layout.drawing, at, report);
    if (!drawing) continue;
    const { path } = layout.drawing;
    const rounds = drawing.shapes.flatMap(({ round }) => (round ? [round] : []));
    const meant = rounds.filter((round) => Math.abs(round.diameter - diameter) <= SAME_DIAMETER);
    // Taken even where the count is wrong: one fault gives one finding.
    taken.push(...meant.map((round) => ({ path, ...round })));
    if (meant.length === count) {
      centres.set(
        pattern,
        meant.map(({ centre }) => centre),
      );
      continue;
    }
    const has = meant.length === 1 ? 'one circle' : `${meant.length || 'no'} circles`;
    const sizes = rounds.length > 0 ? `; it has ${circlesIn(rounds)}` : '';
    const message = `${path} has ${has} of ${mm(diameter)} mm, and this pattern says ${count}${meant.length > 0 ? '' : sizes}`;
    report(finding(FILE_HOLES, at, message));
  }
  return { centres, taken };
}

/** `4 of 6.5 mm, 1 of 22 mm`. */
function circlesIn(rounds: readonly { readonly diameter: number }[]): string {
  const counts = new Map<string, number>();
  for (const { diameter } of rounds) counts.set(mm(diameter), (counts.get(mm(diameter)) ?? 0) + 1);
  return shapesInWords([...counts].map(([size, count]) => `${count} of ${size} mm`));
}

/** The one line of a maker's drawing that is no hole of a pattern, or `null` with a finding. */
export function makersOutline(
  outline: Extract<CutOutline, { kind: 'file' }>,
  taken: readonly TakenHole[],
  report: Report,
): Contour | null {
  const drawing = read(outline, outline.at, report);
  if (!drawing) return null;
  const left = drawing.shapes.filter((shape) => !isTaken(shape, outline.path, taken));
  const [first, ...others] = left;
  if (first && others.length === 0) return first.contour;
  const message = first
    ? `the file draws ${whatIsLeft(left)}, and an outline is one line; ${wayOut(left, drawing.layers)}`
    : 'patterns take all that the file draws, and nothing is left for an outline';
  report(finding(FILE_UNREADABLE, outline.at, `${outline.path}: ${message}`));
  return null;
}

function isTaken({ round }: DrawnShape, path: string, taken: readonly TakenHole[]): boolean {
  if (!round) return false;
  return taken.some(
    (hole) =>
      hole.path === path &&
      samePoint(hole.centre, round.centre, 1e-3) &&
      Math.abs(hole.diameter - round.diameter) < 1e-3,
  );
}

function whatIsLeft(shapes: readonly DrawnShape[]): string {
  const rounds = shapes.flatMap(({ round }) => (round ? [round] : []));
  const others = shapes.filter(({ round }) => !round);
  const size = ({ contour }: DrawnShape): string => {
    const { minX, minY, maxX, maxY } = contourBounds(contour);
    return `one of ${mm(maxX - minX)} × ${mm(maxY - minY)} mm`;
  };
  const lines = others.length === 1 ? 'one line' : `${others.length} separate lines`;
  return [
    ...(others.length > 0
      ? [`${lines} (${shapesInWords(others.slice(0, 4).map(size))}${others.length > 4 ? ' and more' : ''})`]
      : []),
    ...(rounds.length > 0 ? [`circles (${circlesIn(rounds)})`] : []),
  ].join(' and ');
}

function wayOut(shapes: readonly DrawnShape[], layers: readonly string[]): string {
  const holes = shapes.some(({ round }) => round) && shapes.length > 1;
  const circles = holes ? ['take the circles as holes with ::pattern[…]{from=… count=… diameter=…}'] : [];
  const names = layers.length > 1 ? ` (${shapesInWords(layers)})` : '';
  return [...circles, `name the layers of the outline with layers="…"${names}`].join(', or ');
}

/** What was read from each drawing of a maker's that a template uses, in words, with its overall size. */
export function drawingsRead({ outlines, patterns, panelOutlines }: CutTemplate): readonly string[] {
  const drawings = [
    ...[...outlines, ...panelOutlines].filter((one) => one.kind === 'file'),
    ...patterns.flatMap(({ layout }) => (layout.kind === 'file' ? [layout.drawing] : [])),
  ];
  const told = drawings.flatMap(({ path, text, layers, unit }) => {
    const found = text === null ? null : readDrawing(path, text, { layers, unit });
    if (!found?.ok) return [];
    const { minX, minY, maxX, maxY } = found.bounds;
    const rounds = found.shapes.filter(({ round }) => round).length;
    const lines = found.shapes.length - rounds;
    const count = (many: number, one: string): string[] =>
      many === 0 ? [] : [many === 1 ? `1 ${one}` : `${many} ${one}s`];
    const name = path.slice(path.lastIndexOf('/') + 1);
    const from = layers ? `layers ${shapesInWords(layers)} of ${name}` : name;
    return [
      `Read from ${from}: ${[...count(lines, 'outline'), ...count(rounds, 'circle')].join(' and ')}, ${mm(maxX - minX)} × ${mm(maxY - minY)} mm overall`,
      ...(found.error > 0 ? [`Its curves are followed by arcs within ${found.error.toFixed(3)} mm`] : []),
      ...(found.leftOut.length > 0 ? [`Left out of it: ${shapesInWords(found.leftOut)}`] : []),
    ];
  });
  return [...new Set(told)];
}
