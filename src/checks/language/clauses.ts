import type { Sentence, Word } from './sentences.ts';
import { isDoubtful, isParticiple, isPerception, isThirdPerson, isVerb } from './verbs.ts';

const leadIns = wordSet(
  'then next now first finally again also afterwards please only always lastly and or but never carefully',
);
const openers = wordSet(
  `if when once unless before after while where until with from on in at behind under for to without by between
  along above below inside outside over as beginning starting working since because whenever near through across
  against during`,
);
const conditions = wordSet('if when unless whenever provided');
const coordinators = wordSet('and or then but');
/** Words after a doubtful verb that show it to be one: "tape the edge", "cut it", "turn back". */
const objects = wordSet(
  `the a an each every both all any no it them its their this that these those one two three four five six seven
  eight nine ten up down off out on in into onto over under round around back aside away apart together along
  with from to by for at through behind between against across of and or then until whether if when once slowly
  gently fully only first twice square your old new`,
);
/** Words that end a command: what follows belongs to what is looked at or waited for. */
const subordinators = wordSet('that which who whether because since until so before after where while how');
const subjects = wordSet('the it you he she they both all each every a an this these your');
const agents = wordSet('technician mechanic fitter helper installer operator person assistant worker user');
const modals = wordSet('must should shall can may will could might need needs have has ought');
const adverbsOfOrder = wordSet('then now next first finally afterwards subsequently');

/** Where the instructions of a sentence begin, by position of their verbs; empty for what only tells. */
export function instructionsOf({ words }: Sentence): readonly number[] {
  const first = mainStart(words);
  const head = verbAt(words, first);
  if (head === null) return [];
  const found = [head];
  for (let index = head + 1; index < words.length; index += 1) {
    if (!startsClause(words, index)) continue;
    const verb = verbAt(words, index);
    if (verb !== null && !found.includes(verb)) found.push(verb);
  }
  return found;
}

/** Whether a sentence tells what is to be done without telling anybody to do it. */
export function ordersIndirectly(sentence: Sentence): boolean {
  const { words } = sentence;
  if (instructionsOf(sentence).length > 0) return false;
  const text = words.slice(mainStart(words)).map((word) => word.text);
  return recommends(text) || mustBeDone(text) || isDoneNext(text) || somebodyDoes(text);
}

/** Where a condition follows the command that it is for; `null` where none does. */
export function lateCondition(sentence: Sentence): number | null {
  const { words } = sentence;
  const instructions = instructionsOf(sentence);
  for (const [index, word] of words.entries()) {
    const command = instructions.findLast((verb) => verb < index);
    if (command === undefined || !isCondition(words, index)) continue;
    const between = words.slice(command, index).map(({ text }) => text);
    if (between.some((text) => subordinators.has(text) || conditions.has(text))) continue;
    if (isPerception(between[0] ?? '') || word.acts) continue;
    if (startsClause(words, index) && instructions.some((verb) => verb > index)) continue;
    return index;
  }
  return null;
}

function isCondition(words: readonly Word[], index: number): boolean {
  const [text, before, after] = [
    words[index]?.text ?? '',
    words[index - 1]?.text,
    words[index + 1]?.text ?? '',
  ];
  if (text === 'once') return before !== 'at' && subjects.has(after);
  if (text === 'in') return after === 'case';
  if (text === 'as') return after === 'soon';
  if (before === 'even' || before === 'as') return false;
  return conditions.has(text) && !(text === 'if' && /^(?:needed|necessary|possible|fitted)$/.test(after));
}

/** Where the main clause begins: after the phrase or the condition that opens the sentence. */
function mainStart(words: readonly Word[]): number {
  const first = words[0];
  if (!first || first.acts || verbAt(words, 0) !== null) return 0;
  const afterCommas = words.flatMap(({ mark }, index) => (mark === ',' ? [index + 1] : []));
  const command = afterCommas.find((index) => verbAt(words, index) !== null);
  const [afterLeadIn] = afterCommas;
  if (openers.has(first.text)) return command ?? afterLeadIn ?? 0;
  // "Square to the curve, start the saw": a phrase that says how, and has no verb of its own.
  const opening = words.slice(0, command ?? 0).map(({ text }) => text);
  const tells = opening.some(
    (text) => /^(?:is|are|was|were|must|can|has|have|will)$/.test(text) || isThirdPerson(text),
  );
  if (command !== undefined && !tells && !subjects.has(first.text)) return command;
  return leadIns.has(first.text) && afterLeadIn === 1 ? 1 : 0;
}

/** The position of the verb of a command that begins at a word; `null` where none does. */
function verbAt(words: readonly Word[], from: number): number | null {
  let index = from;
  while (!words[index]?.acts && isLeadIn(words, index)) index += 1;
  const word = words[index];
  if (!word) return null;
  if (word.acts) return index;
  if (word.text === "don't") return index;
  if (word.text === 'do' && words[index + 1]?.text === 'not') return index;
  if (!isVerb(word.text)) return null;
  return isDoubtful(word.text) && !takesObject(words, index) ? null : index;
}

/** Words that may stand before the verb of a command: "then", "slowly", "only then". */
function isLeadIn(words: readonly Word[], index: number): boolean {
  const text = words[index]?.text ?? '';
  return leadIns.has(text) || (/ly$/.test(text) && !isVerb(text));
}

function takesObject(words: readonly Word[], index: number): boolean {
  const [word, next] = [words[index], words[index + 1]];
  if (!word) return false;
  if (word.mark !== '') return true;
  if (!next) return index === 0 && words.length === 1;
  return (
    objects.has(next.text) ||
    /^\d/.test(next.text) ||
    next.acts ||
    (/ly$/.test(next.text) && !isVerb(next.text))
  );
}

function startsClause(words: readonly Word[], index: number): boolean {
  const before = words[index - 1];
  return before !== undefined && (before.mark !== '' || coordinators.has(before.text));
}

/** "It is necessary to …", "we recommend …". */
function recommends(text: readonly string[]): boolean {
  const opening = text.slice(0, 5).join(' ');
  return /^(?:it is (?:necessary|important|essential|recommended|advisable|best)|we (?:recommend|suggest|advise|ask))\b/.test(
    opening,
  );
}

/** "… must be lifted", "… need to be started". */
function mustBeDone(text: readonly string[]): boolean {
  return text.some((word, index) => {
    if (word !== 'be' || !text.slice(Math.max(0, index - 4), index).some(isDuty)) return false;
    return text.slice(index + 1, index + 3).some(isParticiple);
  });
}

function isDuty(word: string): boolean {
  return modals.has(word) && !/^(?:can|may|will|could|might)$/.test(word);
}

/** "… are then tightened". */
function isDoneNext(text: readonly string[]): boolean {
  return text.some((word, index) => {
    if (word !== 'is' && word !== 'are') return false;
    return adverbsOfOrder.has(text[index + 1] ?? '') && isParticiple(text[index + 2] ?? '');
  });
}

/** "You can now take …", "the technician removes …". */
function somebodyDoes(text: readonly string[]): boolean {
  const start = text.findIndex((word) => !leadIns.has(word));
  const [subject = '', agent = ''] = text.slice(start);
  if (subject === 'you' || subject === 'we') {
    const verb = text
      .slice(start + 1, start + 6)
      .find((word) => isVerb(word) && word !== 'have' && word !== 'need');
    return verb !== undefined && !isPerception(verb);
  }
  return (
    agents.has(agent) &&
    text.slice(start + 2, start + 4).some((word) => isThirdPerson(word) || modals.has(word))
  );
}

function wordSet(words: string): ReadonlySet<string> {
  return new Set(words.trim().split(/\s+/));
}
