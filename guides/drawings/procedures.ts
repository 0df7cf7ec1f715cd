/** The drawings of the shared procedures. Marks in the procedures are fractions of these 640 × 400 boxes. */
import {
  boltSide,
  clipHead,
  firTree,
  gripHand,
  hexHead,
  lever,
  lobeHead,
  locator,
  palmHand,
  smallPlug,
} from './hardware.ts';
import { box, cable, circle, ellipse, path, place, sheet, turnArrow, way } from './pen.ts';

/** The negative lead off and bagged. */
function battery(): string {
  return sheet(
    path('M40 60H600M40 372H600', 'detail'),
    box(110, 90, 400, 250, 'back', 10),
    box(130, 200, 360, 120, 'part', 6),
    path('M220 200V320M310 200V320M400 200V320', 'detail'),
    box(160, 110, 76, 60, 'part', 8),
    path('M172 122H224V158H172ZM198 128V152M186 140H210', 'detail'),
    cable('M160 140C120 140 90 120 84 66'),
    circle(403, 146, 26, 'back'),
    circle(403, 146, 15, 'item'),
    path('M393 146H413', 'bold'),
    cable('M600 250C590 190 580 170 566 140'),
    path('M528 70C536 58 592 56 600 70L606 140C590 152 548 154 528 140Z', 'part'),
    path(
      'M540 92C552 84 576 84 586 92V120C574 128 552 128 540 120ZM552 106A11 11 0 1 0 574 106A11 11 0 1 0 552 106',
      'detail',
    ),
    path('M530 140C548 150 590 150 604 140', 'bold'),
    way(({ arrow }) => arrow(436, 140, 512, 116)),
    locator(24, 300, 0.2, 0.08),
  );
}

function handle(): string {
  return sheet(
    box(20, 40, 600, 40, 'back', 4),
    path('M60 80V120M580 80V120', 'hidden'),
    path(
      'M90 120H210C226 120 230 130 240 150C270 220 370 220 400 150C410 130 414 120 430 120H550C566 120 570 136 566 152C540 232 470 276 320 276C170 276 100 232 74 152C70 136 74 120 90 120Z',
      'part',
    ),
    box(112, 132, 72, 70, 'shade', 8),
    box(456, 132, 72, 70, 'shade', 8),
    lobeHead(148, 166, 18),
    lobeHead(492, 166, 18),
    path('M112 206L96 250C96 258 176 258 188 250L184 206Z', 'item'),
    path('M456 206L452 250C464 258 544 258 544 250L528 206Z', 'item'),
    turnArrow(60, 210, 34, 300, 420),
    way(({ arrow }) => arrow(320, 296, 320, 366, 20)),
    locator(586, 306, 0.9, 0.6),
  );
}

function lining(): string {
  return sheet(
    path('M20 70C200 44 420 44 540 78C580 92 596 120 600 180V380', 'bold'),
    path('M20 86C200 60 420 60 530 92C566 104 580 128 584 180V380', 'detail'),
    path(
      'M20 108C160 92 260 96 320 120C380 146 430 190 452 262L436 270C414 206 366 164 312 138C256 114 160 110 20 126Z',
      'item',
    ),
    path('M250 56V118C250 132 276 132 276 118V56', 'bold'),
    circle(388, 84, 6, 'part'),
    place(392, 146, firTree(), 20),
    circle(500, 96, 6, 'part'),
    path('M150 62V92', 'detail'),
    cable('M176 64C176 90 190 104 182 124'),
    place(178, 146, smallPlug(0, 0, 90)),
    palmHand(446, 276),
    way(({ arrow }) => arrow(300, 190, 262, 268, 18)),
    locator(30, 306, 0.9, 0.6),
  );
}

function tailLamp(): string {
  return sheet(
    path('M40 30H360C388 30 396 44 396 66V300L380 372H40Z', 'back'),
    path('M420 40H610V372H420Z', 'part'),
    path('M440 60H590V200H440Z', 'back'),
    path('M388 66V330', 'detail'),
    path('M96 60H340V300H120C100 220 92 140 96 60Z', 'hidden'),
    hexHead(366, 104, 14),
    hexHead(366, 158, 14),
    path('M70 92H312V322H96C76 244 68 170 70 92Z', 'item'),
    path('M92 116H290V196H88M94 216H290V298H108', 'detail'),
    cable('M330 210C372 220 372 240 360 256'),
    place(358, 270, smallPlug(0, 0, 90)),
    way(({ arrow }) => arrow(190, 250, 150, 360, 22)),
    locator(586, 306, 0.1, 0.95),
  );
}

function corner(): string {
  return sheet(
    path('M20 60H470L520 110V150H20Z', 'back'),
    path('M380 66H470L506 106V146H380Z', 'shade'),
    path(
      'M270 150H520C560 160 590 200 592 250V320C590 340 570 350 540 350H240A210 210 0 0 0 270 150Z',
      'part',
    ),
    path('M20 150H270A210 210 0 0 1 240 350', 'detail'),
    path('M258 196H588M248 300H590', 'detail'),
    circle(70, 350, 130, 'back'),
    circle(70, 350, 82, 'part'),
    path('M20 150A236 236 0 0 1 212 372', 'bold'),
    place(435, 118, boltSide(46, 12)),
    way(({ turn }) => turn(435, 104, 34, 300, 180)),
    ...[
      [256, 196],
      [260, 240],
      [250, 286],
    ].map(([x = 0, y = 0]) => lobeHead(x, y, 13)),
    locator(590, 8, 0.1, 0.92),
  );
}

function rearOff(): string {
  const cover =
    'M60 196C80 172 130 164 200 164H440C510 164 560 172 580 196L572 300C556 326 510 334 440 336H200C130 334 84 326 68 300Z';
  return sheet(
    path('M110 14H530L556 96H84Z', 'back'),
    path('M150 26H490L500 70H140Z', 'part'),
    box(120, 92, 400, 34, 'back', 4),
    box(566, 70, 28, 90, 'shade', 4),
    box(46, 70, 28, 90, 'shade', 4),
    path('M64 162L68 190M576 162L572 190', 'hidden'),
    cable('M326 108C324 118 330 124 328 132'),
    path(cover, 'part'),
    path('M84 236H556', 'detail'),
    box(256, 196, 128, 40, 'shade', 4),
    place(328, 146, smallPlug(0, 0, 90)),
    ...[200, 260, 320, 380, 440].map((x) => clipHead(x, 316, 12)),
    gripHand(62, 268, 60),
    gripHand(578, 268, -60, true),
    way(({ arrow }) => arrow(240, 344, 226, 394, 20) + arrow(400, 344, 414, 394, 20)),
  );
}

function eyeCap(): string {
  return sheet(
    path('M20 40H620V360H20Z', 'part'),
    path('M20 90H620M20 320H620', 'detail'),
    circle(400, 200, 76, 'shade'),
    circle(400, 200, 40, 'back'),
    path('M376 200H424M400 176V224', 'detail'),
    path('M340 222C320 240 300 240 290 226', 'bold'),
    circle(240, 206, 74, 'item'),
    ellipse(240, 206, 56, 56, 'item'),
    path('M226 278H254V290H226Z', 'shade'),
    lever(244, 284, 32),
    way(({ turn }) => turn(330, 120, 70, 330, 210)),
    locator(576, 232, 0.8, 0.98),
  );
}

/** File names under `procedures/pictures/`. */
export const procedures: Readonly<Record<string, string>> = {
  battery: battery(),
  handle: handle(),
  lining: lining(),
  'tail-lamp': tailLamp(),
  corner: corner(),
  'rear-off': rearOff(),
  'eye-cap': eyeCap(),
};
