import { type Base, base } from '../units/quantity.ts';

/** One link between vehicle and load, with what it may carry or tow. */
export interface RatedLink<M> {
  /** What it is: "hitch", "ball", "roof bar". */
  readonly name: string;
  readonly rating: Base<'mass'>;
  /** Whatever the caller wants back with the weakest link: a place in the text, say. */
  readonly mark: M;
}

/** The link that governs: the least rating, the first of equals; undefined for an empty list. */
export function weakestLink<M>(links: readonly RatedLink<M>[]): RatedLink<M> | undefined {
  return links.reduce<RatedLink<M> | undefined>(
    (least, link) => (least && least.rating <= link.rating ? least : link),
    undefined,
  );
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
