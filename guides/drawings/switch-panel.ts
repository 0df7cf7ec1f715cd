/** The drawings of the switch panel guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { clipHead, crossHead, hatch, hexHead, lever, smallPlug, tape } from './hardware.ts';
import { accentLine, arrow, box, cable, centreLine, circle, closer, path, place, sheet, way } from './pen.ts';
import { dashPanel, wicketDash } from './wicket.ts';

/** The lower centre of the dash: its left upper corner in the view from the seats, and how much nearer. */
const CENTRE = [200, 180, 2.7] as const;

/** The panel with its four rockers from the front, its middle at the origin. */
const rockers = (): string =>
  box(-64, -36, 128, 72, 'item', 8) +
  [-42, -14, 14, 42]
    .map((x) => box(x - 11, -22, 22, 44, 'part', 3) + path(`M${x - 7} 0H${x + 7}`, 'detail'))
    .join('');

function dash(): string {
  return sheet(
    closer(...CENTRE, wicketDash(path(dashPanel, 'shade') + path('M256 322H384L382 350H258Z', 'part'))),
    path('M176 134H462L444 350H194Z', 'part'),
    path('M190 148H448L432 336H206Z', 'detail'),
    ...[
      [216, 178],
      [422, 178],
      [224, 286],
      [414, 286],
    ].map(
      ([x = 0, y = 0]) =>
        `<circle cx="${x}" cy="${y}" r="13" fill="none" stroke="#1b1f22" stroke-width="1.3" stroke-dasharray="6 4"/>${clipHead(x, y, 6)}`,
    ),
    circle(319, 282, 30, 'back'),
    circle(319, 282, 20, 'shade'),
    crossHead(238, 378, 13),
    crossHead(400, 378, 13),
    place(440, 338, lever(0, 0, 18)),
    way(({ arrow }) => arrow(319, 318, 319, 396, 20)),
  );
}

/** The lower dash in section from the right, the seats to the right: before the panel and behind it. */
function depth(): string {
  return sheet(
    place(
      640,
      0,
      path('M420 30H438V130H420ZM420 270H438V370H420Z', 'part') +
        path('M420 30C380 14 340 20 300 20M438 30C500 10 560 20 640 44', 'bold') +
        path('M420 370H396C376 370 360 380 350 400', 'bold') +
        path('M320 118H350V130H396V270H350V282H320Z', 'item') +
        path('M320 150H304V180H320M320 220H304V250H320', 'part') +
        path('M468 110H486V290H468V262H480V138H468Z', 'item') +
        path('M490 232H578M490 224V240M578 224V240', 'bold') +
        path('M490 232L504 226V238ZM578 232L564 226V238Z', 'shade') +
        path('M640 60C600 70 580 120 580 200C580 280 600 330 640 344Z', 'back') +
        path('M640 84C616 96 602 140 602 200C602 260 616 304 640 318', 'detail') +
        path('M438 130H578M438 270H578', 'hidden') +
        path('M28 400C20 330 36 250 70 236C110 226 130 300 250 320C276 326 284 350 280 400Z', 'back') +
        path('M60 258C90 300 150 336 240 344', 'detail'),
      0,
      [-1, 1],
    ),
    arrow(264, 200, 226, 200, 10),
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
  );
}

function exploded(): string {
  return sheet(
    path('M232 30L408 62V356L232 388Z', 'part'),
    path('M246 46L394 74V344L246 372Z', 'detail'),
    path('M284 132L356 146V262L284 276Z', 'shade'),
    path('M258 184L266 186V230L258 232Z', 'shade'),
    path('M304 320A16 13 0 1 0 336 316A16 13 0 1 0 304 320', 'back'),
    place(118, 204, rockers(), 0, 1.2),
    place(
      532,
      204,
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
      [50, 148],
      [186, 148],
      [50, 260],
      [186, 260],
    ].map(([x = 0, y = 0]) => crossHead(x, y, 9)),
    path('M60 148L482 154M60 260L482 254', 'hidden'),
    arrow(206, 204, 268, 204, 18),
    arrow(464, 204, 408, 204, 18),
  );
}

/** The feed from the fuse box behind the left kick panel, over the pedals, to the opening; the earth on the tunnel. */
function wiring(): string {
  return sheet(
    closer(0, 118, 1.45, wicketDash(path(dashPanel, 'shade'))),
    box(20, 176, 84, 110, 'part', 6),
    path('M32 194H92M32 210H92M32 226H92M32 242H92', 'detail'),
    place(96, 262, smallPlug(0, 0, 180)),
    box(120, 226, 18, 30, 'item', 3),
    box(146, 226, 18, 30, 'item', 3),
    path('M125 234H133M151 234H159', 'detail'),
    cable('M118 262C200 266 250 240 330 224C380 216 420 200 440 212'),
    cable('M330 224C360 250 376 300 372 318'),
    place(452, 220, smallPlug(0, 0, 30)),
    hexHead(372, 326, 13),
    path('M352 344H392', 'bold'),
  );
}

/** The opening of the dash, and below it the dash panel tipped forward, its back up: plug and socket face each other. */
function plugIn(): string {
  return sheet(
    closer(...CENTRE, wicketDash(path(dashPanel, 'shade'))),
    path('M150 268H488L530 394H108Z', 'part'),
    path('M168 280H470L502 382H136Z', 'detail'),
    path('M212 296H426L440 370H198Z', 'item'),
    path('M232 308H406L416 358H222Z', 'part'),
    box(284, 318, 70, 32, 'shade', 4),
    box(292, 310, 54, 14, 'item', 2),
    cable('M196 160C250 176 312 160 318 210'),
    place(318, 234, smallPlug(0, 0, 90), 0, 1.7),
    arrow(318, 256, 318, 304, 14),
  );
}

/** The alarm lamp and the dash panel in section, the seats to the right: out to the front, or in from there until the collar lies flat. */
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
    place(
      640,
      0,
      path('M346 30H640V370H346Z', 'back') +
        path('M420 30V370M346 60H420M346 340H420', 'detail') +
        box(320, 30, 26, 126, 'part') +
        box(320, 244, 26, 126, 'part') +
        hatch(320, 30, 26, 126, 9) +
        hatch(320, 244, 26, 126, 9) +
        path('M320 30C280 30 260 20 240 0M320 370C280 370 250 380 240 400', 'bold') +
        lamp,
      0,
      [-1, 1],
    ),
    out ? arrow(160, 200, 236, 200, 20) : arrow(480, 200, 380, 200, 20),
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
  'plug-in': plugIn(),
  'alarm-lamp-out': alarmLamp(true),
  'alarm-lamp-in': alarmLamp(false),
};
