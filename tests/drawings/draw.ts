import type { Element } from 'hast';
import rehypeStringify from 'rehype-stringify';
import sharp from 'sharp';
import { unified } from 'unified';

/** A drawing as a browser would be given it, for the outside renderer. */
export function svgText(drawing: Element): string {
  const element: Element = {
    ...drawing,
    properties: { ...drawing.properties, xmlns: 'http://www.w3.org/2000/svg' },
  };
  return unified()
    .use(rehypeStringify)
    .stringify({ type: 'root', children: [element] });
}

/** Ink on white, one byte a pixel (0 black, 255 white), as librsvg draws it at a width in pixels. */
export async function rendered(
  drawing: Element,
  width: number,
): Promise<{ data: Buffer; width: number; height: number }> {
  const box = String(drawing.properties.viewBox).split(' ').map(Number);
  const { data, info } = await sharp(Buffer.from(svgText(drawing)), { density: (72 * width) / (box[2] ?? 1) })
    .resize(width)
    .flatten({ background: '#fff' })
    .greyscale()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return { data, width: info.width, height: info.height };
}

/** How much of two drawings of one size differs, 0 to 1. */
export function difference(a: Buffer, b: Buffer): number {
  return a.reduce((sum, value, index) => sum + Math.abs(value - (b[index] ?? 0)), 0) / a.length / 255;
}
