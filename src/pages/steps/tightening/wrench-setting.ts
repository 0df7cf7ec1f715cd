import type { CrowfootUse } from '../../../job/index.ts';
import { crowfootQuantity } from '../../../trade/torque.ts';
import { formatBoth, formatQuantity } from '../../../units/format.ts';
import { statedTorques, type TorqueSpec } from '../../../units/torque.ts';
import type { WrenchSetting } from '../step-views.ts';

/**
 * What a torque wrench is set to with a crowfoot on it, with how it is worked out; `null` where a length is not
 * stated. An angle that follows a torque is turned as it is.
 */
export function wrenchSetting(torque: TorqueSpec, { wrench, crowfoot }: CrowfootUse): WrenchSetting | null {
  const [length, offset] = [wrench.length?.value, crowfoot.offset?.value];
  const torques = statedTorques(torque);
  if (!length || !offset || torques.length === 0) return null;
  const [l, e] = [formatQuantity(length), formatQuantity(offset)];
  const inPasses = (words: readonly string[]) => words.join(', then to ');
  return {
    crowfoot: crowfoot.noun.singular,
    inLine: inPasses(torques.map((value) => formatBoth(crowfootQuantity(value, length, offset)))),
    formula: torques.map((value) => `${formatQuantity(value)} × ${l} ÷ (${l} + ${e})`).join('; '),
    square: inPasses(torques.map(formatBoth)),
  };
}
