import type { Point } from '../../geometry/point.ts';
import type { Piece } from './piece.ts';
import { bezier } from './spline.ts';

/** How many numbers each command of a path takes. */
const TAKES: Readonly<Record<string, number>> = {
  M: 2,
  L: 2,
  H: 1,
  V: 1,
  C: 6,
  S: 4,
  Q: 4,
  T: 2,
  A: 7,
  Z: 0,
};

const BLANKS = /[ \t\n\r\f]*/y;
const SEPARATOR = /[ \t\n\r\f]*,?[ \t\n\r\f]*/y;
const NUMBER = /[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/iy;
const FLAG = /[01]/y;

/** The pieces of path data (SVG 2, 9.3), or what in it cannot be read. One pass over the text. */
export function readPath(d: string): readonly Piece[] | string {
  const pen = new Pen();
  let at = skip(BLANKS, d, 0);
  while (at < d.length) {
    const letter = d.charAt(at);
    const command = letter.toUpperCase();
    const takes = TAKES[command];
    if (takes === undefined) return `a path has “${letter}” where a command should stand`;
    if (!pen.begun && command !== 'M') return 'a path does not begin with a move (M)';
    at = skip(BLANKS, d, at + 1);
    for (let first = true; first || (takes > 0 && startsNumber(d, at)); first = false) {
      const values: number[] = [];
      for (let i = 0; i < takes; i++) {
        const form = command === 'A' && (i === 3 || i === 4) ? FLAG : NUMBER;
        form.lastIndex = at;
        const found = form.exec(d);
        if (!found)
          return `a path ends in the middle of its command ${letter}, or has a number that cannot be read`;
        const value = Number(found[0]);
        if (!Number.isFinite(value)) return 'a path has a number that is too large';
        values.push(value);
        at = skip(SEPARATOR, d, form.lastIndex);
      }
      // After the first pair a move goes on as lines.
      pen.draw(command === 'M' && !first ? 'L' : command, letter !== command, values);
    }
  }
  return pen.pieces;
}

function skip(form: RegExp, text: string, at: number): number {
  form.lastIndex = at;
  form.exec(text);
  return form.lastIndex;
}

function startsNumber(text: string, at: number): boolean {
  const next = text.charAt(at);
  return next !== '' && '+-.0123456789'.includes(next);
}

/** Where a path has got to. */
class Pen {
  readonly pieces: Piece[] = [];
  begun = false;
  private at: Point = { x: 0, y: 0 };
  private start: Point = { x: 0, y: 0 };
  /** The last control point of a curve, which a smooth one after it mirrors. */
  private cubic: Point | null = null;
  private quadratic: Point | null = null;

  draw(command: string, relative: boolean, values: readonly number[]): void {
    const base = relative ? this.at : { x: 0, y: 0 };
    const point = (i: number): Point => ({ x: base.x + (values[i] ?? 0), y: base.y + (values[i + 1] ?? 0) });
    const { cubic, quadratic, at } = this;
    this.cubic = null;
    this.quadratic = null;
    switch (command) {
      case 'M':
        this.at = this.start = point(0);
        this.begun = true;
        return;
      case 'Z':
        this.lineTo(this.start);
        return;
      case 'H':
        this.lineTo({ x: base.x + (values[0] ?? 0), y: at.y });
        return;
      case 'V':
        this.lineTo({ x: at.x, y: base.y + (values[0] ?? 0) });
        return;
      case 'C':
        this.curveTo(point(0), point(2), point(4));
        return;
      case 'S':
        this.curveTo(mirrored(cubic, at), point(0), point(2));
        return;
      case 'Q':
        this.bendTo(point(0), point(2));
        return;
      case 'T':
        this.bendTo(mirrored(quadratic, at), point(0));
        return;
      case 'A':
        this.pieces.push(...arcTo(at, point(5), values));
        this.at = point(5);
        return;
      default:
        this.lineTo(point(0));
    }
  }

  private lineTo(to: Point): void {
    this.pieces.push({ kind: 'line', from: this.at, to });
    this.at = to;
  }

  private curveTo(first: Point, second: Point, to: Point): void {
    this.pieces.push(bezier(this.at, first, second, to));
    this.cubic = second;
    this.at = to;
  }

  private bendTo(control: Point, to: Point): void {
    this.pieces.push(bezier(this.at, control, to));
    this.quadratic = control;
    this.at = to;
  }
}

function mirrored(control: Point | null, at: Point): Point {
  return control ? { x: 2 * at.x - control.x, y: 2 * at.y - control.y } : at;
}

/** From end points to a centre, SVG 2, B.2.4 and B.2.5: an ellipse that is too small grows until it reaches. */
function arcTo(from: Point, to: Point, values: readonly number[]): Piece[] {
  const [rx0 = 0, ry0 = 0, degrees = 0, large = 0, sweeps = 0] = values;
  if (from.x === to.x && from.y === to.y) return [];
  if (rx0 === 0 || ry0 === 0) return [{ kind: 'line', from, to }];
  const turn = (degrees * Math.PI) / 180;
  const [cos, sin] = [Math.cos(turn), Math.sin(turn)];
  const [hx, hy] = [(from.x - to.x) / 2, (from.y - to.y) / 2];
  const [px, py] = [cos * hx + sin * hy, cos * hy - sin * hx];
  const lack = Math.sqrt((px / rx0) ** 2 + (py / ry0) ** 2);
  const grown = Math.max(1, lack);
  const [rx, ry] = [Math.abs(rx0) * grown, Math.abs(ry0) * grown];
  const [ux, uy] = [px / rx, py / ry];
  const away = Math.sqrt(Math.max(0, 1 / (ux * ux + uy * uy) - 1)) * (large === sweeps ? -1 : 1);
  const [cx, cy] = [away * rx * uy, -away * ry * ux];
  const angle = (sign: number): number => Math.atan2((sign * py - cy) / ry, (sign * px - cx) / rx);
  const start = angle(1);
  let sweep = angle(-1) - start;
  if (sweeps && sweep < 0) sweep += 2 * Math.PI;
  if (!sweeps && sweep > 0) sweep -= 2 * Math.PI;
  const centre = {
    x: cos * cx - sin * cy + (from.x + to.x) / 2,
    y: sin * cx + cos * cy + (from.y + to.y) / 2,
  };
  return [
    {
      kind: 'ellipse',
      centre,
      u: { x: rx * cos, y: rx * sin },
      v: { x: -ry * sin, y: ry * cos },
      start,
      sweep,
    },
  ];
}
