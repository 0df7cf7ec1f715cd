import { type Clause, clausesOf } from './clauses.ts';
import type { ToolFinder } from './crib-names.ts';
import type { DraftThing, Inventory } from './inventory.ts';
import { playClause, printedVerb } from './play.ts';
import { type FoundTorque, torquesIn } from './quantities.ts';
import { attribute, escaped } from './read/markdown-text.ts';

/** A step while its sentences are turned into the format. */
export interface StepAtWork {
  /** What its sentences spoke of last, for "them". */
  last: DraftThing | null;
  /** All fasteners that it spoke of. */
  readonly fasteners: Set<DraftThing>;
  /** A torque that a column of a table states for the step; `null` where it states none, or has been used. */
  torque: string | null;
}

/** What is known while a guide is drafted. */
export interface Desk {
  readonly inventory: Inventory;
  readonly findTools: ToolFinder;
  readonly hasKitList: boolean;
}

/** A sentence in the format, and what its author has to decide. */
interface Drafted {
  readonly text: string;
  /** Whether it prints other words than the old ones. */
  readonly changed: boolean;
  readonly doubts: readonly string[];
}

interface Change {
  readonly from: number;
  readonly to: number;
  readonly text: string;
}

/** Turns a sentence of a step into the format: actions where they are sure, tools by name; all else stays in its words. */
export function draftSentence(sentence: string, step: StepAtWork, desk: Desk): Drafted {
  const changes: Change[] = [];
  const doubts: string[] = [];
  const stated = torquesIn(sentence);
  const used = new Set<FoundTorque>();
  const clauses = clausesOf(sentence);
  const deeds = clauses.filter(({ kind }) => kind !== null);
  for (const clause of clauses) {
    const next = deeds.find((one) => one.from > clause.from)?.from ?? sentence.length;
    const torque = stated.find((one) => !used.has(one) && one.from >= clause.named.to && one.to <= next);
    const close = torque !== undefined && belongs(sentence.slice(clause.named.to, torque.from), clause);
    if (torque && close) used.add(torque);
    const asked = close ? torque?.torque : clause.kind === 'tighten' ? step.torque : undefined;
    const rest = sentence.slice(clause.named.to, next);
    const before = { last: step.last, rest, torque: asked ?? null };
    const played = playClause(clause, { ...desk, ...before });
    const { thing } = played;
    if (played.verb === null && played.doubt !== null) doubts.push(played.doubt);
    if (thing && clause.named.name !== 'both') step.last = thing;
    if (thing && ['kit', 'fastener'].includes(thing.kind) && isTurned(thing, clause))
      step.fasteners.add(thing);
    if (torque && close && torque.torque === null)
      doubts.push('one torque; a wrench is set to one, and the old words give two or a range');
    if (thing && asked) doubts.push(...stateTorque(thing, asked));
    if (clause.kind === 'tighten' && !close && thing && asked) step.torque = null;
    if (played.verb === null || !thing) continue;
    const end =
      played.verb === 'tighten' && torque?.torque && close ? pastTorque(sentence, clause, torque) : null;
    changes.push({
      from: clause.from,
      to: clause.named.to,
      text: actionText(played.verb, played.thing, clause, desk.inventory),
    });
    if (end) changes.push({ ...end, text: '' });
  }
  const lone = stated.find((one) => !used.has(one));
  if (lone) doubts.push(...stateAlone(lone, step));
  for (const { from, to, tool } of desk.findTools(sentence, false)) {
    const thing = desk.inventory.own(tool);
    if (changes.some((change) => from < change.to && change.from < to)) continue;
    const words = sentence.slice(from, to);
    const as = words === thing.noun ? '' : `{${attribute('as', words)}}`;
    changes.push({ from, to, text: `:${thing.kind}[${thing.id}]${as}` });
  }
  return { text: changed(sentence, changes), changed: changes.length > 0, doubts: [...new Set(doubts)] };
}

/** Whether a torque behind a thing is that of the thing: what is tightened, or what stands right before it. */
function belongs(between: string, { kind }: Clause): boolean {
  return kind === 'tighten' || /^\s*(?:\(|to|at|,|:|-|–)?\s*$/.test(between);
}

/** Whether a thing is what a torque may be meant for: "them" is, and whatever has the name of a fastener. */
function isTurned({ noun }: DraftThing, { kind, named }: Clause): boolean {
  return (
    kind === null ||
    kind === 'tighten' ||
    /(?:screw|bolt|nut|stud|clamp|union)s?$/.test(noun) ||
    /^\w*$/.test(named.name) === false
  );
}

/** Notes a torque on a thing; told is what speaks against it. */
function stateTorque(thing: DraftThing, torque: string): readonly string[] {
  const known = thing.attributes.get('torque');
  if (known !== undefined && known !== torque)
    return [`which torque is right for the ${thing.noun}: ${known} stands elsewhere, and ${torque} here`];
  if (thing.kind !== 'kit' && thing.kind !== 'fastener') return [`what is tightened to ${torque}`];
  thing.attributes.set('torque', torque);
  return [];
}

/** A torque that stands by itself is that of the only fastener that the step spoke of. */
function stateAlone({ torque }: FoundTorque, { fasteners, last }: StepAtWork): readonly string[] {
  const turned = [...fasteners].filter(({ noun }) => /(?:screw|bolt|nut|stud|clamp)$/.test(noun));
  const only =
    turned.length === 1 ? turned[0] : last && turned.includes(last) && turned.length === 0 ? last : undefined;
  if (torque === null) return ['one torque; a wrench is set to one, and the old words give two or a range'];
  if (!only) return [`what is tightened to ${torque}`];
  const against = stateTorque(only, torque);
  return against.length > 0
    ? against
    : [`where the ${only.noun} is tightened, with :start or :fit and then :tighten`];
}

/** The words that state a torque which the action prints itself: `to 8 Nm`, `(8 Nm)`. */
function pastTorque(
  sentence: string,
  { named }: Clause,
  { from, to }: FoundTorque,
): { readonly from: number; readonly to: number } {
  const before =
    /\s*(?:\(|\b(?:to|at)\b(?: a torque of)?)?\s*$/.exec(sentence.slice(named.to, from))?.[0].length ?? 0;
  const after = sentence.slice(from - before, from).includes('(')
    ? (/^\s*\)/.exec(sentence.slice(to))?.[0].length ?? 0)
    : 0;
  return { from: from - before, to: to + after };
}

/** An action as it is written, with the tools that the old guide names and that fit. */
export function actionText(
  verb: Parameters<typeof printedVerb>[0],
  thing: DraftThing,
  { kind, says }: Pick<Clause, 'kind' | 'says'>,
  inventory: Inventory,
): string {
  const own = kind === null ? verb : printedVerb(verb, kind);
  const torque = thing.attributes.get('torque');
  const turns = verb === 'remove' || verb === 'refit' || verb === 'tighten' || verb === 'loosen';
  const tools = [
    verb === 'tighten' && torque !== undefined ? inventory.wrenchFor(torque) : null,
    turns ? inventory.toolFor(thing.attributes.get('drive')) : null,
  ].flatMap((tool) => tool?.id ?? []);
  const said = says === '' || says.toLowerCase() === own ? [] : [attribute('say', says.toLowerCase())];
  const attributes = [...said, ...(tools.length > 0 ? [attribute('with', tools.join(' '))] : [])];
  return `:${verb}[${thing.id}]${attributes.length > 0 ? `{${attributes.join(' ')}}` : ''}`;
}

function changed(sentence: string, changes: readonly Change[]): string {
  let text = '';
  let at = 0;
  for (const { from, to, text: words } of changes.toSorted((a, b) => a.from - b.from)) {
    if (from < at) continue;
    text += escaped(`|${sentence.slice(at, from)}|`).slice(2, -2) + words;
    at = to;
  }
  return text + escaped(`|${sentence.slice(at)}|`).slice(2, -2);
}
