/** The drawings of the crash bar guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { hexHead, nut } from './hardware.ts';
import { box, centreLine, circle, path, sheet } from './pen.ts';

function spacers(): string {
  const tube = (x: number, width: number): string =>
    box(x, 110, width, 100, 'item', 3) +
    path(`M${x} 140H${x + width}M${x} 180H${x + width}`, 'hidden') +
    centreLine(x - 24, 160, x + width + 24, 160);
  const ticks = Array.from({ length: 51 }, (_, index) => {
    const x = 70 + index * 10;
    return `M${x} 262V${index % 5 === 0 ? 286 : 276}`;
  });
  return sheet(
    tube(140, 120),
    tube(345, 180),
    box(50, 262, 540, 60, 'back', 3),
    path(ticks.join(''), 'detail'),
  );
}

function bar(): string {
  const joint = (y: number, from: number, to: number): string =>
    box(from, y - 22, to - from, 44, 'item', 2) +
    path(`M${from} ${y - 9}H${to}M${from} ${y + 9}H${to}`, 'hidden') +
    box(to, y - 34, 120, 68, 'back', 8) +
    box(120, y - 16, 20, 32, 'item', 3) +
    path(`M140 ${y - 6}H${to + 120}M140 ${y + 6}H${to + 120}`, 'hidden') +
    box(to + 120, y - 18, 24, 36, 'item', 2) +
    path(`M${to + 120} ${y - 7}H${to + 144}M${to + 120} ${y + 7}H${to + 144}`, 'detail') +
    centreLine(96, y, to + 172, y);
  return sheet(
    path('M296 20L396 380H464L364 20Z', 'part'),
    joint(112, 178, 290),
    joint(292, 178, 366),
    path(
      'M140 20C130 60 140 80 140 112V292C140 330 130 350 120 384H158C168 350 178 330 178 292V112C178 80 168 60 178 20Z',
      'part',
    ),
  );
}

function bridge(): string {
  return sheet(
    path('M20 168H250V232H20Z', 'part'),
    path('M390 168H620V232H390Z', 'part'),
    box(170, 146, 300, 108, 'item', 10),
    path('M320 146V254', 'hidden'),
    hexHead(224, 200, 20),
    hexHead(284, 200, 20),
    hexHead(356, 200, 20),
    hexHead(416, 200, 20),
    nut(320, 320, 16),
    path('M320 254V304', 'detail'),
    centreLine(10, 200, 630, 200),
  );
}

/** The Tansy Ferret from its left side, facing left: its platform's picture. */
export function tansyFerret(): string {
  const wheel = (x: number): string =>
    circle(x, 300, 76, 'shade') + circle(x, 300, 54, 'part') + circle(x, 300, 10, 'back');
  return sheet(
    path('M20 378H620', 'detail'),
    wheel(118),
    wheel(520),
    path('M118 300L206 110M132 304L220 114', 'bold'),
    path('M186 92H252M206 110L240 60', 'bold'),
    path('M214 128L236 322H420L452 214L300 130Z', 'part'),
    path('M262 206H372L392 306H272Z', 'back'),
    path('M276 222H366M280 242H370M284 262H374', 'detail'),
    path('M236 118C280 78 350 84 372 128L452 168C420 176 400 178 300 170C262 168 240 150 236 118Z', 'back'),
    path('M396 160L560 132L572 150L470 190Z', 'shade'),
    path('M420 322L520 300M430 250L520 300', 'bold'),
    circle(228, 184, 13, 'item'),
    circle(242, 284, 13, 'item'),
  );
}

/** File names under `crash-bar/pictures/`. */
export const crashBar: Readonly<Record<string, string>> = {
  spacers: spacers(),
  bar: bar(),
  bridge: bridge(),
};
