import { type MapNode, mapBlock, mapProse } from '../../guide/procedures/map-prose.ts';
import type { Block } from '../../model/block.ts';
import type { Conditional, CutTemplate } from '../../model/cut-template.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Inline, ProseNode } from '../../model/prose.ts';
import type { When } from '../../model/when.ts';
import type { Written } from '../../source/span.ts';

/** Whether a condition holds for every build that a visit can be for: for all, for none, or for some. */
export type Settles = (when: When) => 'always' | 'never' | 'sometimes';

/** A guide as it reads for the builds of a visit: what none of them has is left out, what all of them have is plain. */
export function settled(guide: Guide, settles: Settles): Guide {
  const keep = <T extends { readonly when: Written<When> | null }>(one: T): readonly T[] => {
    const verdict = one.when ? settles(one.when.value) : 'always';
    return verdict === 'never' ? [] : [verdict === 'always' ? { ...one, when: null } : one];
  };
  const node = settledNode(settles);
  const blocks = (all: readonly Block[]) =>
    all.flatMap((block) => {
      const [kept] = block.type === 'prose' ? [block] : keep(block);
      const mapped = kept && mapBlock(kept, node);
      return mapped && !isEmptied(mapped) ? [mapped] : [];
    });
  const steps = (all: readonly Step[]) =>
    all.flatMap((step) => keep(step)).map((step) => ({ ...step, blocks: blocks(step.blocks) }));
  const items = [...guide.items].flatMap(([id, item]) => keep<Item>(item).map((one) => [id, one] as const));
  const sections = guide.sections.map((section) => ({
    ...section,
    intro: blocks(section.intro),
    steps: steps(section.steps),
  }));
  const placed = new Set(
    sections
      .flatMap(({ intro, steps }) => [...intro, ...steps.flatMap((step) => step.blocks)])
      .flatMap((block) => (block.type === 'template' ? [block.template.value] : [])),
  );
  const templates = [...guide.templates]
    .filter(([id]) => placed.has(id))
    .map(([id, template]) => [id, settledTemplate(template, keep)] as const);
  return {
    ...guide,
    items: new Map(items),
    templates: new Map(templates),
    opening: blocks(guide.opening),
    footnotes: mapProse(guide.footnotes, node),
    sections,
  };
}

type Keep = <T extends Conditional>(one: T) => readonly T[];

function settledTemplate(template: CutTemplate, keep: Keep): CutTemplate {
  return {
    ...template,
    holes: template.holes.flatMap((one) => keep(one)),
    slots: template.slots.flatMap((one) => keep(one)),
    patterns: template.patterns.flatMap((one) => keep(one)),
    datums: template.datums.flatMap((one) => keep(one)),
    outlines: template.outlines.flatMap((one) => keep(one)),
    arcs: template.arcs.flatMap((one) => keep(one)),
    keepOuts: template.keepOuts.flatMap((one) => keep(one)),
    panelOutlines: template.panelOutlines.flatMap((one) => keep(one)),
  };
}

function settledNode(settles: Settles): MapNode {
  return (node) => {
    switch (node.type) {
      case 'text':
        return [node];
      case 'element':
        return isHollow(node.children) && hollows.has(node.tagName) ? [] : [node];
      case 'where': {
        const verdict = settles(node.when.value);
        return verdict === 'never' ? [] : verdict === 'always' ? node.children : [node];
      }
      case 'mention':
      case 'action': {
        const verdict = node.when ? settles(node.when.value) : 'always';
        return verdict === 'never' ? [] : [verdict === 'always' ? { ...node, when: null } : node];
      }
    }
  };
}

/** Elements that say nothing once what stood in them is gone. */
const hollows = new Set(['p', 'li', 'ul', 'ol', 'strong', 'em']);

function isHollow(children: readonly ProseNode<Inline>[]): boolean {
  return children.every((node) => node.type === 'text' && node.value.trim() === '');
}

function isEmptied(block: Block): boolean {
  return block.type === 'prose' && isHollow(block.content);
}
