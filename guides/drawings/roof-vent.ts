/** The drawings of the roof vent guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { gripHand, hexHead, locator, palmHand, smallPlug, tape, torqueWrench } from './hardware.ts';
import { accentLine, arrow, box, cable, centreLine, circle, path, place, sheet, turnArrow } from './pen.ts';

const ROOF = locator(602, 316, 0.5, 0.58);

function roofPlan(): string {
  const bow = (x: number): string => path(`M${x} 70V330M${x + 22} 70V330`, 'hidden') + spots(x + 11);
  const spots = (x: number): string =>
    [90, 130, 170, 230, 270, 310].map((y) => circle(x, y, 3, 'shade')).join('');
  return sheet(
    path(
      'M60 90C50 160 50 240 60 310L110 336H560C580 336 592 326 592 306V94C592 74 580 64 560 64H110Z',
      'part',
    ),
    path('M60 90L110 110V290L60 310', 'detail'),
    bow(130),
    bow(220),
    bow(412),
    bow(520),
    centreLine(30, 200, 620, 200),
    centreLine(327, 40, 327, 360),
    accentLine(
      'M272 128H382C390 128 398 136 398 144V256C398 264 390 272 382 272H272C264 272 256 264 256 256V144C256 136 264 128 272 128Z',
      false,
      4,
    ),
    arrow(60, 372, 20, 372, 12),
    ROOF,
  );
}

function sheets(): string {
  const page = (x: number, y: number): string => box(x, y, 170, 130, 'part');
  return sheet(
    box(20, 30, 600, 340, 'back', 12),
    tape(60, 50, 520, 300),
    page(150, 70),
    page(320, 70),
    page(150, 200),
    page(320, 200),
    ...[
      [320, 70],
      [320, 200],
      [320, 330],
      [150, 200],
      [490, 200],
    ].map(
      ([x = 0, y = 0]) =>
        circle(x, y, 8, 'detail') + path(`M${x - 14} ${y}H${x + 14}M${x} ${y - 14}V${y + 14}`, 'detail'),
    ),
    accentLine(
      'M226 100H414A24 24 0 0 1 438 124V276A24 24 0 0 1 414 300H226A24 24 0 0 1 202 276V124A24 24 0 0 1 226 100Z',
      false,
      4,
    ),
    gripHand(122, 264, 90),
    gripHand(518, 264, -90, true),
  );
}

function saw(): string {
  return sheet(
    box(20, 206, 340, 10, 'back'),
    box(368, 206, 60, 10, 'item'),
    box(428, 206, 0.1, 10, 'detail'),
    box(368, 206, 160, 10, 'item'),
    box(540, 206, 80, 10, 'back'),
    path('M60 202H340', 'bold'),
    path('M364 190V262L358 256V190Z', 'shade'),
    path('M358 262L352 256M358 250L352 244M358 238L352 232', 'detail'),
    path('M250 190H400V202H250Z', 'part'),
    path(
      'M270 190V120C270 96 250 96 240 90C210 70 230 40 262 44L360 54C390 58 396 80 390 110L384 190Z',
      'part',
    ),
    path('M282 72C300 64 330 66 344 74C352 84 344 96 330 96H294C278 94 276 80 282 72Z', 'shade'),
    path('M276 130H388M276 150H386M276 170H385', 'detail'),
    gripHand(300, 70, 176),
    palmHand(436, 222, 0, true),
    palmHand(490, 222),
    arrow(420, 150, 500, 150, 18),
    ROOF,
  );
}

function feed(): string {
  return sheet(
    path(
      'M48 330C42 310 42 270 52 252L128 222L196 112C202 100 212 96 226 96H592C604 96 608 104 608 116V330C608 340 604 344 594 344H60C52 344 50 338 48 330Z',
      'part',
    ),
    path('M146 220L204 120H268V220Z', 'back'),
    path('M276 106V338M440 106V338', 'detail'),
    box(364, 78, 92, 18, 'part', 4),
    path('M372 96V104H448V96', 'detail'),
    box(122, 236, 60, 44, 'shade', 4),
    path('M132 248H172M132 258H172M132 268H172', 'detail'),
    cable('M166 236C176 214 190 200 202 176C216 150 226 122 244 116H396'),
    ...[0, 1, 2, 3, 4].map((i) => box(254 + i * 30, 110, 8, 12, 'part', 2)),
    place(400, 116, smallPlug(0, 0, 0)),
    place(158, 240, smallPlug(0, 0, 100)),
    circle(150, 344, 44, 'shade'),
    circle(150, 344, 24, 'part'),
    circle(506, 344, 44, 'shade'),
    circle(506, 344, 24, 'part'),
  );
}

function section(): string {
  return sheet(
    path('M60 176H236V196H60Z', 'back'),
    path('M80 158C72 166 68 172 72 176H232C250 176 248 158 232 158Z', 'shade'),
    path('M90 118H380V50H450V300H400V158H90C80 150 80 126 90 118Z', 'part'),
    path('M104 198H352V226H104Z', 'item'),
    path('M60 150V230', 'hidden'),
    accentLine('M239 174V198', false, 8),
    path('M282 120V226', 'hidden'),
    path('M298 120V226', 'hidden'),
    box(272, 227, 36, 6, 'item', 2),
    box(278, 233, 24, 18, 'item', 2),
    path('M286 233V251M294 233V251', 'detail'),
    arrow(290, 350, 290, 274, 18),
    arrow(200, 60, 200, 110, 18),
    ROOF,
  );
}

function frame(): string {
  const xs = [200, 320, 440];
  const heads = [
    ...xs.flatMap((x) => [hexHead(x, 88, 15), hexHead(x, 328, 15)]),
    ...[148, 208, 268].flatMap((y) => [hexHead(178, y, 15), hexHead(462, y, 15)]),
  ];
  return sheet(
    box(150, 58, 340, 300, 'part', 22),
    box(206, 116, 228, 184, 'back', 14),
    ...heads,
    place(200, 88, torqueWrench(), 196),
    turnArrow(200, 88, 34, 250, 400),
    ROOF,
  );
}

/** The roof in section from the side: a hose above, the lance that waxes over the bow below. */
function leakTest(): string {
  const drop = (x: number, y: number): string =>
    path(`M${x} ${y}C${x - 6} ${y + 10} ${x + 6} ${y + 10} ${x} ${y}`, 'detail');
  return sheet(
    path('M20 150H330V166H20Z', 'back'),
    path('M20 140C20 122 40 122 60 122H320C340 122 340 140 340 150H20Z', 'part'),
    path('M300 150H620V166H300Z', 'back'),
    path('M40 166H250V196H40Z', 'item'),
    path('M400 166V232C400 244 408 250 420 250H500C512 250 520 244 520 232V166H504V226H416V166Z', 'part'),
    path('M200 60C300 30 420 30 470 66', 'bold'),
    path('M466 58L492 72L484 88L458 74Z', 'item'),
    ...[
      [486, 96],
      [466, 104],
      [444, 116],
      [500, 112],
      [420, 128],
    ].map(([x = 0, y = 0]) => drop(x, y)),
    path('M120 370C220 360 300 330 340 250C350 226 372 206 384 200', 'bold'),
    circle(388, 198, 7, 'item'),
    ...[-70, -35, 0, 35].map((turn) => place(388, 198, path('M12 0H34', 'detail'), turn)),
    accentLine('M400 170V232C400 246 410 254 424 254H496', false, 5),
    box(60, 352, 70, 34, 'item', 8),
    ROOF,
  );
}

/** File names under the guide's `pictures/`. */
export const roofVent: Readonly<Record<string, string>> = {
  'roof-plan': roofPlan(),
  sheets: sheets(),
  saw: saw(),
  feed: feed(),
  section: section(),
  frame: frame(),
  'leak-test': leakTest(),
};
