import type { Block } from '../../model/block.ts';
import type { Conditional, CutHole } from '../../model/cut-template.ts';
import type { Step } from '../../model/guide.ts';
import type { Ref } from '../../model/inline.ts';
import type { Item } from '../../model/item.ts';
import type { Inline, Prose, ProseNode } from '../../model/prose.ts';
import type { Sequence } from '../../model/sequence.ts';
import type { When } from '../../model/when.ts';
import type { Written } from '../../source/span.ts';
import type { DeclaredTemplate } from '../draft.ts';
import { mapBlock, mapProse } from './map-prose.ts';

/** How the ids and conditions of a procedure change where it is placed. */
export interface Adaptation {
  /** The id in the guide of an item, template or hole of the procedure. */
  readonly item: (id: string) => string;
  /** The id in the guide of a step of the procedure. */
  readonly step: (id: string) => string;
  /** The condition in the guide's options. */
  readonly when: (when: When) => When;
}

const refWith = (id: (id: string) => string) => (ref: Ref) => ({ ...ref, value: id(ref.value) });

function adaptWhen(written: Written<When> | null, { when }: Adaptation): Written<When> | null {
  return written && { value: when(written.value), at: written.at };
}

/** An item under the names of the guide. */
export function adaptItem<I extends Item>(item: I, by: Adaptation): I {
  const ref = refWith(by.item);
  return {
    ...item,
    id: by.item(item.id),
    with: item.with.map(ref),
    needs: item.needs.map(ref),
    when: adaptWhen(item.when, by),
    ...('or' in item ? { or: item.or.map(ref) } : {}),
    ...('holds' in item ? { holds: item.holds.map(ref) } : {}),
    ...('covers' in item ? { covers: item.covers.map(ref) } : {}),
    ...('takes' in item ? { takes: item.takes.map(ref) } : {}),
    ...('on' in item ? { on: item.on.map(ref) } : {}),
    ...('stack' in item ? { stack: item.stack.map(ref), coat: item.coat && ref(item.coat) } : {}),
    ...('ends' in item ? { ends: item.ends.map(ref) } : {}),
    ...('chosenBy' in item ? { chosenBy: item.chosenBy && ref(item.chosenBy) } : {}),
    ...('replaces' in item ? { replaces: item.replaces && ref(item.replaces) } : {}),
  };
}

/** An order of tightening under the names of the guide. */
export function adaptSequence(sequence: Sequence, by: Adaptation): Sequence {
  return { ...sequence, id: by.item(sequence.id), order: sequence.order.map(refWith(by.item)) };
}

/** A step with all that it holds under the names of the guide. */
export function adaptStep(step: Step, by: Adaptation): Step {
  return {
    ...step,
    id: by.step(step.id),
    title: adaptProse(step.title, by),
    needs: step.needs.map(refWith(by.item)),
    until: step.until && refWith(by.item)(step.until),
    after: step.after.map(refWith(by.step)),
    when: adaptWhen(step.when, by),
    blocks: step.blocks.map((block) => adaptBlock(block, by)),
  };
}

/** A template under the names of the guide. */
export function adaptTemplate({ template, idAt }: DeclaredTemplate, by: Adaptation): DeclaredTemplate {
  const ref = refWith(by.item);
  const conditional = <F extends Conditional>(one: F): F => ({
    ...one,
    when: adaptWhen(one.when, by),
  });
  const feature = <F extends Pick<CutHole, 'id' | 'for' | 'when'>>(one: F): F => ({
    ...conditional(one),
    id: one.id === null ? null : by.item(one.id),
    for: one.for && ref(one.for),
  });
  return {
    idAt,
    template: {
      ...template,
      id: by.item(template.id),
      panel: template.panel && ref(template.panel),
      holes: template.holes.map(feature),
      slots: template.slots.map(feature),
      patterns: template.patterns.map(feature),
      datums: template.datums.map(conditional),
      outlines: template.outlines.map(conditional),
      arcs: template.arcs.map(conditional),
      keepOuts: template.keepOuts.map(conditional),
      panelOutlines: template.panelOutlines.map(conditional),
    },
  };
}

/** A block with all that it holds under the names of the guide. */
export function adaptBlock(block: Block, by: Adaptation): Block {
  const adapted = mapBlock(block, (node) => [adaptNode(node, by)]);
  if (adapted.type === 'prose') return adapted;
  const ref = refWith(by.item);
  const when = adaptWhen(adapted.when, by);
  switch (adapted.type) {
    case 'template':
      return { ...adapted, template: ref(adapted.template), when };
    case 'prove':
      return { ...adapted, needs: adapted.needs.map(ref), when };
    default:
      return { ...adapted, when };
  }
}

/** Prose under the names of the guide. */
export function adaptProse(prose: Prose, by: Adaptation): Prose {
  return mapProse(prose, (node) => [adaptNode(node, by)]);
}

/** A node whose children are adapted already. */
function adaptNode(node: ProseNode<Inline>, by: Adaptation): ProseNode<Inline> {
  const ref = refWith(by.item);
  switch (node.type) {
    case 'text':
    case 'element':
      return node;
    case 'where':
      return { ...node, when: { value: by.when(node.when.value), at: node.when.at } };
    case 'mention':
      return {
        ...node,
        target: refWith(node.of === 'step' ? by.step : by.item)(node.target),
        when: adaptWhen(node.when, by),
      };
    case 'action':
      return {
        ...node,
        target: ref(node.target),
        with: node.with.map(ref),
        on: node.on.map(ref),
        trial: node.trial && refWith(by.step)(node.trial),
        inSequence: node.inSequence && {
          ...node.inSequence,
          sequence: by.item(node.inSequence.sequence),
        },
        when: adaptWhen(node.when, by),
      };
  }
}
