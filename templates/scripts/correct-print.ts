import { PDFDocument, StandardFonts } from '@cantoo/pdf-lib';
import { type Correction, correctionOn, correctionStamp } from '../../src/trade/print-check.ts';

/** What this script hands to the page that asked for it. */
export type CorrectPrint = (bytes: ArrayBuffer, correction: Correction) => Promise<Uint8Array>;

declare global {
  var correctPrint: CorrectPrint | undefined;
}

/** A PDF unit is 1/72 in (ISO 32000-1, 8.3.2.3). */
const POINTS_PER_MM = 72 / 25.4;

/** The stamp stands in the upper margin, which no sheet uses: its foot this far from the edge, and so high, mm. */
const STAMP = { fromTop: 9.5, fromLeft: 13, height: 2.5 };

/**
 * The same sheets for one printer: every page is stretched about its middle, as `baybook cut --measured` does it,
 * and says so. Throws an error with a plain sentence for a file that is no sheet set, or is corrected already.
 */
globalThis.correctPrint = async (bytes, correction) => {
  const pdf = await PDFDocument.load(bytes, { updateMetadata: false }).catch(() => null);
  if (pdf?.getProducer() !== 'Baybook')
    throw new Error('This file is no template of a guide. Choose the PDF that you printed.');
  if (pdf.getSubject())
    throw new Error(
      'This file is corrected already. Choose the PDF that came with the guide, and measure a print of that.',
    );
  const font = await pdf.embedFont(StandardFonts.Helvetica);
  const stamp = correctionStamp(correction);
  for (const page of pdf.getPages()) {
    const { width, height } = page.getSize();
    const { x, y } = correctionOn(correction, width, height);
    page.drawText(stamp, {
      x: STAMP.fromLeft * POINTS_PER_MM,
      y: height - STAMP.fromTop * POINTS_PER_MM,
      // Capitals of this font stand 0.718 of its size high.
      size: (STAMP.height * POINTS_PER_MM) / 0.718,
      font,
    });
    page.scaleContent(x, y);
    page.translateContent((width / 2) * (1 - x), (height / 2) * (1 - y));
  }
  pdf.setSubject(stamp);
  return pdf.save();
};
