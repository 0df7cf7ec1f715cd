import { formatBoth, significant } from '../units/format.ts';
import { base, type Millimetres, type Quantity } from '../units/quantity.ts';
import type { Thread } from './thread.ts';

/** Clearance holes in mm. */
interface ClearanceHoles {
  readonly fine: Millimetres;
  readonly medium: Millimetres;
  readonly coarse: Millimetres;
  /** The standard that they come from. */
  readonly source: string;
}

type Three = readonly [fine: number, medium: number, coarse: number];

/** ISO 273: fine, medium, coarse series, in mm; M7 and from M18 up from memory. */
const iso273: { readonly [size: string]: Three } = {
  M3: [3.2, 3.4, 3.6],
  M4: [4.3, 4.5, 4.8],
  M5: [5.3, 5.5, 5.8],
  M6: [6.4, 6.6, 7],
  M7: [7.4, 7.6, 8],
  M8: [8.4, 9, 10],
  M10: [10.5, 11, 12],
  M12: [13, 13.5, 14.5],
  M14: [15, 15.5, 16.5],
  M16: [17, 17.5, 18.5],
  M18: [19, 20, 21],
  M20: [21, 22, 24],
  M22: [23, 24, 26],
  M24: [25, 26, 28],
};

/** ASME B18.2.8: close, normal, loose fit, in 64ths of an inch; from 7/16 up from memory. */
const asmeB1828: { readonly [size: string]: Three } = {
  '1/4': [17, 18, 19],
  '5/16': [21, 22, 23],
  '3/8': [25, 26, 27],
  '7/16': [29, 30, 31],
  '1/2': [34, 36, 39],
  '5/8': [42, 44, 47],
  '3/4': [50, 52, 58],
};

/** The clearance holes for a thread; undefined for sizes that the tables here do not hold. */
export function clearanceHoles({ size, form }: Thread): ClearanceHoles | undefined {
  const found = form === 'metric' ? iso273[size] : asmeB1828[size];
  if (!found) return undefined;
  const scale = form === 'metric' ? 1 : 25.4 / 64;
  const [fine, medium, coarse] = found;
  return {
    fine: base(fine * scale),
    medium: base(medium * scale),
    coarse: base(coarse * scale),
    source: form === 'metric' ? 'ISO 273' : 'ASME B18.2.8',
  };
}

/** Whether a bolt passes a hole. */
type HoleFit =
  | { readonly verdict: 'fits' }
  | { readonly verdict: 'too-small' | 'large'; readonly message: string };

/** Judges a clearance hole: smaller than the fine series, or larger than the coarse. Undefined where no table says. */
export function judgeClearanceHole(diameter: Quantity<'length'>, thread: Thread): HoleFit | undefined {
  const holes = clearanceHoles(thread);
  if (!holes) return undefined;
  const span = `${holes.source} gives ${significant(holes.fine)}, ${significant(holes.medium)} or ${significant(holes.coarse)} mm`;
  const found = `a hole of ${formatBoth(diameter)}`;
  // A hundredth of a millimetre lets inch sizes through that were rounded.
  if (diameter.base < holes.fine - 0.01) {
    return { verdict: 'too-small', message: `${found} is too small for ${thread.size} to pass; ${span}` };
  }
  if (diameter.base > holes.coarse + 0.01) {
    return {
      verdict: 'large',
      message: `${found} is larger than any clearance hole for ${thread.size}; ${span}`,
    };
  }
  return { verdict: 'fits' };
}

/** Drills in mm where d − P is not itself a drill (ISO 2306, coarse threads). */
const roundedTapDrills: { readonly [name: string]: number } = { 'M8x1.25': 6.8, 'M12x1.75': 10.2 };

/** The drill for tapping a metric thread: d − P, to the next drill; undefined for inch threads. */
export function tapDrill({ form, diameter, pitch, name }: Thread): Millimetres | undefined {
  if (form !== 'metric') return undefined;
  return base(roundedTapDrills[name] ?? Math.round((diameter - pitch) * 10) / 10);
}

/**
 * Holes in mm for round-bodied rivet nuts, as makers give them. There is no single standard and makers differ,
 * so this is a span of what is plausible; the part's own sheet decides. M10 is seen from 12 to 13.
 */
const rivetNuts: { readonly [size: string]: readonly [least: number, most: number] } = {
  M3: [4.8, 5.2],
  M4: [5.9, 6.9],
  M5: [6.9, 7.2],
  M6: [8.9, 9.6],
  M8: [10.9, 11.2],
  M10: [12, 13.2],
  '1/4': [9.4, 9.9],
  '5/16': [10.9, 11.2],
  '3/8': [12.9, 13.6],
};

/** Whether a hole is plausible for a rivet nut of a thread; undefined where no maker's figure is known here. */
export function judgeRivetNutHole(diameter: Quantity<'length'>, { size }: Thread): HoleFit | undefined {
  const span = rivetNuts[size];
  if (!span) return undefined;
  const [least, most] = span;
  if (diameter.base >= least && diameter.base <= most) return { verdict: 'fits' };
  return {
    verdict: diameter.base < least ? 'too-small' : 'large',
    message: `a hole of ${formatBoth(diameter)} is unusual for a rivet nut of ${size} (${least} to ${most} mm is usual); makers differ, so check the part's own sheet`,
  };
}
