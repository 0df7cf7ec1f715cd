import PDFDocument from 'pdfkit';

/** A font that is opened once for all sheets of a run: reading its tables takes longer than drawing a sheet. */
export interface Typeface {
  /** Height of a capital in ems, from its H: many fonts do not state it. */
  readonly capital: number;
  /** Width of a text in ems. */
  readonly width: (text: string) => number;
  /** Whether it can print a character. */
  readonly has: (point: number) => boolean;
  /** Makes it the font of a document under a name that is the document's own. */
  readonly use: (doc: PDFKit.PDFDocument, name: string) => void;
}

/** What pdfkit knows of the font that a document has open; it offers this nowhere else. */
interface OpenFont {
  readonly font: FontTables;
  readonly widthOfString: (text: string, size: number) => number;
  /** Words as they are set, by their letters. */
  layoutCache: Record<string, unknown>;
}

/** The tables of a font, which pdfkit takes in the place of its bytes. */
interface FontTables {
  readonly unitsPerEm: number;
  readonly hasGlyphForCodePoint: (point: number) => boolean;
  readonly glyphForCodePoint: (point: number) => { readonly bbox: { readonly maxY: number } };
  layout: (text: string, features?: unknown) => unknown;
  _glyphs: Record<number, unknown>;
}

/** Words that are kept as set: more than all templates of a shop have, and little for a machine to hold. */
const MOST_WORDS = 20_000;

/** Opens a TrueType font. */
export function openTypeface(bytes: Uint8Array): Typeface {
  const opener = new PDFDocument({ autoFirstPage: false, compress: false, font: '' });
  opener.font(Buffer.from(bytes));
  const face = openFont(opener);
  const { font } = face;
  const capital = font.glyphForCodePoint(72).bbox.maxY / font.unitsPerEm;
  let words: Record<string, unknown> = Object.create(null);
  let count = 0;
  const layout = font.layout.bind(font);
  font.layout = (text, features) => {
    // A glyph remembers the letters that it was first asked for, and a document tells them to whoever copies its
    // text. Begun anew for each word, they are that word's own, whatever was set before.
    font._glyphs = {};
    count += 1;
    if (count > MOST_WORDS) [words, count] = [Object.create(null), 0];
    return layout(text, features);
  };
  const kept = (open: OpenFont): OpenFont => {
    open.layoutCache = words;
    return open;
  };
  return {
    capital,
    width: (text) => kept(face).widthOfString(text, 1),
    has: (point) => font.hasGlyphForCodePoint(point),
    use: (doc, name) => {
      // Registered with its tables, which the types of pdfkit do not know of.
      doc.registerFont(name, font as unknown as string);
      kept(openFont(doc.font(name)));
    },
  };
}

function openFont(doc: PDFKit.PDFDocument): OpenFont {
  return (doc as unknown as { readonly _font: OpenFont })._font;
}
