import { convert, formatBoth, formatQuantity, quantityOf } from '../units/format.ts';
import {
  type Base,
  base,
  type Degrees,
  type Millimetres,
  type NewtonMetres,
  type Quantity,
  type QuantityRange,
} from '../units/quantity.ts';
import { decimalComma, type TradeProblem, tradeProblem } from './problem.ts';
import { proofLoad, type Strength, strengthOf, strongest } from './strength.ts';
import type { Thread } from './thread.ts';

/** Friction: a nut factor K, or a coefficient µ for thread and head alike. */
type Friction =
  | { readonly kind: 'nut-factor'; readonly k: number }
  | { readonly kind: 'coefficient'; readonly mu: number };

/** The state of a thread as an author says it, and the nut factor that stands for it. */
export interface StatedFriction {
  /** As written: `oiled`, `0.16`. */
  readonly words: string;
  readonly k: number;
}

/** What a torque does to a fastener. */
export interface TorqueJudgement {
  /**
   * `low`: it hardly clamps. `high`: more than the 90 % of proof load that is usual for a joint meant to stay.
   * `over-proof`: the fastener is stretched for good.
   */
  readonly verdict: 'low' | 'plausible' | 'high' | 'over-proof';
  /** Clamping load as a share of proof load. */
  readonly share: number;
  /** What it rests on, for the page: `M8x1.25, 8.8, K = 0.20 assumed`. */
  readonly assumption: string;
  /** In a technician's words, without a closing full stop; names no other torque. */
  readonly message: string;
}

/** Under this share of proof load a joint hardly clamps (common practice, no source). */
const LEAST_SHARE = 0.23;
/** 75 % for joints that are undone, 90 % for those that stay: Shigley, chapter 8 (from memory). */
const MOST_SHARE = 0.9;

/** Zinc-plated threads as they come out of the box (Shigley, table 8-15). */
const AS_DELIVERED = 0.2;
/** The least that a table gives: anti-seize, and so any grease (Shigley, table 8-15). */
const GREASED = 0.12;

/**
 * What an author may call a thread. Dry: zinc as delivered, 0.20 (Shigley, table 8-15); oiled: 0.15, the lower of
 * the two figures in use (0.18 by Shigley, 0.15 by engineersedge.com), since the lower loads the bolt more; waxed:
 * 0.12, as anti-seize (from memory).
 */
const frictions: { readonly [word: string]: number } = { dry: 0.2, oiled: 0.15, waxed: 0.12 };

/** Nut factors beyond these are a slip of the pen. */
const LEAST_K = 0.08;
const MOST_K = 0.4;

/** Reads `dry`, `oiled`, `waxed`, or a nut factor such as `0.16`; a message where it is none. */
export function parseFriction(
  text: string,
): { readonly ok: true; readonly friction: StatedFriction } | TradeProblem {
  const words = text.trim();
  const k = frictions[words] ?? (/^0?\.\d+$/.test(words) ? Number(words) : Number.NaN);
  if (k >= LEAST_K && k <= MOST_K) return { ok: true, friction: { words, k } };
  const mended = decimalComma(words, (likely) => parseFriction(likely).ok);
  return (
    mended ??
    tradeProblem(
      `"${words}" was found where ${Object.keys(frictions).join(', ')} or a nut factor from ${LEAST_K} to ${MOST_K} was expected`,
    )
  );
}

/**
 * Judges a stated torque against the proof load of the fastener, at the friction that it states, or else at a nut
 * factor of 0.20. Undefined where the class or grade is not in the tables. It never proposes a torque: the vehicle
 * maker's and the accessory maker's data decide.
 */
export function judgeTorque(
  torque: Quantity<'torque'>,
  thread: Thread,
  grade: string,
  stated: StatedFriction | null = null,
): TorqueJudgement | undefined {
  const strength = strengthOf(thread, grade);
  return strength && judged(torque, thread, strength, stated);
}

/**
 * Judges the torque of a fastener that states no grade: over proof where it is too much for every bolt, that is for
 * class 12.9. Undefined where a strong enough bolt would bear it, which nobody can tell without the grade.
 */
export function judgeUngraded(
  torque: Quantity<'torque'>,
  thread: Thread,
  stated: StatedFriction | null = null,
): TorqueJudgement | undefined {
  const found = judged(torque, thread, strongest, stated);
  return found.verdict === 'over-proof' ? found : undefined;
}

/** Whether a torque that is sound as judged would stretch the fastener if somebody greased its thread. */
export function stretchesGreased(
  torque: Quantity<'torque'>,
  thread: Thread,
  grade: string,
  stated: StatedFriction | null = null,
): boolean {
  const strength = strengthOf(thread, grade);
  if (!strength || stated) return false;
  const share = (k: number) => shareOf(torque, thread, strength, k);
  return share(AS_DELIVERED) <= 1 && share(GREASED) > 1;
}

function judged(
  torque: Quantity<'torque'>,
  thread: Thread,
  strength: Strength,
  stated: StatedFriction | null,
): TorqueJudgement {
  const share = shareOf(torque, thread, strength, stated?.k ?? AS_DELIVERED);
  const verdict = verdictOf(share);
  const assumption = `${thread.name}, ${strength.name}, ${frictionWords(stated)}`;
  const load = `${formatBoth(torque)} loads the fastener to ${Math.round(share * 100)} % of its proof load`;
  return { verdict, share, assumption, message: `${load} (${assumption})${consequences[verdict]}` };
}

function shareOf(torque: Quantity<'torque'>, thread: Thread, strength: Strength, k: number): number {
  return clampLoad(torque.base, thread, { kind: 'nut-factor', k }) / proofLoad(thread, strength);
}

function frictionWords(stated: StatedFriction | null): string {
  if (!stated) return `K = ${AS_DELIVERED.toFixed(2)} assumed`;
  return stated.words in frictions
    ? `K = ${stated.k.toFixed(2)}, ${stated.words}`
    : `K = ${stated.words} stated`;
}

const consequences: { readonly [verdict in TorqueJudgement['verdict']]: string } = {
  low: ', so it hardly clamps; check the number and its unit',
  plausible: '',
  high: ', more than is usual; check the number, its unit and the grade',
  'over-proof': ', so it is stretched for good or breaks; check the number, its unit and the grade',
};

function verdictOf(share: number): TorqueJudgement['verdict'] {
  if (share > 1) return 'over-proof';
  if (share > MOST_SHARE) return 'high';
  return share < LEAST_SHARE ? 'low' : 'plausible';
}

/**
 * The load that a torque puts on the fastener. With a nut factor F = T/(K·d); with a coefficient
 * F = T/(0.159·P + µ·(0.578·d2 + 0.65·d)), VDI 2230 with a bearing diameter of 1.3·d.
 */
export function clampLoad(
  torque: NewtonMetres,
  { diameter, pitch }: Thread,
  friction: Friction,
): Base<'force'> {
  // N·m over mm gives kN, hence the 1000.
  const perLoad =
    friction.kind === 'nut-factor'
      ? friction.k * diameter
      : 0.159 * pitch + friction.mu * (0.578 * (diameter - 0.6495 * pitch) + 0.65 * diameter);
  return base<'force'>((1000 * torque) / perLoad);
}

/**
 * What a torque wrench is set to when a crowfoot or other offset reaches past its square: Tw = T·L/(L + A·cos θ)
 * (TM 1-1500-204-23-9). L is from the middle of the grip to the square, A from the square to the fastener, θ the
 * angle between them: 0° straight on, 90° at right angles, where nothing changes. An extension bar along the
 * fastener's own axis needs no correction.
 */
export function crowfootSetting(
  torque: NewtonMetres,
  wrenchLength: Millimetres,
  offset: Millimetres,
  angle: Degrees,
): NewtonMetres {
  const reach = wrenchLength + offset * Math.cos((angle * Math.PI) / 180);
  if (wrenchLength <= 0 || reach <= 0)
    throw new Error('a wrench with an offset must reach forward of its grip');
  return base<'torque'>((torque * wrenchLength) / reach);
}

/**
 * What a wrench with a crowfoot in line is set to, in the torque's own unit: T·L/(L + E), where L is the length
 * of the wrench and E what the crowfoot adds to it.
 */
export function crowfootQuantity(
  torque: Quantity<'torque'>,
  length: Quantity<'length'>,
  offset: Quantity<'length'>,
): Quantity<'torque'> {
  const newtonMetres = crowfootSetting(torque.base, length.base, offset.base, base<'angle'>(0));
  const set = quantityOf('torque', newtonMetres, 'N·m');
  return quantityOf('torque', convert(set, torque.unit), torque.unit);
}

/** Whether a wrench can be trusted at a torque. */
type WrenchFit =
  | { readonly verdict: 'within' }
  | { readonly verdict: 'below' | 'above'; readonly message: string };

/** Below a fifth of its greatest mark a wrench is not checked (ISO 6789:2003), unless its scale begins higher. */
const UNCHECKED = 0.2;

/**
 * Judges a torque against a wrench's scale. A range that begins above zero begins at the wrench's lowest mark
 * (ISO 6789:2017); one that begins at zero is good from 20 % upwards.
 */
export function wrenchFits(torque: Quantity<'torque'>, { least, most }: QuantityRange<'torque'>): WrenchFit {
  const marked = least.base > 0 && least.base < most.base;
  const lowest = marked ? least.base : UNCHECKED * most.base;
  const stated = formatBoth(torque);
  if (torque.base > most.base) {
    return {
      verdict: 'above',
      message: `${stated} is more than the wrench's greatest mark, ${formatQuantity(most)}`,
    };
  }
  if (torque.base >= lowest) return { verdict: 'within' };
  const reason = marked
    ? `the wrench's lowest mark, ${formatQuantity(least)}`
    : `20 % of the wrench's greatest mark, ${formatQuantity(most)}`;
  return { verdict: 'below', message: `${stated} is less than ${reason}, where it cannot be trusted` };
}
