import type { Fact, RecordLine } from '../record.ts';
import { type Comparison, changesWork, type GuideChange } from './compare.ts';
import type { ChangedLine } from './compare-lines.ts';
import { isMessage, meaningOf } from './meaning.ts';

/** What has changed of one thing, in a technician's words. */
export interface ToldChanges {
  readonly of: GuideChange['of'];
  readonly id: string;
  /** "Step 7, Free the cover", "M8 nut". */
  readonly heading: string;
  readonly lines: readonly ToldChange[];
}

/** One change in words: "torque 30 N·m (22.1 lbf·ft), was 25 N·m (18.4 lbf·ft)". */
interface ToldChange {
  readonly text: string;
  readonly touches: GuideChange['touches'];
  readonly usedIn: readonly string[];
}

/** A comparison in words: what changes the work, what is only worded otherwise, and ids, thing by thing. */
interface ToldComparison {
  readonly work: readonly ToldChanges[];
  readonly words: readonly ToldChanges[];
  /** What is under another id: "Liner screw: liner-screw is now arch-screw". */
  readonly renamed: readonly string[];
}

/** Tells a comparison in words. A refit that follows its strip-down is told with it. */
export function tellChanges({ changes, renamed }: Comparison): ToldComparison {
  const followers = new Map<string, GuideChange[]>();
  for (const change of changes) {
    if (change.follows !== null)
      followers.set(change.follows, [...(followers.get(change.follows) ?? []), change]);
  }
  const alone = changes.filter(({ follows }) => follows === null);
  const told = (some: readonly GuideChange[]): readonly ToldChanges[] => {
    const groups = new Map<string, GuideChange[]>();
    for (const change of some) {
      const key = `${change.of} ${change.id}`;
      groups.set(key, [...(groups.get(key) ?? []), change]);
    }
    return [...groups.values()].flatMap((group) => toldOf(group, followers));
  };
  return {
    work: told(alone.filter(changesWork)),
    words: told(alone.filter((change) => !changesWork(change)).filter(isTold)),
    renamed: renamed.map(({ name, from, to }) => `${name}: ${from} is now ${to}`),
  };
}

/** The forms that a label takes in a sentence follow it. */
function isTold({ fact }: GuideChange, _: number, all: readonly GuideChange[]): boolean {
  if (fact?.name !== 'called in a sentence') return true;
  return !all.some((one) => one.fact?.name === 'called');
}

function toldOf(
  group: readonly GuideChange[],
  followers: ReadonlyMap<string, readonly GuideChange[]>,
): readonly ToldChanges[] {
  const [first] = group;
  if (!first) return [];
  const lines = group.map((change) => ({
    text: changeWords(change),
    touches: change.touches,
    usedIn: change.usedIn,
  }));
  const own = first.of === 'step' ? (followers.get(first.id) ?? []) : [];
  const refits = [...new Set(own.filter((one) => group.some((led) => isLed(one, led))).map(stepWords))];
  const follow = refits.map((step) => ({
    text: `the same in what is worked out from it: ${step}`,
    touches: first.touches,
    usedIn: [],
  }));
  return [{ of: first.of, id: first.id, heading: headingOf(first), lines: [...lines, ...follow] }];
}

function isLed(one: GuideChange, lead: GuideChange): boolean {
  return one.what === lead.what && changesWork(one) === changesWork(lead);
}

function headingOf(change: GuideChange): string {
  switch (change.of) {
    case 'guide':
      return 'The guide';
    case 'section':
      return `Section “${change.name}”`;
    case 'step':
      return capital(stepWords(change));
    case 'sequence':
      return `Order of tightening “${change.name}”`;
    case 'template':
      return `Cut template “${change.name}”`;
    case 'item':
      return change.name;
  }
}

/** "step 7, “Free the cover”"; without its number where that differs between builds. */
function stepWords({ number, name }: Pick<GuideChange, 'number' | 'name'>): string {
  return number === null ? `step “${name}”` : `step ${number}, “${name}”`;
}

/** A change without the name of what has changed. */
export function changeWords(change: GuideChange): string {
  const { what, fact, line, after, whole } = change;
  if (what === 'added') return `added${afterWords(after)}${wholeWords(change)}`;
  if (what === 'taken out') return `taken out${wholeWords(change)}`;
  if (what === 'moved') return `moved: it is now ${after ? `after “${after}”` : 'the first step'}`;
  if (fact) return factWords(fact.name, fact.before, fact.after);
  if (line) return lineWords(line);
  return whole ? wholeWords(change) : 'the line to cut is another, by its drawing';
}

function afterWords(after: string | null): string {
  if (after === null) return '';
  return after === '' ? ' as the first step' : ` after “${after}”`;
}

/** What an item that is new or gone states, and what a step says. */
function wholeWords({ of, whole }: GuideChange): string {
  if (!whole) return '';
  if (of === 'item') {
    const facts = whole.facts.filter(({ name }) => !name.startsWith('called'));
    const kind = 'kind' in whole ? String(whole.kind) : '';
    return `: ${[kind, ...facts.map(({ name, says }) => `${name} ${says}`)].join(', ')}`;
  }
  const said = whole.lines.filter(({ kind }) => kind === 'prose' || isMessage({ kind }));
  return said.length === 0 ? '' : `: ${said.map(({ text }) => quoted(text)).join(' ')}`;
}

function factWords(name: string, before: Fact | null, after: Fact | null): string {
  const [old, now] = [before && printed(before.says), after && printed(after.says)];
  if (old === null) return `${name} ${now ?? ''} is new`;
  if (now === null) return `${name} ${old} is taken out`;
  if (old !== now) return `${name} ${now}, was ${old}`;
  return `${name} ${now}, of which another part is meant than before`;
}

/** A record has plain hyphens before its numbers; a reader is shown a minus. */
function printed(says: string): string {
  return says.replace(/(?<![\p{L}\p{N}])-(?=\d)/gu, '−');
}

const kindWords: ReadonlyMap<string, string> = new Map([
  ['prose', 'text'],
  ['why', 'reason'],
  ['owner', 'words for the owner'],
  ['photo', 'photograph'],
  ['prove', 'proof'],
  ['template', 'drawing of the template'],
]);

function lineWords({ before, after, moved }: ChangedLine): string {
  const line = after ?? before;
  if (!line) return '';
  const kind = kindWords.get(line.kind) ?? line.kind;
  if (!before) return `${kind} added: ${lineText(line)}`;
  if (!after) return `${kind} taken out: ${lineText(line)}`;
  const was = before.kind === after.kind ? '' : `, which was a ${kindWords.get(before.kind) ?? before.kind}`;
  const place = moved ? ' has changed places' : '';
  const facts = changedFactWords(before.facts, after.facts);
  if (before.text !== after.text && !isFeature(after)) {
    const [old, now] = differing(before.text, after.text);
    return [`${kind}${place}${was}: ${quoted(now)}, was ${quoted(old)}`, ...facts].join('; ');
  }
  const renamed = before.text === after.text ? '' : `, called ${quoted(before.text)} before`;
  const done = actWords(before, after);
  const all = [...facts, ...done];
  const told = all.length > 0 ? all.join('; ') : place === '' && was === '' ? 'the words for it' : '';
  // The one outline of a template has no other name.
  const name = after.text === kind ? kind : `${kind} ${quoted(shortened(after.text))}`;
  return `${name}${renamed}${was}${place}${told === '' ? '' : `: ${told}`}`;
}

function isFeature({ acts, facts, words, text }: RecordLine): boolean {
  return acts.length === 0 && facts.length > 0 && words === text;
}

function lineText(line: RecordLine): string {
  const facts = isFeature(line) ? line.facts.map(({ name, says }) => `${name} ${says}`) : [];
  return [quoted(line.text), ...facts].join(', ');
}

function changedFactWords(old: readonly Fact[], now: readonly Fact[]): readonly string[] {
  return [...new Set([...old, ...now].map(({ name }) => name))].flatMap((name) => {
    const before = old.find((one) => one.name === name) ?? null;
    const after = now.find((one) => one.name === name) ?? null;
    if (before && after && meaningOf(before) === meaningOf(after)) return [];
    return [name === 'picture' ? 'another picture, or other marks on it' : factWords(name, before, after)];
  });
}

/** What is done otherwise where the sentence reads as before: another tool, another build. */
function actWords(before: RecordLine, after: RecordLine): readonly string[] {
  if (before.acts.length !== after.acts.length) return [];
  return after.acts.flatMap((act, index) => {
    const old = before.acts[index];
    if (!old) return [];
    if (old.verb !== act.verb || old.target !== act.target) return ['it is another thing that is meant'];
    return changedFactWords(old.facts, act.facts);
  });
}

/** The sentences of two texts without those that they begin and end with alike. */
function differing(old: string, now: string): readonly [string, string] {
  const [some, others] = [sentences(old), sentences(now)];
  let head = 0;
  while (head < some.length - 1 && head < others.length - 1 && some[head] === others[head]) head += 1;
  let tail = 0;
  while (
    tail < some.length - head - 1 &&
    tail < others.length - head - 1 &&
    some.at(-1 - tail) === others.at(-1 - tail)
  )
    tail += 1;
  const kept = (all: readonly string[]) => all.slice(head, all.length - tail).join(' ');
  return [kept(some), kept(others)];
}

function sentences(text: string): readonly string[] {
  return text.split(/(?<=[.!?])\s+/);
}

/** Enough of a long text to find it by. */
function shortened(text: string): string {
  const [first = ''] = sentences(text);
  return first === text || first.length > 120 ? first : `${first} …`;
}

function quoted(text: string): string {
  return `“${text}”`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
