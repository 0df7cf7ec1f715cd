import type { Guide } from '../../model/guide.ts';
import type { Action } from '../../model/inline.ts';
import type { Tool } from '../../model/item.ts';
import { crowfootQuantity } from '../../trade/torque.ts';
import type { Quantity } from '../../units/quantity.ts';
import { toolsOf } from './uses.ts';

/** A torque wrench with a crowfoot on its square: what is set is not what reaches the fastener. */
export interface CrowfootUse {
  readonly wrench: Tool;
  readonly crowfoot: Tool;
}

/** The torque wrench and the crowfoot that an action names together; `null` where it does not. */
export function crowfootUse(action: Action, { items }: Pick<Guide, 'items'>): CrowfootUse | null {
  const tools = toolsOf(action, items.get(action.target.value)).flatMap(({ value }): readonly Tool[] => {
    const tool = items.get(value);
    return tool?.kind === 'tool' ? [tool] : [];
  });
  const wrench = tools.find(({ range }) => range !== null);
  const crowfoot = tools.find(({ offset }) => offset !== null);
  return wrench && crowfoot ? { wrench, crowfoot } : null;
}

/** What the wrench is set to with the crowfoot in line with it; `null` where either length is not stated. */
export function settingInLine(
  torque: Quantity<'torque'>,
  { wrench, crowfoot }: CrowfootUse,
): Quantity<'torque'> | null {
  const [length, offset] = [wrench.length?.value, crowfoot.offset?.value];
  return length && offset ? crowfootQuantity(torque, length, offset) : null;
}
