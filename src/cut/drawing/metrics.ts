import type { Bounds } from '../../geometry/point.ts';
import type { Anchor, Mark } from './drawing.ts';
import { openTypeface, type Typeface } from './typeface.ts';

/** The bytes of two TrueType fonts of one family. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** How wide lettering is, and whether a font can print it. */
export interface Metrics {
  readonly faces: { readonly regular: Typeface; readonly bold: Typeface };
  /** Width of a text in mm, for a height of capitals in mm. */
  readonly width: (text: string, height: number, bold: boolean) => number;
  /** The characters of a text that the fonts lack. */
  readonly lacks: (text: string) => string[];
  /** The rectangle that a text mark covers. */
  readonly box: (mark: Extract<Mark, { kind: 'text' }>) => Bounds;
  /** Breaks a text into lines of at most a width in mm. */
  readonly wrap: (text: string, height: number, width: number, bold?: boolean) => string[];
  /** Shortens a text with an ellipsis until it fits a width in mm. */
  readonly fit: (text: string, height: number, width: number, bold?: boolean) => string;
}

/** Reads the metrics of two fonts, once for as long as their bytes are held. */
export function metricsOf(fonts: Fonts): Metrics {
  const known = knownMetrics.get(fonts);
  if (known) return known;
  const metrics = readMetrics(fonts);
  knownMetrics.set(fonts, metrics);
  return metrics;
}

const knownMetrics = new WeakMap<Fonts, Metrics>();

/** Widths of texts that are kept: more than the sheets of a guide write, and nothing for a machine to hold. */
const MOST_WIDTHS = 20_000;

function readMetrics(fonts: Fonts): Metrics {
  const faces = { regular: openTypeface(fonts.regular), bold: openTypeface(fonts.bold) };
  const known = new Map<string, number>();
  const width: Metrics['width'] = (text, height, bold) => {
    const key = `${bold ? 'b' : 'r'}${text}`;
    let perHeight = known.get(key);
    if (perHeight === undefined) {
      const face = bold ? faces.bold : faces.regular;
      perHeight = face.width(text) / face.capital;
      if (known.size >= MOST_WIDTHS) known.clear();
      known.set(key, perHeight);
    }
    return perHeight * height;
  };
  const lacks = (text: string): string[] =>
    [...text].filter((c) => !Object.values(faces).every((face) => face.has(c.codePointAt(0) ?? 0)));
  return { faces, width, lacks, box: (mark) => boxOf(mark, width), ...setting(width) };
}

function boxOf(
  { text, at, height, bold, anchor, turn }: Extract<Mark, { kind: 'text' }>,
  width: Metrics['width'],
): Bounds {
  const long = width(text, height, bold);
  const shifts: Record<Anchor, number> = { start: 0, middle: long / 2, end: long };
  const from = -shifts[anchor];
  // Descenders reach 0.33 of the height of a capital below the line, accents 0.3 above.
  const [low, high] = [-0.35 * height, 1.1 * height];
  return turn === 0
    ? { minX: at.x + from, maxX: at.x + from + long, minY: at.y + low, maxY: at.y + high }
    : { minX: at.x - high, maxX: at.x - low, minY: at.y + from, maxY: at.y + from + long };
}

function setting(width: Metrics['width']): Pick<Metrics, 'wrap' | 'fit'> {
  const shorten: Metrics['fit'] = (text, height, most, bold = false) => {
    if (width(text, height, bold) <= most) return text;
    const letters = [...text];
    const first = (count: number): string => `${letters.slice(0, count).join('').trimEnd()}…`;
    // Halving, not letter by letter: somebody will write a title of five thousand.
    let [fits, tooMany] = [1, letters.length];
    while (tooMany - fits > 1) {
      const middle = (fits + tooMany) >> 1;
      if (width(first(middle), height, bold) <= most) fits = middle;
      else tooMany = middle;
    }
    return first(fits);
  };
  const wrap: Metrics['wrap'] = (text, height, most, bold = false) => {
    const lines: string[] = [];
    for (const word of text.split(' ')) {
      const last = lines.at(-1);
      const longer = last === undefined ? word : `${last} ${word}`;
      if (last !== undefined && width(longer, height, bold) <= most) lines[lines.length - 1] = longer;
      else lines.push(word);
    }
    return lines.map((one) => shorten(one, height, most, bold));
  };
  return { wrap, fit: shorten };
}
