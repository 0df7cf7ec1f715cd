import type { Bounds, Point } from '../../geometry/point.ts';
import { line, type Segment } from '../../geometry/segment.ts';

/**
 * Line types after ISO 128-2 by what they show, with their widths in mm; wide to narrow is 2:1. Dashes in
 * line widths, as the standard gives them: dash 12, long dash 24, gap 3, dot half a width.
 */
export const LINES = {
  /** 01.2 continuous wide: what is cut. */
  cut: { width: 0.5, dash: [] },
  /** 01.1 continuous narrow: dimensions, leaders, rulers, proof squares. */
  thin: { width: 0.25, dash: [] },
  /** 01.1 continuous narrow: hatching on the waste side. */
  hatch: { width: 0.18, dash: [] },
  /** 02.1 dashed narrow: trim lines. */
  trim: { width: 0.25, dash: [3, 0.75] },
  /** 04.1 long-dash dot narrow: datums and centre lines. */
  centre: { width: 0.25, dash: [6, 0.75, 0.13, 0.75] },
  /** 05.1 long-dash double-dot narrow: neighbouring parts, here the keep-outs. */
  keepOut: { width: 0.25, dash: [6, 0.75, 0.13, 0.75, 0.13, 0.75] },
} as const satisfies Record<string, { readonly width: number; readonly dash: readonly number[] }>;

export type LineKind = keyof typeof LINES;

/** Lettering heights after ISO 3098, mm (height of a capital). */
export const HEIGHT = { ruler: 1.8, small: 2.5, normal: 3.5, title: 5, sheet: 7 } as const;

export type Anchor = 'start' | 'middle' | 'end';

/** What stands on a sheet, in millimetres from its lower left corner, y up. */
export type Mark =
  | { readonly kind: 'stroke'; readonly line: LineKind; readonly segments: readonly Segment[] }
  | { readonly kind: 'fill'; readonly points: readonly Point[]; readonly grey: number }
  | {
      readonly kind: 'text';
      readonly text: string;
      /** On the base line. */
      readonly at: Point;
      readonly height: number;
      readonly bold: boolean;
      readonly anchor: Anchor;
      /** 90 reads upwards. */
      readonly turn: 0 | 90;
    }
  | { readonly kind: 'clip'; readonly to: Bounds; readonly marks: readonly Mark[] };

/** One page. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
  /** What a reader of the file calls the page: the number of the sheet, with `proof` or `list` where it is one. */
  readonly label: string;
  readonly marks: readonly Mark[];
}

export function stroke(kind: LineKind, ...segments: Segment[]): Mark {
  return { kind: 'stroke', line: kind, segments };
}

export function strokeLine(kind: LineKind, x1: number, y1: number, x2: number, y2: number): Mark {
  return stroke(kind, line({ x: x1, y: y1 }, { x: x2, y: y2 }));
}

export function strokeBox(kind: LineKind, b: Bounds): Mark {
  const corners = [
    { x: b.minX, y: b.minY },
    { x: b.maxX, y: b.minY },
    { x: b.maxX, y: b.maxY },
    { x: b.minX, y: b.maxY },
  ];
  return stroke(kind, ...corners.map((from, i) => line(from, corners[(i + 1) % 4] as Point)));
}

export function lettering(
  text: string,
  x: number,
  y: number,
  height: number,
  options: { readonly bold?: boolean; readonly anchor?: Anchor; readonly turn?: 0 | 90 } = {},
): Mark {
  const { bold = false, anchor = 'start', turn = 0 } = options;
  return { kind: 'text', text, at: { x, y }, height, bold, anchor, turn };
}

/** A filled arrowhead of 2.5 mm with its tip at a point, pointing along a direction of length 1 (ISO 129). */
export function arrowhead(tip: Point, direction: Point): Mark {
  const back = { x: tip.x - 2.5 * direction.x, y: tip.y - 2.5 * direction.y };
  const side = { x: -direction.y * 0.42, y: direction.x * 0.42 };
  const points = [
    tip,
    { x: back.x + side.x, y: back.y + side.y },
    { x: back.x - side.x, y: back.y - side.y },
  ];
  return { kind: 'fill', points, grey: 0 };
}
