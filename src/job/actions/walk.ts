import type { Block } from '../../model/block.ts';
import type { Guide, Section, Step } from '../../model/guide.ts';
import type { Action, Mention } from '../../model/inline.ts';
import type { Prose } from '../../model/prose.ts';
import type { When } from '../../model/when.ts';
import type { Written } from '../../source/span.ts';
import { oncePer } from '../once.ts';

/** A mention or an action where it stands, with everything that must hold for it to be read. */
export interface Placed<N> {
  readonly node: N;
  readonly block: Block;
  /** Conditions of its step, block, `:where` and of itself, outermost first; not those of the item. */
  readonly whens: readonly When[];
}

type Found = { readonly node: Action | Mention; readonly whens: readonly When[] };

/** Every mention and action of some prose, in the order of the text. */
export function inlinesOf(prose: Prose, whens: readonly When[] = []): readonly Found[] {
  const found = inlinesWithin(prose);
  return whens.length === 0
    ? found
    : found.map(({ node, whens: own }) => ({ node, whens: [...whens, ...own] }));
}

const inlinesWithin = oncePer((prose: Prose) => prose.flatMap((node) => inlinesIn(node)));

function inlinesIn(node: Prose[number]): readonly Found[] {
  switch (node.type) {
    case 'text':
      return [];
    case 'element':
      return inlinesOf(node.children);
    case 'where':
      return inlinesOf(node.children, [node.when.value]);
    case 'mention':
    case 'action':
      return [{ node, whens: also([], node.when) }];
  }
}

/** Every mention and action of some blocks, in the order of the text. */
export function placedIn(
  blocks: readonly Block[],
  whens: readonly When[] = [],
): readonly Placed<Action | Mention>[] {
  return blocks.flatMap((block) => {
    const around = block.type === 'prose' ? whens : also(whens, block.when);
    return prosesOf(block).flatMap((prose) => inlinesOf(prose, around).map((found) => ({ ...found, block })));
  });
}

/** The conditions under which a step is done. */
export function stepWhens(step: Step): readonly When[] {
  return also([], step.when);
}

/** What a step mentions and does, in the order of the text. */
export const placedInStep: (step: Step) => readonly Placed<Action | Mention>[] = oncePer((step) =>
  placedIn(step.blocks, stepWhens(step)),
);

/** What a step does, in the order of doing: what its sentences and its safety messages ask for. */
export const actionsOf: (step: Step) => readonly Placed<Action>[] = oncePer((step) =>
  placedInStep(step).flatMap(({ node, block, whens }) =>
    node.type === 'action' && tells(block) ? [{ node, block, whens }] : [],
  ),
);

/** Whether the sentences of a block tell the technician what to do. */
export function tells(block: Block): boolean {
  return block.type === 'prose' || block.type === 'message' || block.type === 'prove';
}

/** Every step of a guide, in order. */
export function stepsOf({ sections }: Pick<Guide, 'sections'>): readonly Step[] {
  return stepsIn(sections);
}

const stepsIn = oncePer((sections: readonly Section[]) => sections.flatMap(({ steps }) => steps));

/** Every `:::prove` of a guide, in order. */
export function provesOf(guide: Pick<Guide, 'sections'>): readonly Block[] {
  const blocks = (section: Section) => [...section.intro, ...section.steps.flatMap((step) => step.blocks)];
  return guide.sections.flatMap(blocks).filter((block) => block.type === 'prove');
}

/** The runs of prose that a block is made of, in the order in which they are read. */
export function prosesOf(block: Block): readonly Prose[] {
  switch (block.type) {
    case 'prose':
      return [block.content];
    case 'message':
      return [block.hazard, block.body];
    case 'note':
    case 'why':
    case 'owner':
      return [block.title ?? [], block.body];
    case 'refit-note':
      return [block.body];
    case 'figure':
      return [block.caption, ...block.marks.map((mark) => mark.text), block.body];
    case 'photo':
      return [block.shows];
    case 'template':
      return [];
    case 'prove':
      return [block.title, block.body];
  }
}

function also(whens: readonly When[], more: Written<When> | null): readonly When[] {
  return more ? [...whens, more.value] : whens;
}
