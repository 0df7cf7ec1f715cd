import PDFDocument from 'pdfkit';
import { pieceOf, pointAt, type Segment } from '../../geometry/segment.ts';
import { POINTS_PER_MM } from '../../trade/paper.ts';
import { type Correction, correctionOn, correctionStamp } from '../../trade/print-check.ts';
import { LINES, type Mark, type Sheet } from '../drawing/drawing.ts';
import type { Metrics } from '../drawing/metrics.ts';

/** The same file must have the same bytes on every day. */
const NO_DATE = new Date(0);

/**
 * Writes sheets as a PDF at full scale: each page box is exactly its paper, and the viewer is asked not to
 * scale (ISO 32000-1, 12.2). Nothing is compressed, since compressors differ between systems. `correction`
 * stretches each page about its middle for one printer; `draft` puts DRAFT across each.
 */
export async function writePdf(
  sheets: readonly Sheet[],
  metrics: Metrics,
  title: string,
  { correction, draft }: { readonly correction?: Correction; readonly draft?: boolean },
): Promise<Uint8Array> {
  const doc = new PDFDocument({
    autoFirstPage: false,
    font: '',
    compress: false,
    pdfVersion: '1.7',
    info: {
      Title: title,
      // Read by whoever would correct the same file again.
      ...(correction && { Subject: correctionStamp(correction) }),
      Producer: 'Baybook',
      Creator: 'Baybook',
      CreationDate: NO_DATE,
    },
  });
  const chunks: Buffer[] = [];
  const done = new Promise<void>((resolve, reject) => {
    doc.on('data', (chunk: Buffer) => chunks.push(chunk));
    doc.on('end', () => resolve());
    doc.on('error', reject);
  });
  askNotToScale(doc);
  namePages(doc, sheets);
  for (const sheet of sheets) {
    drawPage(doc, sheet, metrics, correction);
    if (draft) drawDraft(doc, sheet, metrics);
  }
  doc.end();
  await done;
  return new Uint8Array(Buffer.concat(chunks));
}

/** A reader of the file calls each page by its sheet (ISO 32000-1, 12.4.2). */
function namePages(doc: PDFKit.PDFDocument, sheets: readonly Sheet[]): void {
  // pdfkit writes a String object as a string of the file, and a bare one as a name.
  const labels = sheets.flatMap(({ label }, i) => [i, { P: new String(`sheet ${label}`) }]);
  catalogueOf(doc).PageLabels = { Nums: labels };
}

/** pdfkit has no interface for what stands in the catalogue of a file. */
function catalogueOf(doc: PDFKit.PDFDocument): Record<string, unknown> {
  return (doc as unknown as { readonly _root: { readonly data: Record<string, unknown> } })._root.data;
}

/** Asks a reader of the file to print it at its own size. */
function askNotToScale(doc: PDFKit.PDFDocument): void {
  catalogueOf(doc).ViewerPreferences = doc.ref({
    PrintScaling: 'None',
    Enforce: ['PrintScaling'],
    PickTrayByPDFSize: true,
    Duplex: 'Simplex',
    DisplayDocTitle: true,
  });
}

function drawPage(
  doc: PDFKit.PDFDocument,
  sheet: Sheet,
  metrics: Metrics,
  correction: Correction | undefined,
): void {
  const [width, height] = [sheet.width * POINTS_PER_MM, sheet.height * POINTS_PER_MM];
  doc.addPage({ size: [width, height], margin: 0 });
  // pdfkit counts y down from the top; the sheets count millimetres up from the bottom.
  doc.transform(POINTS_PER_MM, 0, 0, -POINTS_PER_MM, 0, height);
  if (correction) {
    const [x, y] = [sheet.width / 2, sheet.height / 2];
    const by = correctionOn(correction, sheet.width, sheet.height);
    doc.transform(by.x, 0, 0, by.y, x - x * by.x, y - y * by.y);
  }
  for (const mark of sheet.marks) drawMark(doc, mark, metrics);
}

/** Only the edges of the letters, in grey and along the longer side: every line to cut stays legible under them. */
function drawDraft(doc: PDFKit.PDFDocument, { width, height }: Sheet, { faces }: Metrics): void {
  const upright = height > width;
  const capitals = Math.min(width, height) / 4;
  faces.bold.use(doc, 'bold');
  doc.fontSize(capitals / faces.bold.capital);
  const shift = -doc.widthOfString('DRAFT') / 2;
  doc.save();
  doc.undash().lineWidth(0.25).strokeColor([150, 150, 150]);
  if (upright) doc.transform(0, 1, 1, 0, width / 2 + capitals / 2, height / 2);
  else doc.transform(1, 0, 0, -1, width / 2, height / 2 - capitals / 2);
  doc.text('DRAFT', shift, 0, { lineBreak: false, baseline: 'alphabetic', stroke: true, fill: false });
  doc.restore();
}

function drawMark(doc: PDFKit.PDFDocument, mark: Mark, metrics: Metrics): void {
  switch (mark.kind) {
    case 'stroke':
      drawStroke(doc, mark.segments, mark.line);
      return;
    case 'fill': {
      const [first, ...others] = mark.points;
      if (!first) return;
      doc.moveTo(first.x, first.y);
      for (const { x, y } of others) doc.lineTo(x, y);
      const level = Math.round(mark.grey * 255);
      doc.closePath().fill([level, level, level]);
      return;
    }
    case 'text':
      drawText(doc, mark, metrics);
      return;
    case 'clip': {
      const { minX, minY, maxX, maxY } = mark.to;
      doc.save();
      doc.rect(minX, minY, maxX - minX, maxY - minY).clip();
      for (const inner of mark.marks) drawMark(doc, inner, metrics);
      doc.restore();
      return;
    }
    default:
      mark satisfies never;
  }
}

function drawStroke(doc: PDFKit.PDFDocument, segments: readonly Segment[], kind: keyof typeof LINES): void {
  if (segments.length === 0) return;
  const { width, dash } = LINES[kind];
  doc
    .lineWidth(width)
    .lineCap(dash.length > 0 ? 'butt' : 'round')
    .lineJoin('round')
    .strokeColor('black');
  if (dash.length > 0) doc.dash(dash as unknown as number, { phase: 0 });
  else doc.undash();
  let at: { x: number; y: number } | null = null;
  for (const segment of segments) {
    const from = pointAt(segment, 0);
    if (!at || Math.hypot(at.x - from.x, at.y - from.y) > 1e-6) doc.moveTo(from.x, from.y);
    at = pointAt(segment, 1);
    if (segment.kind === 'line') doc.lineTo(at.x, at.y);
    else curve(doc, segment);
  }
  doc.stroke();
}

/** A PDF has no arcs. A cubic over 30° is off by less than a millionth of the radius. */
function curve(doc: PDFKit.PDFDocument, arc: Extract<Segment, { kind: 'arc' }>): void {
  const pieces = Math.max(1, Math.ceil(Math.abs(arc.sweep) / (Math.PI / 6)));
  for (let i = 0; i < pieces; i++) {
    const piece = pieceOf(arc, i / pieces, (i + 1) / pieces);
    if (piece.kind !== 'arc') continue;
    const reach = (4 / 3) * Math.tan(piece.sweep / 4) * piece.radius;
    const [from, to] = [pointAt(piece, 0), pointAt(piece, 1)];
    const [a, b] = [piece.start, piece.start + piece.sweep];
    doc.bezierCurveTo(
      from.x - reach * Math.sin(a),
      from.y + reach * Math.cos(a),
      to.x + reach * Math.sin(b),
      to.y - reach * Math.cos(b),
      to.x,
      to.y,
    );
  }
}

function drawText(doc: PDFKit.PDFDocument, mark: Extract<Mark, { kind: 'text' }>, { faces }: Metrics): void {
  const name = mark.bold ? 'bold' : 'regular';
  faces[name].use(doc, name);
  doc.fillColor('black').fontSize(mark.height / faces[name].capital);
  const width = doc.widthOfString(mark.text);
  const shift = { start: 0, middle: -width / 2, end: -width }[mark.anchor];
  doc.save();
  // Turned upright again: text is drawn with y down.
  if (mark.turn === 0) doc.transform(1, 0, 0, -1, mark.at.x, mark.at.y);
  else doc.transform(0, 1, 1, 0, mark.at.x, mark.at.y);
  doc.text(mark.text, shift, 0, { lineBreak: false, baseline: 'alphabetic' });
  doc.restore();
}
