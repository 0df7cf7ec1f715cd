import type { Drive } from '../drives.ts';
import { signalPanel, signalWords } from '../signal-words.ts';
import { driveTerms } from './glossary-drives.ts';
import { fastenerTerms } from './glossary-fasteners.ts';
import type { GlossaryTerm } from './glossary-term.ts';

export type { FastenerShape, GlossaryTerm } from './glossary-term.ts';

const signalTerms = signalWords.map((word) => ({
  id: word,
  term: word.toUpperCase(),
  meaning: `${word === 'notice' ? 'Practice' : 'A hazard'} that ${signalPanel(word, 'ansi').meaning}.`,
  standard: 'ANSI Z535.6',
  readIn: 'safetylabel.com, electromark.com',
  synonyms: [],
  word,
}));

/** Every drive, kind of fastener and signal word with its meaning. */
export const glossary: readonly GlossaryTerm[] = [
  ...driveTerms.map((term) => ({ kind: 'drive' as const, ...term })),
  ...fastenerTerms.map((term) => ({ kind: 'fastener' as const, ...term })),
  ...signalTerms.map((term) => ({ kind: 'signal-word' as const, ...term })),
];

/** The standard of an entry as it is printed: one whose number nobody looked up says so. */
export function standardWords({ standard, readIn }: GlossaryTerm): string | null {
  return standard === null || readIn !== null ? standard : `${standard} (from memory, not checked)`;
}

/** Whether an entry is about this drive, whatever its size. */
export function isTermOf(term: GlossaryTerm, drive: Drive): boolean {
  if (term.kind !== 'drive' || term.example.kind !== drive.kind) return false;
  return drive.kind !== 'cross' || (term.example.kind === 'cross' && term.example.form === drive.form);
}

/** The entry of a drive. */
export function termOfDrive(drive: Drive): GlossaryTerm {
  const found = glossary.find((term) => isTermOf(term, drive));
  if (!found) throw new Error(`the glossary has no entry for the drive ${drive.kind}`);
  return found;
}

/** Everything that a drive of a size is called: "Hexalobular recess 25", "torx 25"; the bare names without a size. */
export function namesOfDrive(drive: Drive): readonly string[] {
  const { term, synonyms, tradeMarks = [] } = termOfDrive(drive);
  const size = 'across' in drive ? ` ${drive.size}` : 'number' in drive ? ` ${drive.number}` : '';
  return [term, ...synonyms, ...tradeMarks].map((name) => name + size);
}
