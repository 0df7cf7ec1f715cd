/** The drawings of the depth transducer guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { accentLine, arrow, box, cable, centreLine, circle, closer, path, place, sheet } from './pen.ts';
import { bilge, housingSide, skerryDeck, skerrySection, skerrySide, tie } from './skerry.ts';

/** The open locker in the cockpit from above, the bow up: where the transducer stands. */
function locker(): string {
  return sheet(
    skerryDeck(),
    path('M184 82H456V318H184Z', 'shade'),
    path('M200 98H440V302H200Z', 'detail'),
    path('M320 40V336', 'hidden'),
    centreLine(320, 4, 320, 396),
    path('M338 98V302M354 98V302M286 98V302M302 98V302', 'detail'),
    circle(398, 206, 34, 'item'),
    circle(398, 206, 15, 'part'),
    cable('M398 206C430 190 428 150 420 98'),
    ...[
      [196, 94],
      [444, 94],
      [196, 306],
      [444, 306],
    ].map(([x = 0, y = 0]) => circle(x, y, 6, 'part')),
    arrow(58, 250, 58, 130),
  );
}

/** The bottom and the housing in section, seen from aft: flange outside, nut inside; the locker's opening above. */
function section(): string {
  return sheet(
    skerrySection(),
    place(
      366,
      302,
      path('M-58 26L50 4L56 20C56 30 -62 54 -62 44Z', 'item') +
        path('M-33 -128H33V8L-33 22Z', 'item') +
        path('M-33 -106H33M-33 -92H33M-33 -78H33M-33 -64H33', 'detail') +
        path('M-70 -42L66 -68V-36L-70 -10Z', 'back') +
        path('M-70 -10L66 -36V-24L-70 2Z', 'shade') +
        path('M-58 14L50 -8V5L-58 27Z', 'shade'),
    ),
    cable('M366 176C366 130 400 124 440 128H466'),
    centreLine(366, 60, 366, 394),
  );
}

/** The Teal Skerry from its port side, the bow to the left, on its cradle: its platform's picture. */
export const tealSkerry = (): string => sheet(skerrySide(bilge()));

/** Through the port side: from the housing forward, tied above the bilge, up to the display; the feed from the panel. */
function cableWay(): string {
  const cut =
    'M190 206C280 218 420 222 560 214L558 302C500 314 420 320 330 320C270 320 220 316 186 306C180 270 196 240 190 206Z';
  return sheet(
    closer(
      176,
      108,
      1.6,
      skerrySide(
        path(cut, 'shade') +
          path('M356 250H560', 'detail') +
          path(
            'M186 306C220 316 270 320 330 320C420 320 500 314 558 302L559 312C500 324 420 330 330 330C270 330 220 326 184 316Z',
            'part',
          ) +
          path('M200 300C300 308 420 306 540 300', 'hidden'),
      ) + path('M196 176L204 140H236L240 206H192Z', 'back'),
    ),
    cable('M440 316C400 290 330 286 240 286C150 286 96 280 84 230C78 200 84 170 84 150'),
    ...[150, 220, 290, 360].map((x) => tie(x, x < 200 ? 283 : 287)),
    housingSide(440, 336),
    place(
      36,
      70,
      box(0, 0, 84, 58, 'item', 6) +
        box(10, 8, 64, 36, 'part', 3) +
        path('M18 34L32 22L44 30L66 16', 'detail'),
    ),
    box(74, 130, 22, 20, 'item', 3),
    box(188, 148, 96, 66, 'part', 4),
    path('M200 166H272', 'bold'),
    circle(214, 166, 5, 'item'),
    circle(258, 166, 5, 'part'),
    accentLine('M214 166C214 190 180 200 150 196', false, 4),
    box(130, 186, 36, 20, 'item', 3),
    path('M138 196H158', 'detail'),
    accentLine('M130 196C112 190 106 160 102 136', false, 4),
  );
}

/** The hole in the hull in section: the cut edge all round takes the resin. */
function edge(): string {
  return sheet(
    closer(268, 244, 3.2, skerrySection()),
    '<path d="M230 176L397 141V201L230 235Z" fill="#fff"/>',
    path('M230 181L397 147M230 228L397 194', 'hidden'),
    accentLine('M231 183V226', false, 9),
    accentLine('M396 166V194', false, 9),
    place(
      386,
      158,
      path('M-4 -6L24 -16L32 0L24 16L-4 14C-10 8 -10 2 -4 -6Z', 'item') +
        box(26, -18, 28, 36, 'part', 2) +
        path('M54 -10C110 -20 150 -16 190 -8V8C150 16 110 20 54 10Z', 'part'),
      -60,
    ),
    arrow(304, 206, 372, 186, 12),
    centreLine(313, 70, 313, 330),
  );
}

/** File names under `depth-transducer/pictures/`. */
export const depthTransducer: Readonly<Record<string, string>> = {
  locker: locker(),
  section: section(),
  edge: edge(),
  cable: cableWay(),
};
