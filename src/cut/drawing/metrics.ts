import PDFDocument from 'pdfkit';
import type { Bounds } from '../../geometry/point.ts';
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

/** What pdfkit knows of the font that it has open. */
interface OpenFont {
  readonly widthOfString: (text: string, size: number) => number;
  readonly font: {
    readonly unitsPerEm: number;
    readonly hasGlyphForCodePoint: (point: number) => boolean;
    readonly glyphForCodePoint: (point: number) => { readonly bbox: { readonly maxY: number } };
  };
}

/** The font that a document has open; pdfkit offers its glyphs nowhere else. */
function openFont(doc: PDFKit.PDFDocument): OpenFont {
  return (doc as unknown as { readonly _font: OpenFont })._font;
}

/** Height of a capital of the open font in ems, from its H: many fonts do not state it. */
export function capitalOf(doc: PDFKit.PDFDocument): number {
  const { font } = openFont(doc);
  return font.glyphForCodePoint(72).bbox.maxY / font.unitsPerEm;
}

/** Reads the metrics of two fonts. */
export function metricsOf(fonts: Fonts): Metrics {
  const doc = new PDFDocument({ autoFirstPage: false, compress: false });
  const open = (bytes: Uint8Array): { readonly face: OpenFont; readonly capital: number } => {
    doc.font(Buffer.from(bytes));
    return { face: openFont(doc), capital: capitalOf(doc) };
  };
  const faces = { regular: open(fonts.regular), bold: open(fonts.bold) };
  const known = new Map<string, number>();
  const width: Metrics['width'] = (text, height, bold) => {
    const key = `${bold ? 'b' : 'r'}${text}`;
    let perHeight = known.get(key);
    if (perHeight === undefined) {
      const { face, capital } = bold ? faces.bold : faces.regular;
      perHeight = face.widthOfString(text, 1) / capital;
      known.set(key, perHeight);
    }
    return perHeight * height;
  };
  const lacks = (text: string): string[] =>
    [...text].filter(
      (c) => !Object.values(faces).every(({ face }) => face.font.hasGlyphForCodePoint(c.codePointAt(0) ?? 0)),
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
