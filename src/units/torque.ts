import { formatBoth, formatQuantity } from './format.ts';
import { inOneForm } from './number.ts';
import { faultOfText, parseQuantity, splitRange } from './parse.ts';
import { problem, type QuantityProblem } from './problem.ts';
import type { Quantity } from './quantity.ts';

/** One pass of tightening: to a torque, or through a further angle. */
export type TorquePass =
  | { readonly kind: 'torque'; readonly value: Quantity<'torque'> }
  | { readonly kind: 'turn'; readonly angle: Quantity<'angle'> };

/** All passes of a fastener, in the order in which they are done; never empty. */
export type TorqueSpec = readonly TorquePass[];

/** The passes, or what is wrong with the text. */
type ParsedTorque = { readonly ok: true; readonly passes: TorqueSpec } | QuantityProblem;

/** Reads `25 N·m`, or passes set apart by commas, `+` or "then": `20 N·m, 50 N·m, +90°`. */
export function parseTorque(text: string): ParsedTorque {
  const plain = inOneForm(text);
  const fault = faultOfText(plain, 'torque');
  if (fault) return fault;
  const passes: TorquePass[] = [];
  for (const piece of plain.split(/ ?[,;] ?\+? ?| ?\+ ?| then /)) {
    if (piece === '' && passes.length === 0) continue;
    const pass = parsePass(piece);
    if (!('kind' in pass)) return pass;
    passes.push(pass);
  }
  return { ok: true, passes };
}

function parsePass(piece: string): TorquePass | QuantityProblem {
  if (splitRange(piece)) {
    return problem(
      'not-a-number',
      `"${piece}" is a range; a wrench is set to one torque, for example "25 N·m"`,
    );
  }
  const torque = parseQuantity(piece, 'torque');
  if (torque.ok) {
    return torque.quantity.base > 0
      ? { kind: 'torque', value: torque.quantity }
      : problem(
          'out-of-range',
          `"${piece}" does not tighten; a torque is more than zero, for example "25 N·m"`,
        );
  }
  if (torque.problem !== 'wrong-kind') return torque;
  const angle = parseQuantity(piece, 'angle');
  if (!angle.ok) return torque;
  if (angle.quantity.base <= 0) {
    return problem(
      'out-of-range',
      `"${piece}" does not tighten; a further turn is more than zero, for example "+90°"`,
    );
  }
  return { kind: 'turn', angle: angle.quantity };
}

/** All passes in both units: `20 N·m (14.8 lbf·ft), then 50 N·m (36.9 lbf·ft), then a further 90°`. */
export function formatTorque(passes: TorqueSpec): string {
  return passes
    .map((pass) =>
      pass.kind === 'torque' ? formatBoth(pass.value) : `a further ${formatQuantity(pass.angle)}`,
    )
    .join(', then ');
}

/** The torques of all passes in their order, without the turns. */
export function statedTorques(passes: TorqueSpec): readonly Quantity<'torque'>[] {
  return passes.flatMap((pass) => (pass.kind === 'torque' ? [pass.value] : []));
}

/** The greatest stated torque of all passes; undefined where there are only turns. */
export function greatestTorque(passes: TorqueSpec): Quantity<'torque'> | undefined {
  return statedTorques(passes).reduce<Quantity<'torque'> | undefined>(
    (top, one) => (top && top.base >= one.base ? top : one),
    undefined,
  );
}
