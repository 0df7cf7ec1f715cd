import type { CrowfootUse } from '../job/crowfoot.ts';
import { crowfootQuantity } from '../trade/torque.ts';
import { formatBoth, formatQuantity } from '../units/format.ts';
import type { Quantity } from '../units/quantity.ts';
import type { TorqueSpec } from '../units/torque.ts';

/**
 * What a torque wrench is set to with a crowfoot on it, with how it is worked out; `null` where a length is not
 * stated. An angle that follows a torque is turned as it is.
 */
export function settingInWords(torque: TorqueSpec, { wrench, crowfoot }: CrowfootUse): string | null {
  const { length } = wrench;
  const { offset } = crowfoot;
  const torques = torque.flatMap((pass) => (pass.kind === 'torque' ? [pass.value] : []));
  if (!length || !offset || torques.length === 0) return null;
  const set = torques.map((value) => oneSetting(value, length.value, offset.value));
  return [
    `With the ${crowfoot.noun.singular} in line with the wrench, set it to ${set.join(', then to ')}.`,
    `With the ${crowfoot.noun.singular} at 90° to the wrench, set it to ${torques.map(formatBoth).join(', then to ')}.`,
    'What the maker of the wrench says comes first.',
  ].join(' ');
}

/** "21.9 N·m (16.1 lbf·ft), which is 25 N·m × 280 mm ÷ (280 mm + 40 mm)". */
function oneSetting(
  torque: Quantity<'torque'>,
  length: Quantity<'length'>,
  offset: Quantity<'length'>,
): string {
  const set = crowfootQuantity(torque, length, offset);
  const [t, l, e] = [torque, length, offset].map(formatQuantity);
  return `${formatBoth(set)}, which is ${t} × ${l} ÷ (${l} + ${e})`;
}
