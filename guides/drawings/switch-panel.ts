/** The drawings of the switch panel guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import {
  clipHead,
  crossHead,
  hatch,
  hexHead,
  lever,
  locator,
  pinchHand,
  smallPlug,
  tape,
} from './hardware.ts';
import { accentLine, arrow, box, cable, centreLine, circle, path, place, sheet, way } from './pen.ts';

const DASH = locator(592, 316, 0.5, 0.26);

/** The panel with its four rockers from the front, its middle at the origin. */
const rockers = (): string =>
  box(-64, -36, 128, 72, 'item', 8) +
  [-42, -14, 14, 42]
    .map((x) => box(x - 11, -22, 22, 44, 'part', 3) + path(`M${x - 7} 0H${x + 7}`, 'detail'))
    .join('');

function dash(): string {
  return sheet(
    path('M20 60C120 30 520 30 620 60V372H20Z', 'back'),
    path('M150 96H490L470 300H170Z', 'shade'),
    path('M160 90H480L466 286H174Z', 'part'),
    path('M174 104H466L454 272H186Z', 'detail'),
    ...[
      [200, 140],
      [440, 140],
      [206, 236],
      [434, 236],
    ].map(
      ([x = 0, y = 0]) =>
        `<circle cx="${x}" cy="${y}" r="13" fill="none" stroke="#1b1f22" stroke-width="1.3" stroke-dasharray="6 4"/>${clipHead(x, y, 6)}`,
    ),
    circle(320, 214, 30, 'back'),
    circle(320, 214, 20, 'shade'),
    crossHead(244, 318, 13),
    crossHead(396, 318, 13),
    path('M180 300H460L470 340H170Z', 'detail'),
    place(466, 284, lever(0, 0, 24)),
    way(({ arrow }) => arrow(320, 290, 320, 388, 20)),
    locator(8, 318, 0.5, 0.26),
  );
}

function depth(): string {
  return sheet(
    path('M220 30H238V130H220ZM220 270H238V370H220Z', 'part'),
    path('M120 118H150V130H196V270H150V282H120Z', 'item'),
    path('M120 150H104V180H120M120 220H104V250H120', 'part'),
    path('M268 110H286V290H268V262H280V138H268Z', 'item'),
    arrow(176, 200, 212, 200, 10),
    path('M290 232H466M290 224V240M466 224V240', 'bold'),
    path('M290 232L304 226V238ZM466 232L452 226V238Z', 'shade'),
    path('M470 40C520 80 520 320 470 370H600V40Z', 'back'),
    path('M500 60C540 110 540 300 500 350', 'detail'),
    path('M238 130H470M238 270H470', 'hidden'),
    locator(8, 318, 0.5, 0.26),
  );
}

function opening(): string {
  return sheet(
    path('M90 40H550L530 370H110Z', 'part'),
    path('M108 58H532L514 352H126Z', 'detail'),
    tape(136, 112, 368, 168),
    hatch(216, 148, 208, 98, 16),
    accentLine(
      'M228 146H412A14 14 0 0 1 426 160V234A14 14 0 0 1 412 248H228A14 14 0 0 1 214 234V160A14 14 0 0 1 228 146Z',
      false,
      4,
    ),
    ...[
      [184, 156],
      [184, 238],
      [456, 156],
      [456, 238],
    ].map(
      ([x = 0, y = 0]) =>
        circle(x, y, 8, 'item') + path(`M${x - 14} ${y}H${x + 14}M${x} ${y - 14}V${y + 14}`, 'detail'),
    ),
    box(150, 178, 14, 38, 'item', 7),
    centreLine(320, 20, 320, 392),
    path('M90 40H550', 'bold'),
    circle(320, 320, 30, 'back'),
    circle(320, 320, 20, 'shade'),
    DASH,
  );
}

function cutter(): string {
  return sheet(
    path('M330 40V372', 'detail'),
    tape(24, 196, 180, 96),
    path('M20 60H300V372H260V160A60 60 0 0 0 200 100H20Z', 'part'),
    accentLine('M20 100H200A60 60 0 0 1 260 160V372', false, 4),
    path('M20 130H196A36 36 0 0 1 232 166V372', 'hidden'),
    circle(232, 200, 26, 'item'),
    path('M212 184L252 216M212 216L252 184M232 174V226M206 200H258', 'detail'),
    arrow(232, 250, 232, 320, 14),
    path('M350 60H620V372H580V160A60 60 0 0 0 520 100H350Z', 'part'),
    accentLine('M350 100H520A60 60 0 0 1 580 160V372', false, 4),
    path('M556 190H580V340H556C540 320 540 210 556 190Z', 'item'),
    path('M552 200L574 214M548 224L576 240M546 250L576 266M546 276L576 292M550 304L576 318', 'detail'),
    arrow(520, 266, 520, 226, 14),
    arrow(520, 274, 520, 314, 14),
    locator(30, 290, 0.5, 0.26),
  );
}

function exploded(): string {
  return sheet(
    path('M250 40L390 70V350L250 380Z', 'part'),
    path('M284 140L356 152V266L284 280Z', 'shade'),
    place(130, 210, rockers(), 0, 1.2),
    place(
      520,
      210,
      box(-60, -60, 120, 120, 'item', 8) +
        box(-40, -40, 80, 80, 'part', 4) +
        [
          [-50, -50],
          [50, -50],
          [-50, 50],
          [50, 50],
        ]
          .map(([x = 0, y = 0]) => circle(x, y, 4, 'shade'))
          .join(''),
    ),
    ...[
      [62, 154],
      [198, 154],
      [62, 266],
      [198, 266],
    ].map(([x = 0, y = 0]) => crossHead(x, y, 9)),
    path('M72 154L470 160M72 266L470 260', 'hidden'),
    arrow(216, 210, 272, 210, 18),
    arrow(452, 210, 400, 210, 18),
    locator(8, 318, 0.5, 0.26),
  );
}

function wiring(): string {
  return sheet(
    path('M20 90C120 50 520 50 620 90V230H470L450 372H190L170 230H20Z', 'back'),
    box(256, 130, 150, 90, 'shade', 8),
    box(60, 120, 110, 90, 'part', 6),
    path('M76 136H154M76 150H154M76 164H154M76 178H154', 'detail'),
    place(142, 176, smallPlug(0, 0, 180)),
    box(182, 150, 22, 32, 'item', 3),
    box(210, 150, 22, 32, 'item', 3),
    path('M188 158H198M216 158H226', 'detail'),
    cable('M164 176C176 200 190 220 230 226C280 232 300 200 330 186'),
    cable('M244 226C300 240 380 250 430 300'),
    place(346, 182, smallPlug(0, 0, 0)),
    hexHead(440, 310, 15),
    path('M420 330H462', 'bold'),
    locator(592, 316, 0.5, 0.26),
  );
}

/** The alarm lamp and the dash panel in section: out to the front, or in from there until the collar lies flat. */
function alarmLamp(out: boolean): string {
  const x = out ? 236 : 292;
  const lamp =
    path(
      `M${x} 168H${x + 40}V160H${x + 128}V240H${x + 40}V232H${x}C${x - 18} 224 ${x - 18} 176 ${x} 168Z`,
      'item',
    ) +
    box(x + 18, 140, 12, 120, 'part', 3) +
    path(
      `M${x + 128} 184H${x + 152}M${x + 128} 216H${x + 152}M${x + 70} 160V240M${x + 90} 160V240`,
      'detail',
    );
  return sheet(
    box(320, 30, 26, 126, 'part'),
    box(320, 244, 26, 126, 'part'),
    hatch(320, 30, 26, 126, 9),
    hatch(320, 244, 26, 126, 9),
    path('M120 60C170 90 170 310 120 340', 'hidden'),
    lamp,
    out ? pinchHand(404, 200, 0) : pinchHand(206, 200, 180, true),
    out ? arrow(200, 330, 120, 330, 16) : arrow(120, 330, 200, 330, 16),
    DASH,
  );
}

/** File names under the guide's `pictures/`. */
export const switchPanel: Readonly<Record<string, string>> = {
  dash: dash(),
  depth: depth(),
  opening: opening(),
  cutter: cutter(),
  fit: exploded(),
  wiring: wiring(),
  'alarm-lamp-out': alarmLamp(true),
  'alarm-lamp-in': alarmLamp(false),
};
