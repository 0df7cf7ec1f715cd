import type { Verb } from '../../model/inline.ts';
import type { Fastener, Item, KitItem } from '../../model/item.ts';
import type { StateName } from '../../model/violation.ts';

/** What an action can be done to. A `fastener` is any counted fixing, also one from the box. */
export type TargetKind =
  | 'part'
  | 'fastener'
  | 'kit'
  | 'connector'
  | 'supply'
  | 'condition'
  | 'setting'
  | 'inspection'
  | 'measure'
  | 'template'
  | 'hole';

/**
 * When an action must name a tool: `drive` binds it where its item has a drive, `always` binds it in any
 * case, `hand` asks for none unless the author names one, `never` is done with bare fingers.
 */
type ToolRule = 'drive' | 'always' | 'hand' | 'never';

/** One row of the action table. */
export interface ActionRule {
  readonly verb: Verb;
  /** As printed: the verb, and the particle that follows the noun ("move … aside"). */
  readonly words: string;
  readonly particle: string | null;
  readonly on: readonly TargetKind[];
  readonly from: readonly StateName[];
  /** More than one where the item decides: a fastener with a torque is only started. */
  readonly to: readonly StateName[];
  readonly undoneBy: readonly Verb[];
  readonly tool: ToolRule;
  /** Cannot be undone, whatever follows. */
  readonly forGood: boolean;
}

const plain = { words: '', particle: null, undoneBy: [], tool: 'hand', forGood: false } as const;

const rows: readonly (Partial<ActionRule> & Pick<ActionRule, 'verb' | 'on' | 'from' | 'to'>)[] = [
  {
    verb: 'remove',
    on: ['part', 'fastener', 'kit'],
    from: ['in place', 'tight', 'loosened', 'started'],
    to: ['off'],
    undoneBy: ['refit', 'fit'],
    tool: 'drive',
  },
  {
    verb: 'refit',
    on: ['part', 'fastener'],
    from: ['off'],
    to: ['in place', 'started', 'tight'],
    undoneBy: ['remove'],
    tool: 'drive',
  },
  {
    verb: 'fit',
    on: ['kit'],
    from: ['in the box', 'off'],
    to: ['in place', 'started', 'tight'],
    undoneBy: ['remove'],
  },
  {
    verb: 'start',
    on: ['fastener'],
    from: ['in the box', 'off'],
    to: ['started'],
    undoneBy: ['remove'],
    tool: 'never',
  },
  {
    verb: 'tighten',
    on: ['fastener'],
    from: ['started', 'loosened'],
    to: ['tight'],
    undoneBy: ['loosen'],
    tool: 'drive',
  },
  {
    verb: 'loosen',
    on: ['fastener'],
    from: ['tight'],
    to: ['loosened'],
    undoneBy: ['tighten'],
    tool: 'drive',
  },
  { verb: 'disconnect', on: ['connector'], from: ['mated'], to: ['apart'], undoneBy: ['connect'] },
  { verb: 'connect', on: ['connector'], from: ['apart'], to: ['mated'], undoneBy: ['disconnect'] },
  {
    verb: 'move-aside',
    words: 'move',
    particle: 'aside',
    on: ['part'],
    from: ['in place'],
    to: ['aside'],
    undoneBy: ['move-back'],
  },
  {
    verb: 'move-back',
    words: 'move',
    particle: 'back',
    on: ['part'],
    from: ['aside'],
    to: ['in place'],
    undoneBy: ['move-aside'],
  },
  { verb: 'apply', on: ['supply'], from: ['not on'], to: ['on'], undoneBy: ['take-off'] },
  { verb: 'take-off', words: 'take off', on: ['supply'], from: ['on'], to: ['not on'], undoneBy: ['apply'] },
  {
    verb: 'set',
    on: ['condition', 'setting'],
    from: ['does not hold', 'lapsed', 'as found'],
    to: ['holds', 'set'],
    undoneBy: ['clear'],
  },
  {
    verb: 'clear',
    on: ['condition', 'setting'],
    from: ['holds', 'lapsed', 'set'],
    to: ['does not hold', 'as found'],
    undoneBy: ['set'],
  },
  { verb: 'clean', on: ['part', 'kit', 'fastener'], from: [], to: ['done'] },
  { verb: 'route', on: ['part', 'kit', 'fastener'], from: [], to: ['done'] },
  { verb: 'measure', on: ['measure'], from: [], to: ['done'] },
  { verb: 'inspect', on: ['inspection'], from: [], to: ['done'] },
  { verb: 'cut', on: ['template', 'hole'], from: ['not done'], to: ['done'], tool: 'always', forGood: true },
  {
    verb: 'drill',
    on: ['hole', 'template'],
    from: ['not done'],
    to: ['done'],
    tool: 'always',
    forGood: true,
  },
  { verb: 'bond', on: ['kit'], from: ['in the box', 'off', 'in place'], to: ['in place'], forGood: true },
  {
    verb: 'discard',
    on: ['part', 'fastener', 'kit'],
    from: ['off', 'in the box'],
    to: ['discarded'],
    forGood: true,
  },
  {
    verb: 'hand-over',
    words: 'hand over',
    on: ['part', 'fastener', 'kit'],
    from: ['off', 'in the box'],
    to: ['given to the owner'],
    forGood: true,
  },
];

/** The action table, in the order in which the handbook prints it. */
export const actionRules: readonly ActionRule[] = rows.map((row) => ({
  ...plain,
  ...row,
  words: row.words ?? row.verb,
}));

const byVerb = new Map(actionRules.map((rule) => [rule.verb, rule]));

/** The row of a verb. */
export function actionRule(verb: Verb): ActionRule {
  const rule = byVerb.get(verb);
  if (!rule) throw new Error(`the action table has no row for ${verb}`);
  return rule;
}

/** Whether an item is a fastener: one of the vehicle's, or one that comes in the box. */
export function isFixing(item: Item): item is Fastener | KitItem {
  return item.kind === 'fastener' || (item.kind === 'kit' && item.isFastener);
}

/** What an item counts as in the action table; empty for what no action can be done to. */
export function targetKinds(item: Item): readonly TargetKind[] {
  switch (item.kind) {
    case 'kit':
      return isFixing(item) ? ['kit', 'fastener'] : ['kit'];
    case 'part':
    case 'fastener':
    case 'connector':
    case 'supply':
    case 'condition':
    case 'setting':
    case 'inspection':
    case 'measure':
      return [item.kind];
    case 'tool':
    case 'wear':
    case 'rating':
    case 'circuit':
      return [];
  }
}

/** Whether an action on an item must have a fitting tool, named by it or mentioned in its step. */
export function bindsTool(verb: Verb, item: Item | null): boolean {
  const { tool } = actionRule(verb);
  if (tool === 'always') return true;
  return tool === 'drive' && item !== null && isFixing(item) && item.drive !== null;
}
