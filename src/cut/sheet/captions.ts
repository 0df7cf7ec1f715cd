import { contourBounds } from '../../geometry/contour.ts';
import { type Bounds, boundsMeet } from '../../geometry/point.ts';
import { arrowhead, HEIGHT, lettering, type Mark, strokeLine } from '../drawing/drawing.ts';
import { signed } from '../drawing/labels.ts';
import { identityLines, type SheetContext } from '../job.ts';
import { mm, type Resolved } from '../shape/resolved.ts';
import type { Seams } from './seams.ts';

/** Lines of text from the top of a box; what does not fit its height is a fault of the caller's layout. */
export function paragraph(
  texts: readonly string[],
  box: Bounds,
  context: SheetContext,
  height: number = HEIGHT.small,
): { readonly marks: Mark[]; readonly bottom: number } {
  const marks: Mark[] = [];
  let y = box.maxY - height;
  for (const text of texts) {
    for (const one of context.metrics.wrap(text, height, box.maxX - box.minX)) {
      marks.push(lettering(one, box.minX, y, height));
      y -= height * 1.55;
    }
    y -= height * 0.5;
  }
  return { marks, bottom: y };
}

/** Title, builds, guide, side, face, revision and fingerprint, from the top of a box. */
export function titleBlock(resolved: Resolved, box: Bounds, context: SheetContext): Mark[] {
  const width = box.maxX - box.minX;
  const { metrics } = context;
  const { variant } = resolved;
  const [first, ...rest] = variant ? metrics.wrap(`ONLY ${variant.builds}`, HEIGHT.small, width, true) : [];
  const second = rest.length > 0 ? [metrics.fit(rest.join(' '), HEIGHT.small, width, true)] : [];
  const builds = first === undefined ? [] : [first, ...second];
  const guide = metrics.wrap(context.guideTitle, HEIGHT.small, width);
  const named = [
    ...builds.map((text) => ({ text, bold: true })),
    ...guide.map((text) => ({ text, bold: false })),
  ].slice(0, 2);
  const marks: Mark[] = [
    lettering(
      metrics.fit(resolved.title, HEIGHT.title, width, true),
      box.minX,
      box.maxY - 5.6,
      HEIGHT.title,
      {
        bold: true,
      },
    ),
    ...named.map(({ text, bold }, i) =>
      lettering(text, box.minX, box.maxY - 10.5 - i * 4, HEIGHT.small, { bold }),
    ),
  ];
  identityLines(context, resolved.side, resolved.face).forEach((text, i) => {
    const bold = i === 0 || i === 3;
    const y = box.maxY - 19.5 - i * 4;
    marks.push(lettering(metrics.fit(text, HEIGHT.small, width, bold), box.minX, y, HEIGHT.small, { bold }));
  });
  return marks;
}

/** An arrow that points up on the vehicle, its words below it; `turned` where the drawing lies on its side. */
export function upArrow(x: number, y: number, turned: boolean): Mark[] {
  const shaft = turned
    ? strokeLine('thin', x + 6, y + 5, x - 5, y + 5)
    : strokeLine('thin', x, y + 1, x, y + 11);
  const tip = turned ? { x: x - 6, y: y + 5 } : { x, y: y + 12 };
  return [
    shaft,
    arrowhead(tip, turned ? { x: -1, y: 0 } : { x: 0, y: 1 }),
    lettering('UP', x, y - 3.2, HEIGHT.small, { anchor: 'middle', bold: true }),
  ];
}

/** What to do before anything is taped or cut. */
export function stopRule(paperTitle: string): string[] {
  return [
    'STOP: measure this square before you tape or cut anything.',
    `Print on ${paperTitle} at actual size (100 %, no fitting). Measure from the middle of one line to the middle of the other: 100.0 mm across, 100.0 mm up, both diagonals 141.4 mm.`,
    'No ruler? A bank card laid in the lower left corner covers its outline exactly.',
    'Off by more than 0.2 mm: do not use these sheets. Enter both sides in the print check of the guide; it names the setting to change.',
  ];
}

/** What the steps need to know of joined sheets. */
export interface Joined {
  readonly seams: Seams;
  readonly trimmed: readonly Bounds[];
}

/** How to join the sheets, and how to lay the template on the panel. */
export function layingSteps(resolved: Resolved, joined: Joined | null): string[] {
  const datums = resolved.datums.map((d) => {
    const [axis, at] =
      d.axis === 'vertical' ? ['x', d.position - resolved.origin.x] : ['y', d.position - resolved.origin.y];
    return `${axis} = ${mm(at)} is: ${d.label}.`;
  });
  const joining =
    joined && joined.seams.joins.length > 0
      ? [
          'Join: trim a sheet at its dashed line where it says “trim here”, lay it on its neighbour so that the shared crosses become one, and tape.',
          ...joined.seams.controls.map(
            ({ names, length }) =>
              `Check: ${names[0]} to ${names[1]} must measure ${mm(length)} mm over the seams.`,
          ),
        ]
      : [];
  const { paper, longest, declared } = resolved.tolerance;
  const applied = resolved.applied.map((text) => `${text}.`).join(' ');
  return [
    ...joining,
    joined
      ? `Lay the template on the ${resolved.face} face by its datums, and where a sheet shows none, by the line that says how far it is from one. ${datums.join(' ')}`
      : `Lay the template on the ${resolved.face} face, by its datums or the lines that say how far they are from one.`,
    ...(applied === '' ? [] : [applied]),
    ...(joined ? beyondSheets(resolved, joined.trimmed) : []),
    'Measure two marks from the datums with a rule before you cut; feel behind the panel first.',
    `We reckon that paper holds ${mm(Math.round(paper * 10) / 10)} mm over ${mm(Math.round(longest))} mm.${declared === null ? '' : ` Asked for: ${mm(declared)} mm.`}`,
    'The hatched side of the wide line falls away.',
  ];
}

/** The keep-outs that no sheet shows, with the room that they take. */
function beyondSheets({ keepOuts, origin }: Resolved, trimmed: readonly Bounds[]): string[] {
  return keepOuts.flatMap(({ label, area }) => {
    const b = contourBounds(area);
    if (trimmed.some((sheet) => boundsMeet(sheet, b))) return [];
    const [x1, x2] = [b.minX - origin.x, b.maxX - origin.x].map(signed);
    const [y1, y2] = [b.minY - origin.y, b.maxY - origin.y].map(signed);
    return [`KEEP OUT, beyond the sheets: ${label}, x ${x1} to ${x2}, y ${y1} to ${y2}.`];
  });
}
