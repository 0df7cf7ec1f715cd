import type { Block } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { When } from '../../model/when.ts';

/** The conditions under which a template stands in the text, outermost first. */
export function placeOfTemplate({ opening, sections }: Guide, id: string): readonly When[] {
  const inBlocks = (blocks: readonly Block[]) =>
    blocks.find((block) => block.type === 'template' && block.template.value === id);
  const whens = (block: Block) => (block.type !== 'prose' && block.when ? [block.when.value] : []);
  const outside = inBlocks([...opening, ...sections.flatMap(({ intro }) => intro)]);
  if (outside) return whens(outside);
  for (const step of sections.flatMap(({ steps }) => steps)) {
    const inside = inBlocks(step.blocks);
    if (inside) return [...(step.when ? [step.when.value] : []), ...whens(inside)];
  }
  return [];
}
