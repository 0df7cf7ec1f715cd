import type { Note, Suggestion } from '../../diagnostics/finding.ts';
import type { Report } from '../../diagnostics/report.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionWords, handledCount, listed } from '../../job/index.ts';
import type { Tool } from '../../model/item.ts';
import type { Span } from '../../source/span.ts';
import type { Subject } from '../rule.ts';
import { type Offer, type ToolUse, toolUses } from './tool-use.ts';

/** What is wrong with the tools of an action. */
export interface UseFault {
  /** The tool that is named wrongly, or else the action. */
  readonly at: Span;
  readonly message: string;
  readonly notes: readonly Note[];
  /** A tool that serves, if the shop knows one. */
  readonly better: Tool | null;
  /** What is at fault, where it shows in many actions. */
  readonly cause?: string;
}

/**
 * Judges every use of tools and reports each fault once: what the derived refit repeats, and what an item says
 * for all its actions, was written once. A fault that only the derived refit has stands at the line that asks
 * for it, and its source is the second place.
 */
export function reportUses(
  card: RuleCard,
  subject: Subject,
  judge: (use: ToolUse) => UseFault | null,
  report: Report,
): void {
  const told = new Set<string>();
  for (const use of toolUses(subject)) {
    const fault = judge(use);
    if (!fault || told.has(keyOf(use, fault))) continue;
    told.add(keyOf(use, fault));
    const better = fault.better ? betterNotes(fault.better, subject) : [];
    const notes = [...fault.notes, ...better];
    if (use.reversal) {
      const message = `in the refit that is worked out of "${sourceTitle(use, subject)}", ${fault.message}`;
      report(
        finding(card, placeInRefit(use, fault), message, { notes: [...sourceNotes(use, fault), ...notes] }),
      );
      continue;
    }
    const suggestion = suggestionOf(use, fault, subject);
    const { at, message, cause } = fault;
    report(finding(card, at, message, { notes: suggestion ? fault.notes : notes, suggestion, cause }));
  }
}

/** What the step's own words would mend is one fault for all that the step does to the fastener. */
function keyOf({ named, step, action, reversal }: ToolUse, { at }: UseFault): string {
  return named ? `${at.file} ${at.start}` : `${reversal?.step ?? step.id} ${action.target.value}`;
}

/** The words of the action: "remove the 3 liner screws". */
export function wordsOfUse({ action, target, step }: ToolUse, { guide }: Subject): string {
  return actionWords({ ...action, say: null }, target, {
    stepSide: step.side?.value ?? null,
    starts: false,
    words: guide.words,
  });
}

/** The fastener in the number in which it comes: "liner screws". */
export function fastenerNoun({ item }: ToolUse): string {
  if (!item) throw new Error('only a fastener has a drive');
  return handledCount(item) === 1 ? item.noun.singular : item.noun.plural;
}

/** "the ratchet and the extension bar". */
export function toolNouns(offers: readonly Offer[]): string {
  return listed(offers.map(({ tool }) => `the ${tool.noun.singular}`));
}

/** Where the one wrong tool is named; the action where there are several, or the step names them elsewhere. */
export function placeOfOffers({ action, named }: ToolUse, offers: readonly Offer[]): Span {
  const [only, ...others] = offers;
  return named && only && others.length === 0 ? only.ref.at : action.at;
}

/** The first tool that serves: of those that the guide declares, else of the tool crib. */
export function firstTool({ guide, shop }: Subject, serves: (tool: Tool) => boolean): Tool | null {
  const all = [...guide.items.values(), ...shop.crib.values()];
  return all.find((tool): tool is Tool => tool.kind === 'tool' && serves(tool)) ?? null;
}

/** A tool that the item names for all its actions is mended there; else the line that asks for the refit shows it. */
function placeInRefit({ action, item, reversal }: ToolUse, { at }: UseFault): Span {
  const onItem = action.with.length === 0 && item?.with.some((ref) => ref.at === at);
  return reversal && !onItem ? reversal.at : at;
}

function sourceNotes(use: ToolUse, fault: UseFault): readonly Note[] {
  const source = { message: 'what the refit undoes', at: use.action.at };
  const asked = use.reversal && placeInRefit(use, fault) !== use.reversal.at;
  return asked ? [source, { message: 'the refit is asked for here', at: use.reversal.at }] : [source];
}

function sourceTitle({ reversal, step }: ToolUse, { guide }: Subject): string {
  const steps = guide.sections.flatMap((section) => section.steps);
  return steps.find(({ id }) => id === reversal?.step)?.titleText ?? step.titleText;
}

/** A single wrong id is replaced by a declared one that serves. */
function suggestionOf(use: ToolUse, { at, better }: UseFault, { guide }: Subject): Suggestion | undefined {
  const isId = use.offers.some(({ ref }) => ref.at.start === at.start && ref.at.file === at.file);
  const declared = better !== null && guide.items.has(better.id);
  return isId && declared ? { at, text: better.id } : undefined;
}

function betterNotes(tool: Tool, { guide }: Subject): readonly Note[] {
  const noun = tool.noun.singular;
  const message = guide.items.has(tool.id)
    ? `the ${noun} serves, and is declared here`
    : `the tool crib has the ${noun}: declare it with ::tool{#${tool.id}}`;
  return [{ message, at: tool.idAt }];
}
