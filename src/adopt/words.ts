import { isDoubtful, isVerb } from '../checks/language/verbs.ts';
import { type SignalWord, signalWords } from '../trade/signal-words.ts';

/** Numbers that are written as words. English alone is read. */
const numberWords = 'zero one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** A whole number as it is written: `4`, `four`, `both`, `a`; `null` where it is none. */
export function numberWritten(text: string): number | null {
  const word = text.toLowerCase();
  if (word === 'both' || word === 'a pair of') return 2;
  if (word === 'a' || word === 'an' || word === 'single') return 1;
  const index = numberWords.indexOf(word);
  if (index >= 0) return index;
  return /^\d{1,3}$/.test(word) ? Number(word) : null;
}

/** Written numbers, for use within a pattern. */
export const numberPattern = `\\d{1,3}|${numberWords.slice(1).join('|')}`;

/** What stands before an item of a list, and what follows it. */
interface Marker {
  readonly numbered: boolean;
  /** Whether it says "step" itself. */
  readonly step: boolean;
  readonly rest: string;
}

/** The number or dot with which a line begins: `3.`, `3)`, `(3)`, `a)`, `Step 3 -`, `•`, `-`; `null` where it has none. */
export function markerOf(text: string): Marker | null {
  const step = /^\s*step\s+(?:\d{1,3}|[a-z])\s*(?:[-–—:.)]+\s*|\s)(\S.*)$/is.exec(text)?.[1];
  if (step !== undefined) return { numbered: true, step: true, rest: step };
  const number = /^\s*(?:\d{1,2}(?:\.\d{1,2})*[.)]|\(\d{1,2}\)|\(?[a-z]\))\s+(\S.*)$/is.exec(text)?.[1];
  if (number !== undefined) return { numbered: true, step: false, rest: number };
  const dot = /^\s*[•·●○▪■◦*\-–—]\s+(\S.*)$/s.exec(text)?.[1];
  return dot === undefined ? null : { numbered: false, step: false, rest: dot };
}

/** How a safety message, or a note, begins. */
export interface Signal {
  /** `important` and its like are no signal words: what they are is for the author to say. */
  readonly word: SignalWord | 'note' | 'important';
  readonly rest: string;
}

const signal =
  /^\W*(danger|warning|caution|notice|note|nb|important|attention)\b(\s*[:!.–—-]+\s*|\s*$|\s+)(.*)$/is;

/**
 * The signal word with which a text begins. Without a mark after it, it must stand in capitals, or be set off in bold
 * (`lead`): "Note the length" is none.
 */
export function signalOf(text: string, lead = ''): Signal | null {
  const [, written = '', mark = '', rest = ''] = signal.exec(text) ?? [];
  if (written === '') return null;
  const setOff = mark.trim() !== '' || rest === '' || lead.replace(/\W+$/, '') === written;
  if (!setOff && written !== written.toUpperCase()) return null;
  const word = written.toLowerCase();
  const known = signalWords.find((one) => one === word);
  if (known) return { word: known, rest };
  return { word: word === 'note' || word === 'nb' ? 'note' : 'important', rest };
}

/** Whether a text begins as a safety message or a note does. */
export function isSignal(text: string): boolean {
  return signalOf(text) !== null;
}

/** What stands under a heading. `needs` mixes tools with what is used up. */
export type SectionKind = 'kit' | 'tools' | 'supplies' | 'wear' | 'needs' | 'prove' | 'work';

const kinds: readonly (readonly [RegExp, SectionKind])[] = [
  [/\btools?\b.*(?:\band\b|&|\/|,).*\b(?:materials?|supplies|consumables|equipment)\b/, 'needs'],
  [/\b(?:you(?:'|’)?(?:ll| will)? need|needed|required (?:items|equipment))$|^equipment\b/, 'needs'],
  [/^(?:required |special |recommended )?tools?\b(?!.*\b(?:tray|box|drawer)\b)/, 'tools'],
  [/^(?:materials?|consumables|supplies)\b/, 'supplies'],
  [/\b(?:ppe|protective (?:equipment|gear|clothing)|safety (?:equipment|gear))\b/, 'wear'],
  [
    /\bcontents?\b(?! of the (?:guide|sheet))|\bin the box\b|what you get|what(?:'|’| i)?s (?:supplied|included)|^parts(?: list| supplied| included)?$|^(?:supplied|included|components|hardware)(?: parts| supplied)?$|^bill of materials$|^kit list$/,
    'kit',
  ],
  [
    /^(?:final |function(?:al)? |last )?(?:checks?|tests?|testing|inspection)$|^checks? before\b|^before (?:handing|the (?:van|car|vehicle) leaves)/,
    'prove',
  ],
];

/** What a heading announces; `null` where its words are none of those that are known. */
function announced(heading: string): SectionKind | null {
  const words = bareHeading(heading).toLowerCase();
  return kinds.find(([pattern]) => pattern.test(words))?.[1] ?? null;
}

const workWords =
  /^(?:fitting|installation|installing|removal|removing|procedure|method|instructions?|fitting instructions|installation instructions|assembly|dismantling|disassembly|reassembly|refitting|preparation|steps?|wiring|aftercare|finishing|introduction)$/i;

/** What stands under a heading: work, unless it announces a list. */
export function sectionKind(heading: string): SectionKind {
  return announced(heading) ?? 'work';
}

/** Whether a line that looks like any other is a heading by its words alone. */
export function knownHeading(line: string): boolean {
  const words = bareHeading(line);
  if (words.split(' ').length > 4 || /[.,;!?]$/.test(words) || /\d/.test(words)) return false;
  return workWords.test(words) || announced(words) !== null;
}

/** A heading without the number before it and the colon after it. */
export function bareHeading(text: string): string {
  return text
    .trim()
    .replace(/^(?:\d{1,2}(?:\.\d{1,2})*[.)]?|[A-Z][.)])\s+(?=\S)/, '')
    .replace(/\s*:$/, '');
}

/** A text in capitals as a sentence has it; a word with a figure in it, or of up to three letters alone, stays. */
export function withoutShouting(text: string): string {
  if (text !== text.toUpperCase() || !/\p{Lu}{4}/u.test(text)) return text;
  const words = text
    .split(' ')
    .map((word) => (/\d/.test(word) || /^[B-Z]$/.test(word) ? word : word.toLowerCase()));
  const all = words.join(' ');
  return all.charAt(0).toUpperCase() + all.slice(1);
}

/** The words by which a sentence joins the one before it. */
export const openers =
  /^(?:(?:first(?:ly)?|then|next|now|finally|lastly|afterwards|after that|carefully|gently|slowly|again|please|also)\b[,\s]*)+/i;
/** A condition or a means before the command, and the command. */
export const framed =
  /^(?:with|using|from|on|at|in|if|when|once|after|before|while|to|working)\b[^.;]{2,80}?,\s*(.*)$/is;

/** Whether a sentence tells what to do: "Remove …", "Then lift …", "With a helper, lift …". */
export function isInstruction(sentence: string): boolean {
  const text = sentence.trim().replace(openers, '');
  const [, after] = framed.exec(text) ?? [];
  return beginsWithVerb(text) || (after !== undefined && beginsWithVerb(after.replace(openers, '')));
}

function beginsWithVerb(text: string): boolean {
  const [first = '', second = ''] = text.toLowerCase().match(/[\p{L}’'-]+|\d+/gu) ?? [];
  if (!isVerb(first)) return /^(?:do not|don['’]t|never)\b/i.test(text);
  return !isDoubtful(first) || objects.test(second) || numberWritten(second) !== null;
}

const objects =
  /^(?:the|a|an|all|any|both|each|every|it|them|this|these|up|down|in|into|on|onto|out|off|back|over|through|for|with|to|along|under|from|until|free)$/;

/** The sentences of a text; a full stop after a short form, or between figures, ends none. */
export function sentencesIn(text: string): readonly string[] {
  const sentences: string[] = [];
  let from = 0;
  for (const { index, 0: mark } of text.matchAll(/[.!?]+["”’)\]]*(?=\s+["“‘(]?[\p{Lu}\p{N}])/gu)) {
    const so = text.slice(from, index + mark.length);
    if (/(?:^|[\s(])(?:e\.g|i\.e|etc|approx|nos?|fig|min|max|vs|incl|ref|qty|dia)\.$/i.test(so)) continue;
    sentences.push(so.trim());
    from = index + mark.length;
  }
  const rest = text.slice(from).trim();
  return rest === '' ? sentences : [...sentences, rest];
}
