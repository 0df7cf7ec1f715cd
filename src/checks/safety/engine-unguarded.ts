import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Block } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { Prose } from '../../model/prose.ts';
import type { Span } from '../../source/span.ts';
import { sentencesOf } from '../language/sentences.ts';
import { isWritten } from '../language/written.ts';
import type { Rule } from '../rule.ts';

const message =
  ':::warning[Exhaust gas]\nExhaust gas in a closed room kills. Put the extraction on the tailpipe, pull the parking brake on and chock the wheels.\n:::\n\n';

const guide = (before: string) =>
  `## Prove it {#prove}\n\n${before}:::prove[Charging]\n- With the engine running, the voltage rises\n:::`;

const card: RuleCard = {
  code: 'engine-unguarded',
  severity: 'warning',
  title: 'The engine runs, and nothing before it says where the exhaust goes',
  why: 'Exhaust gas in a bay makes drowsy before it is smelt, and kills. A vehicle whose engine runs may move off. Put the extraction on first, pull the brake on and chock the wheels (common practice, no source).',
  bad: guide(''),
  good: guide(message),
};

/** Where a step or a proof lets the engine run, a safety message before it speaks of the exhaust. */
export const engineUnguarded: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { intro, steps } of guide.sections) {
      const blocks = [...intro, ...steps.filter(isWritten).flatMap((step) => step.blocks)];
      const first = blocks.findIndex((block) => runsIn(block, guide) !== null);
      const block = blocks[first];
      const at = block && runsIn(block, guide);
      if (!at || blocks.slice(0, first).some((one) => speaksOfExhaust(one, guide))) continue;
      const message =
        'the engine runs here, and no safety message of this section before it says where the exhaust goes; say so, with what keeps the vehicle still, or do it with the engine off';
      report(finding(card, at, message));
    }
  },
};

const running =
  /\b(?:start|run|rev|idle) (?:up )?(?:the |its )?engine\b|\bengine (?:is )?(?:running|runs|idling|idles|ticking over)\b/;
const exhaust = /\b(?:exhaust|fumes|extraction|extractor|carbon monoxide|outdoors|open air)\b/;

/** Where a block lets the engine run; `null` where it does not. */
function runsIn(block: Block, guide: Guide): Span | null {
  if (block.type !== 'prose' && block.type !== 'prove') return null;
  const prose: Prose = block.type === 'prose' ? block.content : block.body;
  const found = sentencesOf(prose, guide, null).find(({ words }) => {
    const text = words.map((word) => word.text).join(' ');
    return running.test(text) && !/\b(?:never|not|no)\b/.test(text) && !exhaust.test(text);
  });
  return found?.at ?? null;
}

function speaksOfExhaust(block: Block, guide: Guide): boolean {
  if (block.type !== 'message') return false;
  const sentences = [block.hazard, block.body].flatMap((prose) => sentencesOf(prose, guide, null));
  return exhaust.test(sentences.flatMap(({ words }) => words.map(({ text }) => text)).join(' '));
}
