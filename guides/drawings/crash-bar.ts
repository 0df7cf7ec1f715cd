/** The drawings of the crash bar guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { downTube, ferretFront, ferretSide, lugSide } from './ferret.ts';
import { hexHead } from './hardware.ts';
import { box, centreLine, circle, closer, ellipse, path, sheet } from './pen.ts';

function spacers(): string {
  const tube = (x: number, width: number): string =>
    path(`M${x} 110H${x + width}V210H${x}A22 50 0 0 1 ${x} 110Z`, 'item') +
    ellipse(x + width, 160, 22, 50, 'item') +
    ellipse(x + width, 160, 9, 22, 'shade') +
    path(`M${x - 10} 138H${x + width - 22}M${x - 10} 182H${x + width - 22}`, 'hidden') +
    centreLine(x - 36, 160, x + width + 36, 160);
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

/** The left bar on its lugs, from the side: wheel and fork in front, the finned engine behind the tube. */
function bar(): string {
  const [x, y, scale] = [132, 160, 2.8] as const;
  const joint = (at: number, lug: number): string =>
    box(168, at - 20, lug - 168, 40, 'item', 2) +
    path(`M168 ${at - 8}H${lug}M168 ${at + 8}H${lug}`, 'hidden') +
    box(lug, at - 30, 92, 60, 'part', 8) +
    box(108, at - 16, 20, 32, 'item', 3) +
    path(`M128 ${at - 6}H${lug + 92}M128 ${at + 6}H${lug + 92}`, 'hidden') +
    box(lug + 92, at - 18, 24, 36, 'item', 2) +
    path(`M${lug + 92} ${at - 7}H${lug + 116}M${lug + 92} ${at + 7}H${lug + 116}`, 'detail') +
    centreLine(84, at, lug + 144, at);
  return sheet(
    closer(x, y, scale, ferretSide('')),
    closer(x, y, scale, downTube()),
    joint(92, 232),
    joint(312, 286),
    path(
      'M130 0C120 40 128 60 128 92V312C128 350 120 370 110 400H150C160 370 168 350 168 312V92C168 60 160 40 170 0Z',
      'item',
    ),
  );
}

/** The bridge from the front, the engine behind it. */
function bridge(): string {
  return sheet(
    ferretFront(),
    path('M0 250C40 216 80 214 130 214H260V266H130C90 266 60 270 0 300Z', 'part'),
    path('M640 250C600 216 560 214 510 214H380V266H510C550 266 580 270 640 300Z', 'part'),
    box(176, 194, 288, 92, 'item', 10),
    path('M320 194V286', 'hidden'),
    hexHead(226, 240, 20),
    hexHead(284, 240, 20),
    hexHead(356, 240, 20),
    hexHead(414, 240, 20),
    centreLine(110, 240, 530, 240),
  );
}

/** The Tansy Ferret from its left side, facing left: its platform's picture. */
export function tansyFerret(): string {
  return sheet(
    ferretSide(
      [
        [218, 184],
        [242, 284],
      ]
        .map(([x = 0, y = 0]) => lugSide(x, y) + circle(x - 14, y, 9, 'item'))
        .join(''),
    ),
  );
}

/** File names under `crash-bar/pictures/`. */
export const crashBar: Readonly<Record<string, string>> = {
  spacers: spacers(),
  bar: bar(),
  bridge: bridge(),
};
