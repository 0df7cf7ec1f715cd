import { lowered } from '../../job/words/noun.ts';
import type { Step } from '../../model/guide.ts';
import type { GuideContext } from '../frame/context.ts';
import { litId, placeAnchor, placeName, placesOfStep } from '../overview/vehicle.ts';

/** Where a step is done. */
export interface PlaceView {
  /** "Front end, engine bay". */
  readonly name: string;
  /** Its zones lit in the drawing of the vehicle; `null` where that cannot be shown. */
  readonly drawing: LitDrawing | null;
}

interface LitDrawing {
  /** The list of the zone; of the first, where the step is done in several. */
  readonly href: string;
  readonly width: number;
  readonly height: number;
  /** Ids of the shapes that are lit. */
  readonly lit: readonly string[];
}

/** Where a step is done; `null` for a platform without zones. */
export function placeView(step: Step, { drawing, guide }: GuideContext): PlaceView | null {
  const [first, ...more] = guide.zones.size === 0 ? [] : placesOfStep(guide, step);
  if (first === undefined) return null;
  const places = [first, ...more];
  const [name = '', ...others] = places.map((place) => placeName(guide, place));
  return {
    name: [name, ...others.map(lowered)].join(', '),
    drawing: drawing && {
      href: `#${placeAnchor(first)}`,
      width: drawing.picture.width,
      height: drawing.picture.height,
      lit: places.filter((place) => place !== 'off').map(litId),
    },
  };
}
