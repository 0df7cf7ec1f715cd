import type { Block, SafetyMessage } from '../../model/block.ts';
import type { Guide, Section, Step } from '../../model/guide.ts';
import { type Sentence, sentencesOf } from '../language/sentences.ts';
import { isWritten } from '../language/written.ts';

/** A safety message with where its author put it. */
export interface WrittenMessage {
  readonly message: SafetyMessage;
  readonly section: Section;
  /** `null` for a message that guards its section. */
  readonly step: Step | null;
}

/** Every safety message of a guide that an author wrote, in the order of the text. */
export function messagesWritten(guide: Guide): readonly WrittenMessage[] {
  return guide.sections.flatMap((section) => [
    ...messagesIn(section.intro).map((message) => ({ message, section, step: null })),
    ...section.steps
      .filter(isWritten)
      .flatMap((step) => messagesIn(step.blocks).map((message) => ({ message, section, step }))),
  ]);
}

/** The sentences that say what happens and how to avoid it. */
export function bodyOf({ message, step }: WrittenMessage, guide: Guide): readonly Sentence[] {
  return sentencesOf(message.body, guide, step?.side?.value ?? null);
}

/** Hazard and text as printed, in lower case and without marks, for comparing. */
export function comparableWords(written: WrittenMessage, guide: Guide): string {
  const hazard = sentencesOf(written.message.hazard, guide, null);
  const words = [...hazard, ...bodyOf(written, guide)].flatMap((sentence) => sentence.words);
  return words.map(({ text }) => text).join(' ');
}

function messagesIn(blocks: readonly Block[]): readonly SafetyMessage[] {
  return blocks.flatMap((block) => (block.type === 'message' ? [block] : []));
}
