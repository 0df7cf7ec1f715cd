/** The drawings of the depth transducer guide. Marks in `guide.md` are fractions of these 640 × 400 boxes. */
import { accentLine, arrow, box, cable, centreLine, circle, ellipse, path, place, sheet } from './pen.ts';

/** The opened locker from above, the bow up: where the transducer stands. */
function locker(): string {
  return sheet(
    path('M60 20H580V380H60Z', 'back'),
    path('M150 60H490V340H150Z', 'shade'),
    path('M150 60L172 82H468L490 60M172 82V318L150 340M468 82V318L490 340M172 318H468', 'detail'),
    centreLine(250, 30, 250, 370),
    path('M294 82V318M312 82V318', 'hidden'),
    circle(370, 200, 44, 'item'),
    circle(370, 200, 20, 'part'),
    cable('M370 200C420 190 440 150 452 100'),
    circle(164, 72, 8, 'part'),
    circle(476, 72, 8, 'part'),
    circle(164, 328, 8, 'part'),
    circle(476, 328, 8, 'part'),
    arrow(110, 250, 110, 130),
  );
}

/** The hull and the housing in section, seen from aft: flange outside, nut inside. */
function section(): string {
  return sheet(
    path('M20 236L620 206V246L20 276Z', 'part'),
    path('M20 250L620 220M20 262L620 232', 'detail'),
    path('M268 276L376 270L384 288C384 298 262 304 262 294Z', 'item'),
    path('M290 120H354L356 272L292 276Z', 'item'),
    path('M290 150H354M290 166H354M290 182H354', 'detail'),
    path('M252 196L392 189V222L252 229Z', 'back'),
    path('M268 276L376 270V263L268 269Z', 'shade'),
    path('M252 229L392 222V215L252 222Z', 'shade'),
    cable('M322 120C322 80 380 70 470 72H600'),
    centreLine(322, 40, 326, 350),
    path('M20 340C80 330 140 350 200 340S320 330 380 340S500 350 620 340', 'detail'),
  );
}

/** The Teal Skerry from its port side, the bow to the left: its platform's picture. */
export function tealSkerry(): string {
  return sheet(
    path('M20 300C80 292 140 308 200 300S320 292 380 300S500 308 620 300', 'detail'),
    path('M40 190C120 206 520 206 590 196L578 300C520 344 240 350 170 332C110 314 60 250 40 190Z', 'part'),
    path('M52 206C150 222 500 222 588 212', 'detail'),
    path('M236 200L262 128H392L408 202Z', 'back'),
    path('M274 140H322V188H258ZM334 140H384L394 188H334Z', 'shade'),
    path('M590 196L610 196L604 268H582Z', 'back'),
    path('M600 268L606 330L590 336L586 268', 'detail'),
    ellipse(330, 342, 34, 8, 'item'),
    path('M300 232H420V262H300Z', 'item'),
    path('M392 120V70M384 70H400', 'bold'),
  );
}

/** The hole in the hull in section: the cut edge all round takes the resin. */
function edge(): string {
  return sheet(
    box(40, 150, 200, 100, 'back'),
    box(400, 150, 200, 100, 'back'),
    path('M240 150H400M240 250H400', 'hidden'),
    ...[170, 190, 210, 230].map((y) => path(`M40 ${y}H234M406 ${y}H600`, 'detail')),
    accentLine('M243 150V250', false, 9),
    accentLine('M397 176V250', false, 9),
    place(
      386,
      176,
      path('M-4 -6L24 -16L32 0L24 16L-4 14C-10 8 -10 2 -4 -6Z', 'item') +
        box(26, -18, 28, 36, 'part', 2) +
        path('M54 -10C110 -20 150 -16 190 -8V8C150 16 110 20 54 10Z', 'part'),
      -52,
    ),
    arrow(320, 210, 372, 196, 12),
    path('M60 300H180M460 300H580', 'detail'),
  );
}

/** File names under `depth-transducer/pictures/`. */
export const depthTransducer: Readonly<Record<string, string>> = {
  locker: locker(),
  section: section(),
  edge: edge(),
};
