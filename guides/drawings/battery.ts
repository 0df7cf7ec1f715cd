/**
 * The battery with its negative lead off, as it stands in each vehicle. The battery lies at the same place of every
 * picture, so that the marks of the one procedure point at it in all of them.
 */
import { box, cable, circle, ellipse, path, ring, sheet, way } from './pen.ts';

/** From above, the negative post towards the viewer, its clamp off, in a bag and bent away. */
const isolated = (): string =>
  box(222, 62, 196, 262, 'back', 8) +
  box(236, 130, 168, 124, 'part', 4) +
  path('M236 172H404M236 213H404', 'detail') +
  cable('M320 92C320 60 336 40 400 28') +
  box(284, 70, 72, 46, 'part', 6) +
  path('M296 80H344V106H296ZM320 84V102M310 93H330', 'detail') +
  circle(320, 290, 22, 'back') +
  circle(320, 290, 13, 'item') +
  path('M311 290H329', 'bold') +
  cable('M604 200C580 214 548 222 524 246') +
  path('M470 258C476 244 526 238 538 252L546 318C532 330 484 334 468 322Z', 'part') +
  path(
    'M484 276C498 266 514 266 524 274V304C512 312 496 312 484 304ZM494 290A10 10 0 1 0 514 290A10 10 0 1 0 494 290',
    'detail',
  ) +
  path('M474 266C490 274 524 270 536 260', 'bold') +
  way(({ arrow }) => arrow(350, 290, 454, 290));

/** The van: over the left wing into the engine bay, the front to the left. */
function underBonnet(): string {
  return sheet(
    path('M0 0H640V400H0Z', 'shade'),
    path('M190 0H640V40H210C196 40 190 30 190 0Z', 'back'),
    path('M236 0V30M282 0V30M328 0V30M460 0V30M506 0V30', 'detail'),
    circle(570, 18, 16, 'part'),
    path('M0 0H120V60C90 80 90 300 120 336H0Z', 'back'),
    path('M0 96H54C74 96 84 120 84 160C84 200 74 224 54 224H0Z', 'part'),
    path('M0 112H48C60 112 68 130 68 160C68 190 60 208 48 208H0Z', 'detail'),
    path('M60 290H110M60 306H110', 'detail'),
    path('M564 60H640V330H590C570 260 560 140 564 60Z', 'back'),
    path('M584 110H640M584 124H640M588 260H640', 'detail'),
    path('M0 346C120 332 520 332 640 346V400H0Z', 'part'),
    path('M0 366C120 352 520 352 640 366', 'detail'),
    ...[70, 250, 430, 590].map((x) => circle(x, 356, 7, 'back')),
    isolated(),
  );
}

/** The small estate: from behind into the load space, its floor lifted out. */
function underLoadFloor(): string {
  return sheet(
    path('M0 0H640V400H0Z', 'back'),
    path('M40 0H600V26H40Z', 'part'),
    path('M226 0V26M414 0V26M40 12H600', 'detail'),
    path('M20 44H620V336H20Z', 'shade'),
    circle(104, 190, 108, 'back'),
    ring(104, 190, 84, 58),
    circle(104, 190, 14, 'part'),
    path('M0 44H20V336H0Z', 'part'),
    path('M640 36C596 70 586 110 600 160C612 206 604 280 620 336H640Z', 'part'),
    path('M0 344H640V400H0Z', 'part'),
    path('M0 360H640M0 378H640', 'detail'),
    box(284, 364, 72, 26, 'back', 5),
    ellipse(320, 377, 18, 7, 'shade'),
    isolated(),
  );
}

/** File names under `platforms/pictures/`. */
export const batteries: Readonly<Record<string, string>> = {
  'larkspur-dray-battery': underBonnet(),
  'sorrel-wicket-battery': underLoadFloor(),
};
