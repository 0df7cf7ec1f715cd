import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { stepsOf } from '../../job/index.ts';
import type { Block } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Rule } from '../rule.ts';
import { type Sentence, sentencesOf } from './sentences.ts';
import { isWritten } from './written.ts';

/** Which sentences a rule judges: those that tell the job step by step, or those of the notes. */
type Of = 'steps' | 'notes';

/**
 * A rule about plain language, which a shop may switch off by its code or with all others of its kind. It reads
 * the sentences as they are printed; safety messages, captions and proving lists are not judged, nor is what
 * Baybook wrote itself.
 *
 * @param judge the message, or `null` for a sentence that is as it should be
 */
export function languageRule(card: RuleCard, of: Of, judge: (sentence: Sentence) => string | null): Rule {
  return {
    card,
    run: ({ guide, shop }, report) => {
      const { off } = shop.settings.plainLanguage;
      if (off.has(card.code) || off.has('plain-language')) return;
      for (const sentence of sentencesIn(guide, of)) {
        const message = judge(sentence);
        if (message !== null) report(finding(card, sentence.at, message));
      }
    },
  };
}

function sentencesIn(guide: Guide, of: Of): readonly Sentence[] {
  const inSteps = stepsOf(guide)
    .filter(isWritten)
    .flatMap((step) => sentencesOfBlocks(step.blocks, step, guide, of));
  if (of === 'steps') return inSteps;
  const outside = [...guide.opening, ...guide.sections.flatMap(({ intro }) => intro)];
  return [...sentencesOfBlocks(outside, null, guide, of), ...inSteps];
}

function sentencesOfBlocks(
  blocks: readonly Block[],
  step: Step | null,
  guide: Guide,
  of: Of,
): readonly Sentence[] {
  return blocks.flatMap((block) => {
    const side = step?.side?.value ?? null;
    if (of === 'notes') return block.type === 'note' ? sentencesOf(block.body, guide, side) : [];
    if (block.type === 'prose') return sentencesOf(block.content, guide, side);
    return block.type === 'refit-note' ? sentencesOf(block.body, guide, side) : [];
  });
}
