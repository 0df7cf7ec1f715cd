/**
 * The Tansy Ferret as its drawings show it: from the left side, facing left, and its engine from the front. Closer
 * pictures are parts of these 640 × 400 views.
 */
import { both, box, circle, ellipse, path, place, ring, rod } from './pen.ts';

const spokes = (x: number, y: number, r: number): string =>
  path(
    Array.from({ length: 10 }, (_, i) => {
      const angle = (i * Math.PI) / 5;
      const [dx, dy] = [Math.cos(angle), Math.sin(angle)];
      return `M${Math.round(x + 12 * dx)} ${Math.round(y + 12 * dy)}L${Math.round(x + r * dx)} ${Math.round(y + r * dy)}`;
    }).join(''),
    'detail',
  );

const wheel = (x: number): string =>
  ring(x, 300, 74, 56, 'shade') +
  ring(x, 300, 56, 48) +
  spokes(x, 300, 48) +
  ring(x, 300, 30, 22, 'back') +
  circle(x, 300, 11, 'part');

/** A finned cylinder from the side, its foot at the origin, leaning by so many degrees. */
const cylinder = (x: number, y: number, turn: number): string =>
  place(
    x,
    y,
    path('M-26 0V-66H26V0Z', 'part') +
      [10, 20, 30, 40, 50].map((up) => box(-33, -up - 3, 66, 6, 'back', 3)).join('') +
      path('M-22 -66L-16 -84H16L22 -66Z', 'part'),
    turn,
  );

const engine =
  cylinder(312, 232, -16) +
  cylinder(362, 232, 16) +
  path(
    'M272 240C266 220 280 214 296 216H384C406 216 424 236 424 262C424 296 410 316 384 318H296C274 316 268 300 270 280Z',
    'part',
  ) +
  circle(318, 268, 34, 'back') +
  circle(318, 268, 24, 'part') +
  circle(384, 268, 22, 'back') +
  path(
    'M296 168C262 170 252 198 258 232C262 282 256 334 290 336H430V322H298C278 320 276 272 272 230C268 204 276 184 300 182Z',
    'back',
  ) +
  path('M420 316H560C572 318 576 328 572 340H420Z', 'back');

/** The frame's tube ahead of the engine, from the steering head down to under the engine. */
export const downTube = (): string => rod(204, 120, 250, 326, 13);

/** A lug on the tube, its open end to the front. */
export const lugSide = (x: number, y: number): string => box(x - 14, y - 10, 30, 20, 'part', 3);

/** From the left side, facing left. */
export const ferretSide = (lugs = lugSide(218, 184) + lugSide(242, 284)): string =>
  path('M20 376H620', 'detail') +
  wheel(104) +
  wheel(524) +
  path('M30 286A76 76 0 0 1 150 236L144 246A66 66 0 0 0 42 288Z', 'part') +
  rod(104, 300, 196, 92, 12) +
  rod(112, 300, 204, 92, 12) +
  circle(106, 300, 9, 'back') +
  path('M150 116C150 98 166 92 184 94L188 140C166 142 150 134 150 116Z', 'part') +
  path('M156 104C152 110 152 124 156 130', 'detail') +
  path('M192 92C204 66 226 60 262 64V74C232 72 216 76 206 96Z', 'part') +
  path('M232 61H266V77H234Z', 'shade') +
  path('M184 76L158 56M160 60C150 58 146 46 156 42C168 42 172 52 166 60', 'bold') +
  rod(192, 86, 212, 142, 16) +
  rod(212, 130, 400, 160, 11) +
  rod(400, 156, 560, 140, 9) +
  rod(404, 160, 432, 320, 11) +
  rod(246, 326, 436, 326, 10) +
  engine +
  downTube() +
  lugs +
  path('M226 126C262 72 346 78 384 124L400 156C380 168 300 168 252 156C232 152 222 142 226 126Z', 'back') +
  ellipse(300, 92, 14, 5, 'part') +
  path('M388 142C430 150 520 128 572 120L584 138C540 152 470 176 420 180C400 176 390 160 388 142Z', 'shade') +
  path('M584 134H602V150H586Z', 'back') +
  path('M470 232A80 80 0 0 1 596 266L586 270A70 70 0 0 0 478 240Z', 'part') +
  rod(430, 296, 524, 300, 13) +
  rod(436, 190, 484, 296, 9) +
  path('M448 214L462 208M454 228L468 222M460 242L474 236M466 256L480 250', 'bold') +
  box(414, 306, 36, 8, 'shade', 3);

/** The engine between the tubes of the frame from the front, the front wheel and the fork only told of. */
export const ferretFront = (): string =>
  path('M120 0H520V26C440 40 200 40 120 26Z', 'back') +
  both(
    path('M196 60H300V150H196Z', 'part') +
      [74, 90, 106, 122, 138].map((y) => box(186, y - 4, 118, 8, 'back', 4)).join('') +
      path('M216 60L226 34H290L298 60Z', 'part'),
  ) +
  path(
    'M170 160H470C488 160 496 176 496 206V330C496 350 480 362 456 362H184C160 362 144 350 144 330V206C144 176 152 160 170 160Z',
    'part',
  ) +
  circle(320, 320, 26, 'back') +
  path('M150 240H490M176 176H464', 'detail') +
  both(
    path(
      'M238 104C226 140 214 200 216 260C218 310 220 350 214 400H236C242 350 240 310 238 260C236 200 244 150 256 112Z',
      'back',
    ) +
      rod(276, 20, 128, 392, 18) +
      path('M262 0V400M280 0V400', 'hidden'),
  ) +
  path('M290 400V120C290 96 350 96 350 120V400', 'hidden');
