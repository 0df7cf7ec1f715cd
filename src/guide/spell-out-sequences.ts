import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Block } from '../model/block.ts';
import type { Inline, Prose, ProseNode } from '../model/prose.ts';
import type { Sequence } from '../model/sequence.ts';
import type { DraftSection } from './draft.ts';
import { isStep } from './draft.ts';
import { sequenceAction } from './rules/sequence-action.ts';

type Sequences = ReadonlyMap<string, Sequence>;

/**
 * Puts in the place of every action on a sequence the actions on its fasteners, in order, so that each is counted,
 * logged and held against its tools like any other.
 */
export function spellOutSequences(
  sections: readonly DraftSection[],
  sequences: Sequences,
  report: Report,
): readonly DraftSection[] {
  if (sequences.size === 0) return sections;
  const spell = (prose: Prose): Prose => prose.flatMap((node) => spelled(node, sequences, report));
  return sections.map((section) => ({
    ...section,
    entries: section.entries.map((entry) =>
      isStep(entry) ? { ...entry, blocks: entry.blocks.map((block) => inBlock(block, spell)) } : entry,
    ),
  }));
}

/** An action stands in what tells the technician what to do, here or when the step is reversed. */
function inBlock(block: Block, spell: (prose: Prose) => Prose): Block {
  if (block.type === 'prose') return { ...block, content: spell(block.content) };
  return block.type === 'message' || block.type === 'refit-note'
    ? { ...block, body: spell(block.body) }
    : block;
}

function spelled(node: ProseNode<Inline>, sequences: Sequences, report: Report): Prose {
  if (node.type === 'element' || node.type === 'where') {
    return [{ ...node, children: node.children.flatMap((child) => spelled(child, sequences, report)) }];
  }
  const sequence = node.type === 'action' ? sequences.get(node.target.value) : undefined;
  if (node.type !== 'action' || !sequence) return [node];
  if (node.verb !== 'tighten' && node.verb !== 'loosen') {
    const message = `:${node.verb} names the sequence "${sequence.id}", which is only tightened and loosened; name its fasteners one by one`;
    report(finding(sequenceAction, node.at, message));
    return [];
  }
  return sequence.order.map((member, place) => ({
    ...node,
    target: { value: member.value, at: node.target.at },
    inSequence: { sequence: sequence.id, label: sequence.label, place, of: sequence.order.length },
  }));
}
