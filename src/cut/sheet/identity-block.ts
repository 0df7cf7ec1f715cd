import type { Bounds } from '../../geometry/point.ts';
import { moveSegment } from '../../geometry/transform.ts';
import { HEIGHT, lettering, type Mark } from '../drawing/drawing.ts';
import { type Floor, floorOf } from '../drawing/floor.ts';
import type { View } from '../drawing/view.ts';
import { revisionLine, type SheetContext, sideAndFace } from '../job.ts';
import type { Resolved } from '../shape/resolved.ts';
import { upArrow } from './captions.ts';

/** Lines of lettering stand this many heights apart. */
const PITCH = 1.55;

/** Room for the arrow beside the lettering, mm. */
const ARROW = { width: 14, height: 17 } as const;

/** Widths of the lettering that are tried, mm, the widest first. */
const WIDTHS = [104, 84, 66, 52, 42] as const;

/**
 * Who a sheet is, where no line of the drawing runs, within what stays when the sheet is trimmed: name, builds, side,
 * face, sheet, revision and fingerprint, with the arrow that points up. With less room what can be read on sheet 1
 * is left out, and where none is, the letters stand on the hatching.
 */
export function identityBlock(
  view: View,
  resolved: Resolved,
  { own, more }: { readonly own: string; readonly more: readonly string[] },
  context: SheetContext,
): Mark[] {
  const { correction, guideTitle, metrics, standing } = context;
  const named: Said[] = [
    { text: resolved.title, bold: true },
    ...(resolved.variant ? [{ text: `ONLY ${resolved.variant.builds}`, bold: true }] : []),
    { text: sideAndFace(context, resolved.side, resolved.face), bold: true },
    { text: own, bold: true },
    { text: revisionLine(context), bold: false },
    ...(correction
      ? [
          {
            text: `CORRECTED ×${correction.x.toFixed(4)} across, ×${correction.y.toFixed(4)} up`,
            bold: true,
          },
        ]
      : []),
    ...(standing ? [{ text: standing, bold: true }] : []),
  ];
  const all: Said[] = [
    ...named,
    { text: guideTitle, bold: false },
    { text: 'SCALE 1:1 · cut the middle of the wide line', bold: false },
    ...more.map((text) => ({ text, bold: false })),
    ...resolved.applied.map((text) => ({ text, bold: false })),
  ];
  const bare = floorOf(view.window);
  const { cuts, edges, centres } = view.lines;
  bare.blockLines([...cuts, ...edges, ...centres].map((s) => moveSegment(s, view.move)));
  for (const [floor, said, height] of [
    [view.floor, all, HEIGHT.small],
    [view.floor, named, HEIGHT.small],
    [view.floor, named, HEIGHT.ruler],
    [bare, named, HEIGHT.ruler],
  ] as const) {
    for (const width of WIDTHS) {
      const lines = said.flatMap(({ text, bold }) =>
        metrics.wrap(text, height, width, bold).map((one) => ({ text: one, bold })),
      );
      const most = Math.max(...lines.map(({ text, bold }) => metrics.width(text, height, bold)));
      const size = {
        wide: most + ARROW.width + 2,
        high: Math.max(ARROW.height, lines.length * height * PITCH) + 1.5,
      };
      const corner = freeCorner(floor, view.window, size.wide, size.high);
      if (!corner) continue;
      view.floor.blockBox(corner);
      return drawn(lines, corner, height);
    }
  }
  const { minX, maxX, minY } = view.window;
  return drawn(named, { minX: minX + 2, maxX: maxX - 2, minY: minY + 2, maxY: minY + 24 }, HEIGHT.ruler);
}

interface Said {
  readonly text: string;
  readonly bold: boolean;
}

function drawn(lines: readonly Said[], box: Bounds, height: number): Mark[] {
  return [
    ...lines.map(({ text, bold }, i) =>
      lettering(text, box.minX + 0.5, box.maxY - 1 - height - i * height * PITCH, height, { bold }),
    ),
    ...upArrow(box.maxX - ARROW.width / 2, box.maxY - ARROW.height + 4, false),
  ];
}

/** The first free place of a size, from the corners and edges of a window inwards. */
function freeCorner(floor: Floor, window: Bounds, wide: number, high: number): Bounds | null {
  const [left, right] = [window.minX + 2, window.maxX - 2 - wide];
  const [low, top] = [window.minY + 2, window.maxY - 2 - high];
  if (right < left || top < low) return null;
  const along = (from: number, to: number): number[] => {
    const count = Math.max(1, Math.ceil((to - from) / 4));
    return Array.from({ length: count + 1 }, (_, i) => from + ((to - from) * i) / count);
  };
  const columns = along(left, right);
  const places = along(low, top).flatMap((y) =>
    columns.map((x) => ({ x, y, inwards: Math.min(x - left, right - x) + Math.min(y - low, top - y) })),
  );
  for (const { x, y } of places.sort((a, b) => a.inwards - b.inwards || a.y - b.y || a.x - b.x)) {
    const box = { minX: x, minY: y, maxX: x + wide, maxY: y + high };
    if (floor.isFree(box)) return box;
  }
  return null;
}
