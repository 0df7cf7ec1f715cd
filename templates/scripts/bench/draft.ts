import type { BenchView } from '../../../src/preview/bench/bench.ts';
import type { BenchFigure, BenchMark } from '../../../src/preview/bench/figure-text.ts';

/** A part of a picture that the bench can draw a box for. */
export type BoxName = 'crop' | 'blur' | 'zoom';

/** A figure on the bench; what was read from the guide stays as it is written until it is changed. */
export interface Draft {
  src: string;
  caption: string;
  alt: string;
  shows: string;
  crop: string;
  blur: string;
  zoom: string;
  marks: BenchMark[];
  /** The mark that is at hand, by its place in the list. */
  at: number | null;
  /** The figure of the guide that is changed, or a new one. */
  readonly over: number | null;
  /** Offset behind which a new figure stands. */
  after: number | null;
  readonly order: () => {
    readonly figure: BenchFigure;
    readonly over: number | null;
    readonly after: number | null;
  };
}

/** What begins on the bench: a figure of the guide, or a photograph that is in none. */
export function emptyDraft(src: string, { figures, places }: BenchView, over: number | null): Draft {
  const there = over === null ? undefined : figures[over];
  const draft: Draft = {
    src,
    caption: there?.caption ?? '',
    alt: there?.alt ?? '',
    shows: there?.shows ?? '',
    crop: there?.crop ?? '',
    blur: there?.blur ?? '',
    zoom: there?.zoom ?? '',
    marks: there ? [...there.marks] : [],
    at: null,
    over,
    after: places.at(-1)?.after ?? null,
    order: () => {
      const { caption, alt, shows, crop, blur, zoom, marks } = draft;
      return { figure: { src, caption, alt, shows, crop, blur, zoom, marks }, over, after: draft.after };
    },
  };
  return draft;
}

/** A to Z without I and O, which are taken for numerals: the first that no mark has. */
export function nextLetter(marks: readonly BenchMark[]): string {
  const used = new Set(marks.map(({ letter }) => letter));
  return [...'ABCDEFGHJKLMNPQRSTUVWXYZ'].find((letter) => !used.has(letter)) ?? 'A';
}

/** "31.4%,44%": a point as a guide writes it, a tenth of a percent being a tenth of a millimetre on paper. */
export function pointText(x: number, y: number): string {
  return `${percent(x)},${percent(y)}`;
}

/** "10%,20%,60%,80%": left, upper, right and lower edge. */
export function boxText(from: Point, to: Point): string {
  const edges = [
    Math.min(from.x, to.x),
    Math.min(from.y, to.y),
    Math.max(from.x, to.x),
    Math.max(from.y, to.y),
  ];
  return edges.map(percent).join(',');
}

/** A place in the upright picture, as fractions of its width and height. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** The numbers of a point or a box, as fractions; none where there is nothing to read. */
export function fractions(text: string): readonly number[] {
  const numbers = text.split(',').map((part) => Number.parseFloat(part) / 100);
  return numbers.some(Number.isNaN) ? [] : numbers;
}

/** Where a point lies after a quarter turn to the right. */
export function turned(text: string): string {
  const [x, y, right, bottom] = fractions(text);
  if (x === undefined || y === undefined) return text;
  if (right === undefined || bottom === undefined) return pointText(1 - y, x);
  return boxText({ x: 1 - y, y: x }, { x: 1 - bottom, y: right });
}

function percent(value: number): string {
  const inside = Math.min(1, Math.max(0, value));
  return `${Math.round(inside * 1000) / 10}%`;
}
