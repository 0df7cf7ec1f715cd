import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { nearest, quotedList } from '../diagnostics/suggest.ts';
import type { ReversePlace } from '../directives/reverse.ts';
import { actionsOf } from '../job/actions/walk.ts';
import { type ReverseProblem, reverseSteps } from '../job/reverse/reverse.ts';
import type { Block } from '../model/block.ts';
import type { CutTemplate } from '../model/cut-template.ts';
import type { Section, Step } from '../model/guide.ts';
import type { Ref } from '../model/inline.ts';
import type { Item } from '../model/item.ts';
import type { Span } from '../source/span.ts';
import type { TradeWords } from '../trade/words.ts';
import { type DraftSection, draftSteps, isStep } from './draft.ts';
import { reverseDoubled } from './rules/reverse-doubled.ts';
import { reverseItself } from './rules/reverse-itself.ts';
import { reverseUnknown } from './rules/reverse-unknown.ts';
import { reverseUnsound } from './rules/reverse-unsound.ts';

/** What the working out of reversals may ask. */
interface Reversing {
  /** Steps that placed procedures brought, by the id of the place. */
  readonly brought: ReadonlyMap<string, readonly string[]>;
  readonly items: ReadonlyMap<string, Item>;
  readonly templates: ReadonlyMap<string, CutTemplate>;
  readonly words: TradeWords;
  /** Items that some written step puts in. */
  readonly fitted: ReadonlySet<string>;
  readonly report: Report;
}

/** The steps that a reversal names, with what guards them. */
interface Source {
  readonly steps: readonly Step[];
  readonly guards: readonly Block[];
}

/** Spells out every reversal, in the order of the text. */
export function expandReversals(
  sections: readonly DraftSection[],
  asked: Omit<Reversing, 'fitted'>,
): readonly Section[] {
  const reversing = { ...asked, fitted: fittedIn(sections) };
  const done = new Map<Step, Span>();
  return sections.map(({ entries, ...section }) => ({
    ...section,
    steps: entries.flatMap((entry) => {
      if (isStep(entry)) return [entry];
      if (entry.type === 'procedure') return [];
      const source = sourceOf(entry, section.id, sections, reversing);
      return source ? reversed(entry, source, done, reversing) : [];
    }),
  }));
}

function fittedIn(sections: readonly DraftSection[]): ReadonlySet<string> {
  const actions = draftSteps({ sections }).flatMap(actionsOf);
  return new Set(
    actions.flatMap(({ node }) =>
      ['fit', 'bond', 'start', 'apply'].includes(node.verb) ? [node.target.value] : [],
    ),
  );
}

function reversed(place: ReversePlace, source: Source, done: Map<Step, Span>, reversing: Reversing) {
  const { items, templates, report } = reversing;
  const asked = pick(source.steps, place, report);
  const again = asked.filter((step) => done.has(step));
  const earlier = again[0] && done.get(again[0]);
  if (earlier) report(doubled(place, again, earlier));
  const picked = asked.filter((step) => !done.has(step));
  for (const step of picked) done.set(step, place.at);
  const { steps, problems } = reverseSteps({
    steps: picked,
    guards: source.guards,
    items,
    templates,
    words: reversing.words,
    fitted: reversing.fitted,
    time: place.time,
    when: place.when,
    leftOut: source.steps.filter((step) => !asked.includes(step)).map(({ id }) => id),
    at: place.at,
  });
  for (const problem of problems) report(unsound(place, problem));
  return steps;
}

function sourceOf(
  { of }: ReversePlace,
  host: string,
  sections: readonly DraftSection[],
  { brought, report }: Reversing,
): Source | null {
  if (of.value === host) {
    const message = `"${of.value}" is the section that this line stands in; a section cannot undo itself`;
    report(finding(reverseItself, of.at, message));
    return null;
  }
  const section = sections.find(({ id }) => id === of.value);
  if (section) return { steps: section.entries.filter(isStep), guards: section.intro };
  const steps = draftSteps({ sections });
  const ids = brought.get(of.value) ?? [of.value];
  const found = steps.filter(({ id }) => ids.includes(id));
  if (found.length > 0) {
    // What guards the sections that these steps stand in guards their refit too; its own section says it already.
    const homes = sections.filter(
      ({ id, entries }) => id !== host && found.some((step) => entries.includes(step)),
    );
    return { steps: found, guards: homes.flatMap(({ intro }) => intro) };
  }
  // A procedure that brought nothing has its own finding.
  if (brought.has(of.value)) return null;
  const source = steps.find(({ id }) => of.value === `refit-${id}`);
  if (source) {
    report(
      finding(reverseUnknown, of.at, `"${of.value}" is itself worked out, as the reverse of "${source.id}"`),
    );
    return null;
  }
  const known = [...sections.map(({ id }) => id), ...brought.keys(), ...steps.map(({ id }) => id)];
  report(unknown(of, known, `there is no section, step or placed procedure "${of.value}"`));
  return null;
}

function pick(steps: readonly Step[], place: ReversePlace, report: Report): readonly Step[] {
  const ids = steps.map(({ id }) => id);
  for (const ref of [...(place.only ?? []), ...place.except]) {
    if (!ids.includes(ref.value)) report(unknown(ref, ids, `"${ref.value}" is no step of ${place.of.value}`));
  }
  const named = (refs: readonly Ref[], step: Step) => refs.some(({ value }) => value === step.id);
  return steps.filter(
    (step) => (place.only === null || named(place.only, step)) && !named(place.except, step),
  );
}

function unknown(ref: Ref, known: readonly string[], message: string) {
  const likely = nearest(ref.value, known)[0];
  return finding(reverseUnknown, ref.at, message, likely ? { suggestion: { at: ref.at, text: likely } } : {});
}

function doubled(place: ReversePlace, steps: readonly Step[], earlier: Span) {
  const notes = [{ message: 'first reversed here', at: earlier }];
  const titles = quotedList(
    steps.map(({ titleText }) => titleText),
    'and',
  );
  const what = steps.length === 1 ? `the step ${titles} is` : `the steps ${titles} are`;
  return finding(reverseDoubled, place.at, `${what} reversed twice`, { notes });
}

const reasons: { readonly [K in ReverseProblem['kind']]: string } = {
  'for-good': 'is done for good',
  'one-time': 'takes out a fastener that goes back only once, and nothing replaces it',
  lost: 'parts with what would have to go back, and nothing replaces it',
  replaced: 'takes out what a new part takes the place of',
};

function unsound(place: ReversePlace, { kind, action, step }: ReverseProblem) {
  const reason = action.verb === 'loosen' ? 'turns a fastener loose that serves once' : reasons[kind];
  return finding(
    reverseUnsound,
    place.at,
    `the step "${step.titleText}" cannot be undone by itself: it ${reason}; write its refit as a step, and leave "${step.id}" out with except=${step.id}`,
    { notes: [{ message: 'what cannot be undone', at: action.at }] },
  );
}
