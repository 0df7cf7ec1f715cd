/**
 * The Sorrel Wicket as its drawings show it: from the left side, from behind, and its dash from the seats. Each closer
 * picture is a part of one of these 640 × 400 views, so that a corner looks the same wherever it is shown.
 */
import { both, box, circle, ellipse, path, ring } from './pen.ts';

const rearWheels = both(
  box(108, 318, 60, 66, 'shade', 12) + path('M120 330V372M132 326V376M144 326V376', 'detail'),
);

/** The outer skin of the rear bumper cover, from behind. */
export const coverSkin =
  'M92 240H548C562 240 570 252 570 272V306C570 330 548 342 516 344H124C92 342 70 330 70 306V272C70 252 78 240 92 240Z';

/** The rear bumper cover from behind, outside up. */
export const rearCover = (): string =>
  path(coverSkin, 'part') +
  path('M74 286C180 292 460 292 566 286', 'detail') +
  path('M152 318H488L476 344H164Z', 'back') +
  both(box(100, 300, 36, 12, 'shade', 3));

const plate =
  box(248, 186, 144, 44, 'back', 4) + box(262, 194, 116, 28, 'part', 2) + path('M276 208H364', 'detail');

/** The left tail lamp, from behind. */
export const tailLampSkin = 'M118 150C106 168 100 190 100 214V238H156V150C146 144 128 144 118 150Z';

export const lampLines = path('M103 184H156M101 212H156M122 148V238', 'detail');

const closedTailgate =
  path('M178 46H462L486 148V240H154V148Z', 'part') +
  path('M192 58H448L470 140H170Z', 'shade') +
  path('M206 132L232 68M236 132L262 68', 'detail') +
  plate +
  box(290, 164, 60, 12, 'shade', 5);

const openTailgate =
  path('M178 46H462L486 148V240H154V148Z', 'shade') +
  path('M188 56H452L474 150V232H166V150Z', 'detail') +
  path('M212 84H428L440 190H200Z', 'back') +
  path('M264 84L258 190M376 84L382 190M216 100H424', 'detail') +
  path('M200 190H440L474 232H166Z', 'part');

/** What of the car stands open or is off. */
interface Rear {
  readonly open?: boolean;
  /** Without it the lamp's opening shows on that side. */
  readonly leftLamp?: boolean;
  readonly cover?: boolean;
}

/** The car from behind. */
export function wicketRear({ open = false, leftLamp = true, cover = true }: Rear = {}): string {
  const lamp = path(tailLampSkin, 'back') + lampLines;
  return (
    path('M20 384H620', 'detail') +
    rearWheels +
    both(path('M132 120H100C90 120 90 144 100 146H126Z', 'back')) +
    path(
      'M196 26H444C470 26 484 40 494 66L524 150C540 168 548 190 548 216V300H92V216C92 190 100 168 116 150L146 66C156 40 170 26 196 26Z',
      'part',
    ) +
    (open ? openTailgate : closedTailgate) +
    (leftLamp
      ? both(lamp)
      : path(tailLampSkin, 'shade') +
        path('M484 150C494 144 512 144 522 150C534 168 540 190 540 214V238H484Z', 'back')) +
    (cover
      ? rearCover()
      : both(path('M92 240H200V300H112Z', 'back')) +
        box(112, 256, 416, 40, 'back', 4) +
        both(box(150, 246, 30, 60, 'shade', 3)))
  );
}

const wheel = (x: number): string =>
  circle(x, 312, 44, 'shade') +
  circle(x, 312, 29, 'part') +
  circle(x, 312, 6, 'back') +
  path(
    [0, 72, 144, 216, 288]
      .map((turn) => {
        const [dx, dy] = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)];
        return `M${Math.round(x + 8 * dx)} ${Math.round(312 + 8 * dy)}L${Math.round(x + 27 * dx)} ${Math.round(312 + 27 * dy)}`;
      })
      .join(''),
    'detail',
  );

/** The rear bumper cover from the left side, behind the wheel arch. */
export const coverSide =
  'M545 276C549 288 550 302 547 320H582C594 320 600 308 600 286V254C600 250 597 248 593 248H536C540 256 543 266 545 276Z';

/** The left tail lamp from the side. */
export const lampSide = 'M562 206H580C588 214 594 228 597 248H556C556 232 558 218 562 206Z';

/**
 * The car from its left side, facing left.
 *
 * @param work draws over the body what the picture is about
 */
export const wicketSide = (work = ''): string =>
  path('M20 356H620', 'detail') +
  path(
    'M44 296C38 274 42 246 58 238L178 216L256 144C264 136 274 132 288 132H492C510 132 522 140 530 156L560 204C586 216 598 246 598 280V300C598 312 592 318 582 318H60C50 318 46 310 44 296Z',
    'part',
  ) +
  path(
    'M208 214L266 156H348V214ZM362 156H438V214H362ZM452 156H492C500 156 504 160 508 166L530 214H452Z',
    'back',
  ) +
  path('M198 222H556M355 150V308M200 222L196 308H430C432 284 438 268 448 258V222', 'detail') +
  path('M318 238H344M406 238H432', 'bold') +
  path('M214 216C200 206 204 192 220 194L232 206Z', 'back') +
  path('M60 242L96 234L100 252L54 258Z', 'back') +
  path('M44 284C60 290 80 290 92 286M56 306H96', 'detail') +
  path('M92 318A54 54 0 0 1 200 318ZM440 318A54 54 0 0 1 548 318Z', 'shade') +
  path(coverSide, 'part') +
  path('M551 290H598', 'detail') +
  path(lampSide, 'back') +
  path('M558 226H590', 'detail') +
  box(462, 232, 26, 22, 'part', 4) +
  work +
  wheel(146) +
  wheel(494);

const steeringWheel =
  path('M98 160L136 166V184L100 190ZM234 160L196 166V184L232 190ZM156 248L158 204H174L176 248Z', 'part') +
  ring(166, 176, 84, 70) +
  ellipse(166, 178, 34, 30, 'back');

/** The lower centre panel of the dash, which the switch panel goes into. */
export const dashPanel = 'M262 226H378L370 312H270Z';

/** The dash from the seats. */
export const wicketDash = (work = ''): string =>
  path('M8 60C150 8 490 8 632 60', 'bold') +
  path(
    'M8 96C60 60 90 50 120 50H220C240 50 246 62 262 62H560C596 62 616 80 632 96V210C600 226 560 226 400 222H236C120 226 40 226 8 210Z',
    'part',
  ) +
  path('M92 96C110 66 222 66 240 96V140H92Z', 'back') +
  circle(136, 112, 20, 'part') +
  circle(196, 112, 20, 'part') +
  path('M250 74H390L382 350H258Z', 'back') +
  [264, 326]
    .map((x) => box(x, 84, 52, 40, 'shade', 4) + path(`M${x} 97H${x + 52}M${x} 110H${x + 52}`, 'detail'))
    .join('') +
  box(270, 134, 100, 36, 'part', 4) +
  box(288, 142, 64, 20, 'shade', 2) +
  [284, 320, 356].map((x) => circle(x, 196, 14, 'part') + path(`M${x} 184V194`, 'detail')).join('') +
  box(420, 128, 180, 76, 'detail', 8) +
  box(496, 140, 30, 10, 'shade', 4) +
  box(560, 76, 52, 34, 'shade', 4) +
  box(22, 76, 52, 34, 'shade', 4) +
  path('M8 210V392M632 210V392M8 380H258M382 380H632', 'detail') +
  [84, 136, 188].map((x) => path(`M${x + 12} 270V330`, 'detail') + box(x, 330, 26, 40, 'shade', 4)).join('') +
  path('M258 350C250 366 246 380 244 396H396C394 380 390 366 382 350Z', 'back') +
  work +
  path('M314 386C316 366 314 356 314 344H326C326 356 324 366 326 386Z', 'part') +
  circle(320, 336, 14, 'part') +
  steeringWheel;
