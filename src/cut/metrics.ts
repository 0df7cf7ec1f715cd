import PDFDocument from 'pdfkit';
import type { Bounds } from '../geometry/point.ts';
import type { Anchor, Mark } from './drawing.ts';

/** The bytes of two TrueType fonts of one family. */
export interface Fonts {
  readonly regular: Uint8Array;
  readonly bold: Uint8Array;
}

/** How wide lettering is, and whether a font can print it. */
export interface Metrics {
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

/** What pdfkit knows of a font, in thousandths of an em, and the font program within. */
interface OpenFont {
  readonly capHeight: number;
  readonly font: { hasGlyphForCodePoint(point: number): boolean };
}

/** Reads the metrics of two fonts. */
export function metricsOf(fonts: Fonts): Metrics {
  const doc = new PDFDocument({ autoFirstPage: false, compress: false });
  const open = (bytes: Uint8Array): OpenFont => {
    doc.font(Buffer.from(bytes));
    return (doc as unknown as { _font: OpenFont })._font;
  };
  const faces = { regular: open(fonts.regular), bold: open(fonts.bold) };
  const known = new Map<string, number>();
  const width: Metrics['width'] = (text, height, bold) => {
    const key = `${bold ? 'b' : 'r'}${text}`;
    let perHeight = known.get(key);
    if (perHeight === undefined) {
      const face = bold ? faces.bold : faces.regular;
      const widthOf = (face as unknown as { widthOfString(t: string, size: number): number }).widthOfString(
        text,
        1000,
      );
      perHeight = widthOf / face.capHeight;
      known.set(key, perHeight);
    }
    return perHeight * height;
  };
  const lacks = (text: string): string[] =>
    [...text].filter(
      (c) => !Object.values(faces).every((f) => f.font.hasGlyphForCodePoint(c.codePointAt(0) ?? 0)),
    );
  return { width, lacks, box: (mark) => boxOf(mark, width), ...setting(width) };
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
    while (letters.length > 1 && width(`${letters.join('').trimEnd()}…`, height, bold) > most) letters.pop();
    return `${letters.join('').trimEnd()}…`;
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
