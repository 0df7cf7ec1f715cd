import sharp from 'sharp';
import { iconPath } from './manifest.ts';

/** The drawing that stands for the site in a tab. */
const iconDrawing = 'icons/icon.svg';

/** What is drawn where the shop names no accent. */
const GROUND = '#0b5f8a';

/**
 * The site's icon in its sizes: a panel with its notch and centreline, as on a cut template, on the shop's
 * accent. Of a maskable icon a device shows at least the middle four fifths (W3C, Web Application Manifest).
 *
 * @param accent a CSS hexadecimal colour, or `null`
 */
export async function siteIcons(
  accent: string | null,
): Promise<readonly { readonly path: string; readonly bytes: string | Uint8Array }[]> {
  const ground = accent ?? GROUND;
  const raster = async (size: number, purpose: 'any' | 'maskable') => {
    const svg = drawing(ground, purpose === 'any' ? 1 : 0.8);
    const bytes = await sharp(Buffer.from(svg)).resize(size, size).png().toBuffer();
    return { path: iconPath(size, purpose), bytes };
  };
  return [
    { path: iconDrawing, bytes: drawing(ground, 1) },
    await raster(180, 'any'),
    await raster(192, 'any'),
    await raster(512, 'any'),
    await raster(512, 'maskable'),
  ];
}

/** @param scale of the panel on its ground, which always fills the square */
function drawing(ground: string, scale: number): string {
  return [
    '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 512 512">',
    `<path d="M0 0H512V512H0Z" fill="${ground}"/>`,
    `<g transform="translate(256 256) scale(${scale}) translate(-256 -256)">`,
    '<path d="M96 112H416V400H336V312a24 24 0 0 0-24-24H200a24 24 0 0 0-24 24V400H96Z" fill="#ffffff"/>',
    `<path d="M256 72V176M256 200V216M256 240V344M256 368V384M256 408V440" stroke="${ground}" stroke-width="16" fill="none"/>`,
    '<path d="M256 72V112M256 304V344M256 368V384M256 408V440" stroke="#ffffff" stroke-width="16" fill="none"/>',
    '</g></svg>',
    '',
  ].join('\n');
}
