import type { StepZones } from '../../model/guide.ts';
import { type AttributeType, bad, good } from './attribute.ts';
import { refs } from './attribute-types.ts';

/** What stands for a zone where a step is done off the vehicle. */
export const OFF = 'off';

/** The zones in which something lies. */
export const itemZones: typeof refs = {
  ...refs,
  expects: 'zones of the platform, set apart by spaces, as in `front`',
  read: (text, at) => {
    const reading = refs.read(text, at);
    return reading.ok && reading.value.some(({ value }) => value === OFF)
      ? bad(`"${OFF}" stands on a step that is done off the vehicle; name the zone in which this lies`)
      : reading;
  },
};

/** The zones in which a step is done, or that it is done off the vehicle. */
export const stepZones: AttributeType<StepZones> = {
  expects: 'zones of the platform, set apart by spaces, or `off` for work off the vehicle',
  read: (text, at) => {
    if (text.trim() === OFF) return good<StepZones>(OFF);
    const reading = refs.read(text, at);
    return reading.ok && reading.value.some(({ value }) => value === OFF)
      ? bad(`"${OFF}" stands alone: a step is done in zones of the vehicle, or off it`)
      : reading;
  },
};
