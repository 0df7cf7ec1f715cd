/** What comes in the boxes, and the plugs of the vehicles, each by itself: what a hand could take for another. */
import { smallPlug } from './hardware.ts';
import { box, cable, circle, ellipse, path, place, ring, small } from './pen.ts';

/** A plug from its mating face: so many pins in so many rows, its latch above. */
function plugFace(columns: number, rows: number, pitch = 22): string {
  const [w, h] = [columns * pitch + 14, rows * pitch + 14];
  const pins = Array.from({ length: columns * rows }, (_, i) =>
    box(
      120 - w / 2 + 7 + (i % columns) * pitch + 5,
      84 - h / 2 + 7 + Math.floor(i / columns) * pitch + 5,
      pitch - 10,
      pitch - 10,
      'shade',
      2,
    ),
  );
  return small(
    place(
      -66,
      -42,
      box(120 - 18, 84 - h / 2 - 14, 36, 16, 'part', 3) +
        box(120 - w / 2, 84 - h / 2, w, h, 'item', 6) +
        pins.join(''),
      0,
      1.55,
    ),
  );
}

/** A plug on its lead, at the end of a loom. */
const end = (x: number, y: number, turn: number, wide = 1): string =>
  place(x, y, smallPlug(0, 0), turn, [1.15, 1.15 * wide]);

/** A tube spacer over a rule with a tick for each millimetre, all on one scale. */
function spacer(millimetres: number): string {
  const width = millimetres * 7;
  const x = 120 - width / 2;
  const ticks = Array.from(
    { length: millimetres + 1 },
    (_, i) => `M${x + i * 7} 134V${i % 6 === 0 ? 150 : 143}`,
  );
  return small(
    path(`M${x} 24H${x + width}V118H${x}A18 47 0 0 1 ${x} 24Z`, 'item') +
      ellipse(x + width, 71, 18, 47, 'item') +
      ellipse(x + width, 71, 8, 22, 'shade') +
      path(`${ticks.join('')}M${x} 134H${x + width}`, 'detail'),
  );
}

/** A hexagon bolt on its side, so many units long under the head. */
const bolt = (length: number): string =>
  small(
    box(24, 48, 26, 64, 'item', 4) +
      path('M24 64H50M24 96H50', 'detail') +
      box(50, 62, length, 36, 'item', 2) +
      path(Array.from({ length: 7 }, (_, i) => `M${50 + length - 6 - i * 8} 62V98`).join(''), 'detail'),
  );

export const crashBarParts: Readonly<Record<string, string>> = {
  'spacer-12': spacer(12),
  'spacer-18': spacer(18),
  'upper-bolt': bolt(140),
  'lower-bolt': bolt(150),
  bridge: small(
    box(24, 46, 192, 68, 'item', 8) +
      path('M120 46V114', 'hidden') +
      [56, 92, 148, 184].map((x) => circle(x, 80, 12, 'part') + circle(x, 80, 6, 'shade')).join('') +
      ellipse(24, 80, 6, 24, 'shade') +
      ellipse(216, 80, 6, 24, 'shade'),
  ),
};

export const depthTransducerParts: Readonly<Record<string, string>> = {
  housing: small(
    ellipse(84, 134, 66, 14, 'item') +
      box(54, 34, 60, 96, 'item', 3) +
      path('M54 50H114M54 64H114M54 78H114M54 92H114', 'detail') +
      cable('M84 34C84 10 130 10 150 40S190 120 226 110') +
      path('M84 128H110M104 122L112 128L104 134', 'detail'),
  ),
  'hull-nut': small(
    path('M70 40H170L206 80L170 120H70L34 80Z', 'item') +
      ring(120, 80, 34, 26, 'part') +
      path('M92 60L148 100', 'detail'),
  ),
  'ring-terminal': small(
    ring(62, 80, 34, 15, 'item') +
      path('M92 66H124V94H92Z', 'item') +
      box(124, 60, 60, 40, 'part', 6) +
      cable('M184 80H236'),
  ),
  'butt-splice': small(
    cable('M4 80H60') +
      cable('M180 80H236') +
      box(52, 56, 136, 48, 'item', 20) +
      path('M86 56V104M120 56V104M154 56V104', 'detail'),
  ),
  'hole-saw-51': small(
    box(72, 44, 96, 76, 'item', 3) +
      path(`M72 120${Array.from({ length: 8 }, () => 'l6 14l6 -14').join('')}`, 'part') +
      path('M116 120V152L120 158L124 152V120Z', 'part') +
      box(108, 12, 24, 32, 'part', 2) +
      path('M96 66V104M144 66V104', 'detail'),
  ),
};

export const flushSensorsParts: Readonly<Record<string, string>> = {
  'cover-loom': small(
    cable('M24 40H190C216 40 222 60 222 84') +
      [34, 82, 130, 178]
        .map((x) => cable(`M${x} 40C${x} 70 ${x + 10} 80 ${x + 10} 96`) + end(x + 10, 118, 90))
        .join('') +
      end(222, 108, 90, 1.3),
  ),
  'body-loom': small(
    cable('M30 46C80 40 150 60 200 110') +
      cable('M110 52C130 30 150 28 170 28') +
      end(30, 72, 90, 1.7) +
      end(196, 28, 0) +
      ellipse(158, 76, 12, 20, 'item') +
      ellipse(158, 76, 5, 10, 'shade') +
      end(210, 134, 70, 1.3),
  ),
  holder: small(
    ring(120, 80, 62, 36, 'item') +
      ring(120, 80, 46, 36, 'part') +
      path('M120 8V28M114 16L120 6L126 16', 'bold') +
      path('M74 70H84V90H74ZM156 70H166V90H156Z', 'part'),
  ),
  'sensor-plug': plugFace(3, 1),
  'loom-joint': plugFace(3, 2),
  'module-plug': plugFace(6, 2),
  'lamp-tee': small(
    box(92, 58, 56, 44, 'item', 6) +
      box(148, 64, 30, 32, 'part', 3) +
      box(62, 64, 30, 32, 'shade', 3) +
      cable('M120 102C120 126 150 140 186 140') +
      cable('M62 80C40 80 20 90 8 110') +
      path('M104 68V92M136 68V92', 'detail'),
  ),
};

export const switchPanelParts: Readonly<Record<string, string>> = {
  'back-frame': small(
    box(60, 20, 120, 120, 'item', 8) +
      box(82, 42, 76, 76, 'part', 4) +
      [
        [71, 31],
        [169, 31],
        [71, 129],
        [169, 129],
      ]
        .map(([x = 0, y = 0]) => circle(x, y, 5, 'shade'))
        .join(''),
  ),
  'supply-loom': small(
    cable('M40 80C90 70 140 90 186 60') +
      cable('M130 82C150 110 170 120 176 128') +
      end(30, 82, 190, 1.7) +
      box(58, 58, 18, 34, 'item', 3) +
      box(84, 56, 18, 34, 'item', 3) +
      ring(184, 136, 14, 6, 'item') +
      end(210, 48, -25, 1.3),
  ),
  'outlet-plug': small(
    ring(120, 80, 50, 40, 'item') +
      box(100, 60, 14, 40, 'shade', 3) +
      box(126, 60, 14, 40, 'shade', 3) +
      path('M104 32H136V24H104Z', 'part'),
  ),
  'panel-plug': plugFace(5, 2),
  'feed-plug': plugFace(2, 1, 34),
  'alarm-plug': plugFace(2, 1, 18),
};
