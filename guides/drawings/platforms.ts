/** The invented vehicles, facing left, on whose pictures their zones lie. */
import { batteries } from './battery.ts';
import { camera } from './camera.ts';
import { tansyFerret } from './crash-bar.ts';
import { tealSkerry } from './depth-transducer.ts';
import { cover, face, scenery, van } from './dray.ts';
import { path, sheet, TINT } from './pen.ts';
import { coverSide, wicketSide } from './wicket.ts';

/** The Dray from its left, a little from the front and from above, so that its zones lie side by side. */
function dray(): string {
  const seen = camera({ round: 56, above: 9, scale: 0.108, point: [2700, 980, 0], stands: [352, 348] });
  const tinted = (d: string): string => face(seen, d, TINT);
  return sheet(
    van(seen, { end: cover(seen, 0, true) }),
    scenery(
      tinted('M2780 -200 2480L2780 200 2480L2780 200 2560L2780 -200 2560Z'),
      tinted('M2780 200 2480L3180 200 2480L3180 200 2560L2780 200 2560Z'),
      tinted('M2780 -200 2560L3180 -200 2560L3180 200 2560L2780 200 2560Z'),
      tinted('M1950 960 1370L2180 958 1370L2250 930 1800C2250 930 1880 2120 930 1880 2110 930 1800Z'),
    ),
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
  ...batteries,
};
