import { bindsTool } from '../../job/actions/actions.ts';
import { actionsOf } from '../../job/actions/walk.ts';
import {
  findTarget,
  isFixing,
  oncePer,
  placedInStep,
  stepsOf,
  type Target,
  toolsOf,
} from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action, Ref } from '../../model/inline.ts';
import type { Fastener, KitItem, Tool } from '../../model/item.ts';
import type { Origin } from '../../model/origin.ts';
import type { Subject } from '../rule.ts';

/** A tool that is there for an action, with what serves as well and the place that names it. */
export interface Offer {
  readonly tool: Tool;
  readonly ref: Ref;
  /** The tool, and what `or=` lets take its place. */
  readonly any: readonly Tool[];
}

/** An action with the tools that its author offers for it. */
export interface ToolUse {
  readonly action: Action;
  readonly step: Step;
  readonly target: Target;
  /** The fastener that is acted on; `null` for a part, a template or a hole. */
  readonly item: Fastener | KitItem | null;
  /** Whether it must have a tool that fits. */
  readonly bound: boolean;
  /** What `with=` names, on the action or on the item; else what the step names. */
  readonly offers: readonly Offer[];
  /** Whether `with=` names them. */
  readonly named: boolean;
  /** What the step names anywhere in its text. */
  readonly mentioned: readonly Offer[];
  /** The reversal that the action was worked out by; `null` for one that the author wrote. */
  readonly reversal: Extract<Origin, { kind: 'reverse' }> | null;
}

/**
 * Every action that is bound to a tool or tightens, with its tools. An action about whose tools something could
 * not be read, or is not declared, is left out: another rule tells that.
 */
export const toolUses: (subject: Subject) => readonly ToolUse[] = oncePer((subject) => {
  const { guide } = subject;
  return stepsOf(guide).flatMap((step) => {
    const mentions = mentionedTools(step, guide);
    return actionsOf(step).flatMap(({ node }) => useOf(node, step, mentions, subject));
  });
});

function useOf(action: Action, step: Step, mentions: readonly Ref[], subject: Subject): readonly ToolUse[] {
  const target = findTarget(subject.guide, action.target.value);
  if (!target) return [];
  const declared = target.kind === 'item' ? target.item : null;
  const item = declared && isFixing(declared) ? declared : null;
  const bound = bindsTool(action.verb, declared);
  if (!bound && !(action.verb === 'tighten' && item)) return [];
  if (action.unknown.has('with') || declared?.unknown.has('with')) return [];

  const refs = toolsOf(action, declared ?? undefined);
  const mentioned = offersOf(mentions, subject);
  const offers = refs.length > 0 ? offersOf(refs, subject) : mentioned;
  if (!mentioned || !offers) return [];
  const reversal = step.origins.findLast((origin) => origin.kind === 'reverse') ?? null;
  return [{ action, step, target, item, bound, offers, named: refs.length > 0, mentioned, reversal }];
}

/**
 * The tools that a step names, in the order of the text. A refit that is worked out is done with what the
 * strip-down had in hand.
 */
function mentionedTools(step: Step, guide: Guide): readonly Ref[] {
  const own = placedInStep(step).flatMap(({ node, block }) => {
    // A note for the refit speaks there; what explains or is for the owner is not on the print of the step.
    if (block.type === 'refit-note' || block.type === 'why' || block.type === 'owner') return [];
    if (node.type === 'action') return node.with;
    return node.of === 'tool' ? [node.target] : [];
  });
  const origin = step.origins.findLast(({ kind }) => kind === 'reverse');
  const source = origin?.kind === 'reverse' && stepsOf(guide).find(({ id }) => id === origin.step);
  return source ? [...own, ...mentionedTools(source, guide)] : own;
}

/** The tools behind some ids, each once; `null` where one of them is not known well enough to judge it. */
function offersOf(refs: readonly Ref[], subject: Subject): readonly Offer[] | null {
  const offers = new Map<string, Offer>();
  for (const ref of refs) {
    const tool = subject.guide.items.get(ref.value);
    if (tool?.kind !== 'tool' || isDoubtful(tool, subject)) return null;
    const others = tool.or.map(({ value }) => toolNamed(value, subject));
    if (others.some((other) => other === null)) return null;
    const any = [tool, ...others.flatMap((other) => other ?? [])];
    if (!offers.has(tool.id)) offers.set(tool.id, { tool, ref, any });
  }
  return [...offers.values()];
}

/** What serves as well need not be declared, as long as the crib has it. */
function toolNamed(id: string, subject: Subject): Tool | null {
  const tool = subject.guide.items.get(id) ?? subject.shop.crib.get(id);
  return tool?.kind === 'tool' && !isDoubtful(tool, subject) ? tool : null;
}

function isDoubtful({ id, unknown }: Tool, { shop }: Subject): boolean {
  const unread = [...unknown, ...(shop.crib.get(id)?.unknown ?? [])];
  return unread.some((name) => ['drive', 'range', 'diameter', 'or'].includes(name));
}
