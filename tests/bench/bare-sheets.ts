import { createWriteStream, readFileSync } from 'node:fs';
import PDFDocument from 'pdfkit';
import type { Stroked, Written } from './drawn-sheets.ts';

/**
 * What `cut` is measured against: the same strokes and texts on the same sheets, given as numbers, drawn by
 * pdfkit and nothing else.
 *
 *   node bare-sheets.mjs <sheets.json> <regular.ttf> <bold.ttf> <to.pdf>
 */
const [from = '', regular = '', bold = '', to = ''] = process.argv.slice(2);
const sheets: readonly (readonly (Stroked | Written)[])[] = JSON.parse(readFileSync(from, 'utf8'));
const pointsPerMm = 72 / 25.4;
const doc = new PDFDocument({ autoFirstPage: false, compress: false });
doc.pipe(createWriteStream(to));
doc.registerFont('regular', regular);
doc.registerFont('bold', bold);
for (const sheet of sheets) {
  doc.addPage({ size: 'A4', margin: 0 });
  for (const mark of sheet) {
    if ('text' in mark) {
      doc.font(mark.bold ? 'bold' : 'regular').fontSize(mark.size);
      doc.text(mark.text, mark.x, mark.y, { lineBreak: false });
    } else {
      doc.lineWidth(mark.width * pointsPerMm);
      if (mark.dash.length > 0) doc.dash(mark.dash.map((mm) => mm * pointsPerMm) as unknown as number, {});
      else doc.undash();
      for (const [x1, y1, x2, y2] of mark.lines) doc.moveTo(x1, y1).lineTo(x2, y2);
      doc.stroke();
    }
  }
}
doc.end();
