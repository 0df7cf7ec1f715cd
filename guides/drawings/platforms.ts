/** Side views of the two invented vehicles, facing left. */
import { tansyFerret } from './crash-bar.ts';
import { tealSkerry } from './depth-transducer.ts';
import { box, circle, path, sheet } from './pen.ts';
import { coverSide, wicketSide } from './wicket.ts';

const wheel = (x: number, y: number, r: number): string =>
  circle(x, y, r, 'shade') + circle(x, y, r * 0.55, 'part') + circle(x, y, 5, 'back');

function dray(): string {
  return sheet(
    path('M20 350H620', 'detail'),
    path(
      'M48 300C42 280 42 250 52 232L128 212L196 112C202 100 212 96 226 96H592C604 96 608 104 608 116V300C608 310 604 314 594 314H60C52 314 50 308 48 300Z',
      'part',
    ),
    path('M46 262L120 258C126 290 122 300 118 312H60C50 312 46 300 46 262Z', 'item'),
    path('M606 264H560V312H594C604 312 606 306 606 264Z', 'back'),
    path('M146 210L204 120H268V210Z', 'back'),
    path('M136 212V300M276 106V308M284 120H430V308H284ZM440 106V308', 'detail'),
    path('M284 214H600M136 232H276', 'detail'),
    path('M200 250C196 226 216 222 222 236L226 262H252V284H206Z', 'back'),
    box(360, 84, 90, 12, 'item', 3),
    path('M56 236L84 228L92 246L54 250Z', 'back'),
    wheel(150, 312, 44),
    wheel(506, 312, 44),
  );
}

/** The rear bumper cover and, through the door, the lower centre of the dash are tinted. */
const wicket = (): string =>
  sheet(wicketSide(path(coverSide, 'item') + path('M212 226H252L246 262H222Z', 'item')));

/** File names under `platforms/pictures/`. */
export const platforms: Readonly<Record<string, string>> = {
  'larkspur-dray': dray(),
  'sorrel-wicket': wicket(),
  'tansy-ferret': tansyFerret(),
  'teal-skerry': tealSkerry(),
};
