import type { Block, SafetyMessage } from '../model/block.ts';
import type { Guide } from '../model/guide.ts';
import type { PlacedMessage } from '../model/job.ts';
import type { Build } from '../model/when.ts';
import type { SignalWord } from '../trade/signal-words.ts';
import { sectionsOf } from './actions/uses.ts';
import { allHold } from './builds/when.ts';

/** How grave a word is, after ANSI Z535.6: danger first. */
const gravity: { readonly [W in SignalWord]: number } = { danger: 0, warning: 1, caution: 2, notice: 3 };

/**
 * The safety messages of a build, most severe word first, then in the order of the text. A message that a
 * derived step repeats from its source stands once.
 */
export function messagesOf(guide: Guide, build: Build): readonly PlacedMessage[] {
  const found: PlacedMessage[] = sectionsOf(guide, build).flatMap((section) => [
    ...messagesIn(section.intro, build).map((message) => ({ message, section: section.id, step: null })),
    ...section.steps.flatMap((step) =>
      messagesIn(step.blocks, build).map((message) => ({ message, section: section.id, step: step.id })),
    ),
  ]);
  const once = new Map<string, PlacedMessage>();
  for (const placed of found) {
    const { file, start } = placed.message.at;
    const key = `${file}\n${start}`;
    if (!once.has(key)) once.set(key, placed);
  }
  return [...once.values()].sort((a, b) => gravity[a.message.word] - gravity[b.message.word]);
}

function messagesIn(blocks: readonly Block[], build: Build): readonly SafetyMessage[] {
  return blocks.flatMap((block) =>
    block.type === 'message' && (block.when === null || allHold([block.when.value], build)) ? [block] : [],
  );
}
