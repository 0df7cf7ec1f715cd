/**
 * Renders the one photograph-like picture of the demo: a cradle on a bench, with grain and shade, stored
 * lying on its side with EXIF orientation 6, a date and a position, as a phone would. The position is in the
 * open sea. Run: `npx tsx guides/drawings/bench-photo.ts`.
 */
import { join } from 'node:path';
import sharp from 'sharp';

const WIDTH = 1200;
const HEIGHT = 900;

const lamp = (x: number): string => `
  <ellipse cx="${x + 14}" cy="560" rx="150" ry="70" fill="#000" opacity="0.35"/>
  <circle cx="${x}" cy="410" r="150" fill="url(#rim)"/>
  <circle cx="${x}" cy="410" r="126" fill="url(#bowl)"/>
  <circle cx="${x}" cy="410" r="40" fill="url(#bulb)"/>
  <path d="M${x - 100} 350A118 118 0 0 1 ${x - 20} 296" fill="none" stroke="#fff" stroke-width="12" opacity="0.7" stroke-linecap="round"/>
  <path d="M${x - 12} 556h24v8h-24z" fill="#111"/>
  <path d="M${x - 30} 618h60l16 26-16 26h-60l-16-26z" fill="url(#bolt)" stroke="#2a2c2e" stroke-width="3"/>
  <ellipse cx="${x}" cy="644" rx="54" ry="36" fill="none" stroke="#8d9296" stroke-width="6"/>`;

const scene = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}">
  <defs>
    <linearGradient id="wall" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#7f8a8c"/><stop offset="1" stop-color="#4f5a5c"/></linearGradient>
    <linearGradient id="top" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#6f543a"/><stop offset="1" stop-color="#b08a62"/></linearGradient>
    <linearGradient id="steel" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="#565b60"/><stop offset="0.5" stop-color="#2c3034"/><stop offset="1" stop-color="#41464b"/></linearGradient>
    <radialGradient id="rim" cx="0.35" cy="0.3" r="0.9"><stop offset="0" stop-color="#f4f6f7"/><stop offset="1" stop-color="#5c6266"/></radialGradient>
    <radialGradient id="bowl" cx="0.5" cy="0.55" r="0.6"><stop offset="0" stop-color="#fdfdf4"/><stop offset="0.6" stop-color="#aeb7bb"/><stop offset="1" stop-color="#4d5559"/></radialGradient>
    <radialGradient id="bulb" cx="0.4" cy="0.4" r="0.8"><stop offset="0" stop-color="#fffbe0"/><stop offset="1" stop-color="#a8a58a"/></radialGradient>
    <linearGradient id="bolt" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#d9dde0"/><stop offset="1" stop-color="#8b9195"/></linearGradient>
  </defs>
  <rect width="${WIDTH}" height="${HEIGHT}" fill="url(#wall)"/>
  <rect y="330" width="${WIDTH}" height="570" fill="url(#top)"/>
  <path d="M0 450H1200M0 610H1200M0 780H1200" stroke="#5a432d" stroke-width="4" opacity="0.6"/>
  <path d="M110 770L150 790H1090L1130 760 1090 730H150z" fill="#000" opacity="0.35"/>
  <path d="M120 200H240V540H960V200H1080V760H120Z" fill="url(#steel)" stroke="#1d2023" stroke-width="6"/>
  <path d="M120 200L150 176H262L240 200M960 200L986 176H1106L1080 200M1080 200L1106 176V738L1080 760" fill="#6a7076" stroke="#1d2023" stroke-width="4"/>
  <circle cx="180" cy="270" r="18" fill="#14171a"/><circle cx="180" cy="350" r="18" fill="#14171a"/>
  <circle cx="1020" cy="270" r="18" fill="#14171a"/><circle cx="1020" cy="350" r="18" fill="#14171a"/>
  ${lamp(400)}${lamp(800)}
</svg>`;

/** Film grain from a fixed seed, so that each run writes the same picture. */
function grain(): Buffer {
  const pixels = Buffer.alloc(WIDTH * HEIGHT * 4);
  let seed = 20261002;
  for (let i = 0; i < WIDTH * HEIGHT; i += 1) {
    seed = (seed * 1664525 + 1013904223) >>> 0;
    const bright = seed & 0x80000000 ? 255 : 0;
    pixels.fill(bright, i * 4, i * 4 + 3);
    pixels[i * 4 + 3] = (seed >>> 16) % 22;
  }
  return pixels;
}

const upright = await sharp(Buffer.from(scene))
  .blur(1.1)
  .composite([{ input: grain(), raw: { width: WIDTH, height: HEIGHT, channels: 4 } }])
  .removeAlpha()
  .png()
  .toBuffer();

await sharp(upright)
  .rotate(270)
  .jpeg({ quality: 62, mozjpeg: true })
  .withMetadata({ orientation: 6 })
  .withExifMerge({
    IFD0: { Make: 'Quarrel Lane', Model: 'Bench camera', DateTime: '2026:10:02 09:12:00' },
    IFD3: {
      GPSLatitudeRef: 'N',
      GPSLatitude: '45/1 30/1 0/1',
      GPSLongitudeRef: 'W',
      GPSLongitude: '30/1 15/1 0/1',
    },
  })
  .toFile(join(import.meta.dirname, '..', 'lamp-cradle', 'pictures', 'bench.jpg'));
