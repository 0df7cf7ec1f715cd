import { formatBoth } from '../units/format.ts';
import { type Base, base, type Dimension, type Quantity } from '../units/quantity.ts';

/** One link between vehicle and load, with what it may carry or tow. */
interface RatedLink<D extends Dimension = Dimension> {
  /** What it is, as a noun: "hitch", "ball", "roof bar". */
  readonly name: string;
  readonly rating: Quantity<D>;
}

/** The link that governs: the least rating, the first of equals; undefined for an empty list. All are of one kind. */
export function weakestLink<L extends RatedLink>(links: readonly L[]): L | undefined {
  return links.reduce<L | undefined>(
    (least, link) => (least && least.rating.base <= link.rating.base ? least : link),
    undefined,
  );
}

/** Judges what is claimed for the whole against its weakest link: a message where the claim is above it. */
export function claimAboveWeakest<D extends Dimension>(
  claim: Quantity<D>,
  links: readonly RatedLink<D>[],
): string | undefined {
  const weakest = weakestLink(links);
  if (!weakest || claim.base <= weakest.rating.base) return undefined;
  return `${formatBoth(claim)} is claimed, but the ${weakest.name} is rated ${formatBoth(weakest.rating)}; the weakest link governs`;
}

/** m/s², as type approval of couplings rounds it. */
const GRAVITY = 9.81;

/**
 * The D-value of a towing vehicle and its trailer, D = 9.81·T·R/(T + R) (UN R55): T and R are the technically
 * permissible masses of the vehicle and of the trailer. A coupling holds where its own D is at least as great.
 */
export function dValue(vehicle: Base<'mass'>, trailer: Base<'mass'>): Base<'force'> {
  return base((GRAVITY * vehicle * trailer) / (vehicle + trailer));
}

/**
 * The heaviest trailer that a coupling's D-value allows behind a vehicle: R = T·D/(9.81·T − D). Infinite where D
 * is beyond anything that the vehicle can pull with.
 */
export function trailerForDValue(vehicle: Base<'mass'>, coupling: Base<'force'>): Base<'mass'> {
  const spare = GRAVITY * vehicle - coupling;
  return base(spare <= 0 ? Number.POSITIVE_INFINITY : (vehicle * coupling) / spare);
}

/** Hitch classes: greatest gross trailer mass (SAE J684) and load on the ball (class 2 seen; the others from memory), in lb. */
export const hitchClasses: { readonly [name: string]: { readonly trailer: number; readonly ball: number } } =
  {
    1: { trailer: 2000, ball: 200 },
    2: { trailer: 3500, ball: 350 },
    3: { trailer: 5000, ball: 500 },
    4: { trailer: 10_000, ball: 1000 },
  };
