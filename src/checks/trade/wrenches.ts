import type { Tool } from '../../model/item.ts';
import type { Quantity, QuantityRange } from '../../units/quantity.ts';
import { statedTorques } from '../../units/torque.ts';
import type { ToolUse } from './tool-use.ts';

/** A torque wrench that is offered for an action. */
export interface Wrench {
  readonly tool: Tool;
  readonly range: QuantityRange<'torque'>;
}

/** The torques that a tightening asks for, pass by pass; empty for any other action. */
export function torquesAsked({ action, item }: ToolUse): readonly Quantity<'torque'>[] {
  if (action.verb !== 'tighten' || !item?.torque) return [];
  return statedTorques(item.torque.value);
}

/** The torque wrenches among the tools of an action; where it names none, among those that the step names. */
export function wrenchesOf({ offers, mentioned }: ToolUse): readonly Wrench[] {
  const among = (all: ToolUse['offers']) =>
    all.flatMap(({ any }) => any.flatMap((tool) => (tool.range ? [{ tool, range: tool.range.value }] : [])));
  const named = among(offers);
  return named.length > 0 ? named : among(mentioned);
}
