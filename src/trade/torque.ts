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
import { proofLoad, strengthOf } from './strength.ts';
import type { Thread } from './thread.ts';

/** What is assumed about friction: a nut factor K, or a coefficient µ for thread and head alike. */
export type Friction =
  | { readonly kind: 'nut-factor'; readonly k: number }
  | { readonly kind: 'coefficient'; readonly mu: number };

/** What a torque does to a fastener. */
export interface TorqueJudgement {
  /**
   * `low`: it hardly clamps. `high`: more than the 90 % of proof load that is usual for a joint meant to stay.
   * `over-proof`: the fastener is stretched for good.
   */
  readonly verdict: 'low' | 'plausible' | 'high' | 'over-proof';
  /** Clamping load as a share of proof load. */
  readonly share: number;
  /** What it rests on, for the page: `M8x1.25, 8.8, µ = 0.14 assumed`. */
  readonly assumption: string;
  /** In a technician's words, without a closing full stop; names no other torque. */
  readonly message: string;
}

/** Under this share of proof load a joint hardly clamps (common practice, no source). */
const LEAST_SHARE = 0.25;
/** 75 % for joints that are undone, 90 % for those that stay: Shigley, chapter 8 (from memory). */
const MOST_SHARE = 0.9;

/** Plain zinc-plated threads as delivered: µ 0.14 as in older VDI 2230 tables, K 0.20 as in inch tables. */
export function usualFriction(thread: Thread): Friction {
  return thread.form === 'metric' ? { kind: 'coefficient', mu: 0.14 } : { kind: 'nut-factor', k: 0.2 };
}

/**
 * Judges a stated torque against the proof load of the fastener. Undefined where the class or grade is not in
 * the tables. It never proposes a torque: the vehicle maker's and the accessory maker's data decide.
 */
export function judgeTorque(
  torque: Quantity<'torque'>,
  thread: Thread,
  grade: string,
  friction: Friction = usualFriction(thread),
): TorqueJudgement | undefined {
  const strength = strengthOf(thread, grade);
  if (!strength) return undefined;
  const share = clampLoad(torque.base, thread, friction) / proofLoad(thread, strength);
  const verdict = verdictOf(share);
  const assumption = `${thread.name}, ${strength.name}, ${formatFriction(friction)} assumed`;
  const load = `${formatBoth(torque)} loads the fastener to ${Math.round(share * 100)} % of its proof load`;
  return { verdict, share, assumption, message: `${load} (${assumption})${consequences[verdict]}` };
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

/** `K = 0.20` or `µ = 0.14`. */
export function formatFriction(friction: Friction): string {
  return friction.kind === 'nut-factor' ? `K = ${friction.k.toFixed(2)}` : `µ = ${friction.mu.toFixed(2)}`;
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
export type WrenchFit =
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
