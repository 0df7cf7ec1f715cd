import type { Block } from '../../model/block.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Guide, Section, Step } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { Prose } from '../../model/prose.ts';
import type { When } from '../../model/when.ts';
import type { Written } from '../../source/span.ts';
import { prosesOf } from '../actions/walk.ts';
import { oncePer } from '../once.ts';
import { conditionalsOf } from './template-variants.ts';

/** What a condition of a guide stands on. */
type ConditionOn =
  | { readonly kind: 'item'; readonly item: Item }
  | { readonly kind: 'step'; readonly section: Section; readonly step: Step }
  | { readonly kind: 'block'; readonly step: Step | null; readonly block: Block }
  | { readonly kind: 'words'; readonly step: Step | null; readonly block: Block }
  | { readonly kind: 'feature'; readonly step: Step | null; readonly template: CutTemplate };

/** A condition where an author wrote it. */
export interface ConditionPlace {
  readonly when: Written<When>;
  /** What must hold for it to be read at all, outermost first. */
  readonly outer: readonly When[];
  readonly on: ConditionOn;
}

/** Every condition of a guide, in the order of the text after those of the items. */
export const conditionsOf: (guide: Guide) => readonly ConditionPlace[] = oncePer((guide) => {
  const items = [...guide.items.values()].flatMap((item) => placed(item.when, [], { kind: 'item', item }));
  const sections = guide.sections.flatMap((section) => [
    ...inBlocks(section.intro, null, [], guide),
    ...section.steps.flatMap((step) => [
      ...placed(step.when, [], { kind: 'step', section, step }),
      ...inBlocks(step.blocks, step, step.when ? [step.when.value] : [], guide),
    ]),
  ]);
  return [...items, ...inBlocks(guide.opening, null, [], guide), ...sections];
});

function inBlocks(
  blocks: readonly Block[],
  step: Step | null,
  outer: readonly When[],
  guide: Pick<Guide, 'templates'>,
): readonly ConditionPlace[] {
  return blocks.flatMap((block) => {
    const own = block.type === 'prose' ? null : block.when;
    const inside = own ? [...outer, own.value] : outer;
    const template = block.type === 'template' ? guide.templates.get(block.template.value) : undefined;
    return [
      ...placed(own, outer, { kind: 'block', step, block }),
      ...(template
        ? conditionalsOf(template).flatMap(({ when }) =>
            placed(when, inside, { kind: 'feature', step, template }),
          )
        : []),
      ...prosesOf(block).flatMap((prose) => inProse(prose, inside, { kind: 'words', step, block })),
    ];
  });
}

function inProse(prose: Prose, outer: readonly When[], on: ConditionOn): readonly ConditionPlace[] {
  return prose.flatMap((node): readonly ConditionPlace[] => {
    if (node.type === 'text') return [];
    if (node.type === 'element') return inProse(node.children, outer, on);
    if (node.type !== 'where') return placed(node.when, outer, on);
    return [{ when: node.when, outer, on }, ...inProse(node.children, [...outer, node.when.value], on)];
  });
}

function placed(
  when: Written<When> | null,
  outer: readonly When[],
  on: ConditionOn,
): readonly ConditionPlace[] {
  return when ? [{ when, outer, on }] : [];
}
