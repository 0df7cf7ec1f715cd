/**
 * The photograph-like pictures of the demo, with grain and shade. Each is stored turned, with the EXIF orientation that
 * sets it upright, a date and a position, as a phone would; the position is in the open sea.
 */
import sharp from 'sharp';
import { scenes } from './scenes.ts';

const WIDTH = 1200;
const HEIGHT = 900;

/** A photograph: where it goes below `guides/`, the EXIF orientation it is stored with, and what it shows. */
interface Photograph {
  readonly file: string;
  readonly orientation: 3 | 6 | 8;
  readonly scene: string;
}

/** How far an upright picture is turned clockwise to be stored with an orientation. */
const STORED_TURN = { 3: 180, 6: 270, 8: 90 } as const;

const lamp = (x: number): string => `
  <ellipse cx="${x + 14}" cy="560" rx="150" ry="70" fill="#000" opacity="0.35"/>
  <circle cx="${x}" cy="410" r="150" fill="url(#rim)"/>
  <circle cx="${x}" cy="410" r="126" fill="url(#bowl)"/>
  <circle cx="${x}" cy="410" r="40" fill="url(#bulb)"/>
  <path d="M${x - 100} 350A118 118 0 0 1 ${x - 20} 296" fill="none" stroke="#fff" stroke-width="12" opacity="0.7" stroke-linecap="round"/>
  <path d="M${x - 12} 556h24v8h-24z" fill="#111"/>
  <path d="M${x - 30} 618h60l16 26-16 26h-60l-16-26z" fill="url(#bolt)" stroke="#2a2c2e" stroke-width="3"/>
  <ellipse cx="${x}" cy="644" rx="54" ry="36" fill="none" stroke="#8d9296" stroke-width="6"/>`;

const bench = `
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
`;

const socket = (x: number, y: number): string => `
  <circle cx="${x}" cy="${y}" r="24" fill="#33404a"/>
  <circle cx="${x}" cy="${y}" r="20" fill="url(#paint)" stroke="#25303a" stroke-width="2"/>
  <path d="M${x - 12} ${y - 8}a15 15 0 0 1 14 -7" fill="none" stroke="#fff" stroke-width="3" opacity="0.6"/>`;

const rear = `
  <defs>
    <linearGradient id="paint" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#8fb3cf"/><stop offset="0.5" stop-color="#4f7f9f"/><stop offset="1" stop-color="#2f5570"/></linearGradient>
    <linearGradient id="floor" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#6a6c6e"/><stop offset="1" stop-color="#8d8f90"/></linearGradient>
    <linearGradient id="glass" x1="0" y1="0" x2="1" y2="1"><stop offset="0" stop-color="#26313a"/><stop offset="1" stop-color="#5b6b76"/></linearGradient>
  </defs>
  <rect width="${WIDTH}" height="${HEIGHT}" fill="#b8bdbf"/>
  <path d="M0 640H1200V900H0z" fill="url(#floor)"/>
  <ellipse cx="600" cy="790" rx="520" ry="50" fill="#000" opacity="0.4"/>
  <path d="M240 60H960L1040 360H160z" fill="url(#paint)"/>
  <path d="M290 90H910L960 260H240z" fill="url(#glass)"/>
  <path d="M110 360H1090C1130 400 1140 470 1130 520H70C60 470 70 400 110 360z" fill="url(#paint)" stroke="#25404f" stroke-width="4"/>
  <path d="M110 380H250V500H84zM950 380H1090L1116 500H950z" fill="#9b2a2a"/>
  <path d="M70 520H1130C1150 580 1140 690 1090 740C960 770 240 770 110 740C60 690 50 580 70 520z" fill="url(#paint)" stroke="#25404f" stroke-width="4"/>
  <path d="M80 590C400 616 800 616 1120 590" fill="none" stroke="#25404f" stroke-width="4" opacity="0.6"/>
  <rect x="470" y="420" width="260" height="70" rx="6" fill="#f4f4ee" stroke="#222" stroke-width="4"/>
  <path d="M500 440v30M500 440h16l6 14-6 16h-16M545 440v30h22M600 440h24v30h-24zM650 440v30M680 440h22v14h-22v16h22" fill="none" stroke="#222" stroke-width="7"/>
  ${[
    [170, 640],
    [420, 655],
    [780, 655],
    [1030, 640],
  ]
    .map(([x = 0, y = 0]) => socket(x, y))
    .join('')}`;

const rocker = (x: number): string => `
  <rect x="${x}" y="350" width="86" height="160" rx="8" fill="url(#rocker)" stroke="#0c0e10" stroke-width="4"/>
  <path d="M${x + 24} 430h38" stroke="#e9efe9" stroke-width="5"/>
  <circle cx="${x + 43}" cy="380" r="8" fill="#d8a233"/>`;

const panel = `
  <defs>
    <linearGradient id="dash" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#565a5e"/><stop offset="1" stop-color="#2c2f32"/></linearGradient>
    <linearGradient id="rocker" x1="0" y1="0" x2="0" y2="1"><stop offset="0" stop-color="#3f454a"/><stop offset="0.5" stop-color="#1d2124"/><stop offset="1" stop-color="#31363a"/></linearGradient>
  </defs>
  <rect width="${WIDTH}" height="${HEIGHT}" fill="url(#dash)"/>
  <path d="M180 120H1020L980 800H220z" fill="#43474b" stroke="#1b1d1f" stroke-width="8"/>
  <rect x="340" y="300" width="520" height="260" rx="26" fill="#24282b" stroke="#0c0e10" stroke-width="6"/>
  <path d="M352 312H848" stroke="#777d82" stroke-width="3" opacity="0.7"/>
  ${[380, 492, 604, 716].map(rocker).join('')}
  <circle cx="600" cy="690" r="62" fill="#1a1c1e" stroke="#0c0e10" stroke-width="6"/><circle cx="600" cy="690" r="40" fill="#0d0e0f"/>`;

export const photographs: readonly Photograph[] = [
  { file: 'lamp-cradle/pictures/bench.jpg', orientation: 6, scene: bench },
  { file: 'flush-sensors/pictures/finished.jpg', orientation: 8, scene: rear },
  { file: 'switch-panel/pictures/fitted.jpg', orientation: 3, scene: panel },
  { file: 'lamp-cradle/pictures/cutting.jpg', orientation: 6, scene: scenes.notch },
  { file: 'lamp-cradle/pictures/tight.jpg', orientation: 3, scene: scenes.cradle },
  { file: 'lamp-cradle/pictures/earth.jpg', orientation: 8, scene: scenes['lamp-earth'] },
  { file: 'switch-panel/pictures/earth.jpg', orientation: 6, scene: scenes['dash-earth'] },
  { file: 'roof-vent/pictures/edge.jpg', orientation: 3, scene: scenes['roof-edge'] },
  { file: 'roof-vent/pictures/plug.jpg', orientation: 8, scene: scenes['vent-plug'] },
  { file: 'side-awning/pictures/tight.jpg', orientation: 6, scene: scenes.brackets },
  { file: 'crash-bar/pictures/cap.jpg', orientation: 3, scene: scenes['lug-cap'] },
  { file: 'depth-transducer/pictures/lid.jpg', orientation: 6, scene: scenes['locker-lid'] },
  { file: 'depth-transducer/pictures/bore.jpg', orientation: 8, scene: scenes.boring },
  { file: 'flush-sensors/pictures/dress.jpg', orientation: 6, scene: scenes.deburring },
];

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

/** The bytes of a photograph, as a camera would store them. */
export async function taken({ orientation, scene }: Photograph): Promise<Buffer> {
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${HEIGHT}" width="${WIDTH}" height="${HEIGHT}">${scene}</svg>`;
  const upright = await sharp(Buffer.from(svg))
    .blur(1.1)
    .composite([{ input: grain(), raw: { width: WIDTH, height: HEIGHT, channels: 4 } }])
    .removeAlpha()
    .png()
    .toBuffer();
  return sharp(upright)
    .rotate(STORED_TURN[orientation])
    .jpeg({ quality: 62, mozjpeg: true })
    .withMetadata({ orientation })
    .withExifMerge({
      IFD0: { Make: 'Quarrel Lane', Model: 'Bench camera', DateTime: '2026:10:02 09:12:00' },
      IFD3: {
        GPSLatitudeRef: 'N',
        GPSLatitude: '45/1 30/1 0/1',
        GPSLongitudeRef: 'W',
        GPSLongitude: '30/1 15/1 0/1',
      },
    })
    .toBuffer();
}
