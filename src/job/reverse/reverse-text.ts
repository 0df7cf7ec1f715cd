import type { Block } from '../../model/block.ts';
import type { Step } from '../../model/guide.ts';
import type { Inline, Prose, ProseElement, ProseNode } from '../../model/prose.ts';
import type { When } from '../../model/when.ts';
import type { Span, Written } from '../../source/span.ts';
import type { Undone } from './undo.ts';

/** The text of a derived step: its source's safety messages and refit notes, then a sentence an action. */
export function derivedBlocks(step: Step, undone: readonly Undone[], at: Span): readonly Block[] {
  const messages = step.blocks.filter(({ type }) => type === 'message');
  const notes = step.blocks.flatMap((block): Block[] =>
    block.type === 'refit-note'
      ? [{ type: 'prose', content: block.when ? narrowed(block.body, block.when) : block.body, at: block.at }]
      : [],
  );
  const sentences = undone.flatMap((one, index) => (index === 0 ? sentence(one) : [space, ...sentence(one)]));
  const paragraph: Block = { type: 'prose', content: [element('p', sentences)], at };
  return [...messages, ...notes, paragraph];
}

const space: Prose[number] = { type: 'text', value: ' ', at: null };

function sentence({ action, whens }: Undone): Prose {
  // A sequence is one sentence: only its first fastener says it.
  const further = action.inSequence !== null && action.inSequence.place > 0;
  const words: Prose = further ? [action] : [action, { type: 'text', value: '.', at: null }];
  return whens.reduceRight<Prose>((inner, when) => [where({ value: when, at: when.at }, inner)], words);
}

/** Prose that stands only for some builds: the condition goes into each paragraph and list item. */
function narrowed(prose: Prose, when: Written<When>): Prose {
  return prose.map((node) => {
    if (node.type !== 'element') return where(when, [node]);
    if (['p', 'td', 'th'].includes(node.tagName)) return { ...node, children: [where(when, node.children)] };
    const holdsBlocks = node.children.some((child) => child.type === 'element' && isBlock(child));
    if (node.tagName === 'li' && !holdsBlocks) return { ...node, children: [where(when, node.children)] };
    return isBlock(node) ? { ...node, children: narrowed(node.children, when) } : where(when, [node]);
  });
}

function isBlock(node: ProseElement<Inline>): boolean {
  return /^(?:p|ul|ol|li|blockquote|table|thead|tbody|tr|td|th)$/.test(node.tagName);
}

function where(when: Written<When>, children: Prose): ProseNode<Inline> {
  return { type: 'where', when, children, at: when.at };
}

function element(tagName: string, children: Prose): ProseElement<Inline> {
  return { type: 'element', tagName, properties: {}, children, at: null };
}
