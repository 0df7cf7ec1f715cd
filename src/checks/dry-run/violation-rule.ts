import type { Note } from '../../diagnostics/finding.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { ownPlace } from '../../job/actions/own-place.ts';
import { findTarget, stepsOf, targetNoun, traitsForAuthor } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Violation, ViolationKind } from '../../model/violation.ts';
import type { Span } from '../../source/span.ts';
import type { Rule } from '../rule.ts';
import { circled } from './circles.ts';
import { done, spoken } from './words.ts';

/** The faults of some kinds. */
type ViolationOf<K extends ViolationKind> = OfKind<Violation, K>;

type OfKind<V, K> = V extends { readonly kind: infer Kind } ? (K extends Kind ? V : never) : never;

/** What a rule says of a fault; `null` leaves it to another rule of the same kind. */
export type Said = {
  readonly message: string;
  /** Further places; the declarations and the build that shows it are added. */
  readonly notes?: readonly Note[];
  /** What is at fault, where it shows in many places. */
  readonly cause?: string;
} | null;

/** A rule that tells of one or more kinds of fault of the dry run. */
export function violationRule<K extends ViolationKind>(
  card: RuleCard,
  kinds: readonly K[],
  say: (violation: ViolationOf<K>, guide: Guide) => Said,
): Rule {
  return {
    card,
    played: true,
    run: ({ guide, job, lost }, report) => {
      const found = job.violations.filter((violation) => isOf(violation, kinds));
      const inCircle = found.length > 0 ? circled(guide.items) : new Set<string>();
      for (const violation of found) {
        const ids = idsIn(violation);
        // What could not be read may be the very thing that is missing here.
        if (ids.some((id) => lost.ids.has(id) || inCircle.has(id))) continue;
        const said = say(violation, guide);
        if (!said) continue;
        const at = placeOf(violation, guide);
        const notes = [
          ...(said.notes ?? []),
          ...later(violation, guide),
          ...derived(violation, at, guide),
          ...ids.flatMap((id) => declared(id, violation, guide)),
          ...witness(violation, guide),
        ];
        const out = leftOutBy(violation, guide) ? `left out: ${violation.step?.id}` : undefined;
        report(finding(card, at, said.message, { notes, cause: said.cause ?? out }));
      }
    },
  };
}

function isOf<K extends ViolationKind>(
  violation: Violation,
  kinds: readonly K[],
): violation is ViolationOf<K> {
  return kinds.some((kind) => kind === violation.kind);
}

/** The things that a fault is about, the cause first. */
function idsIn(violation: Violation): readonly string[] {
  const cause = 'by' in violation ? [violation.by] : 'part' in violation ? [violation.part] : [];
  const need = violation.kind === 'needs-unmet' ? [violation.need] : [];
  return [...cause, ...need, ...(violation.item === null ? [] : [violation.item])];
}

function declared(id: string, violation: Violation, guide: Guide): readonly Note[] {
  const target = findTarget(guide, id);
  const at = target?.kind === 'item' ? target.item.idAt : target?.template.at;
  if (!target || !at || at === violation.at) return [];
  const noun = targetNoun(target).singular;
  const name = target.kind === 'item' && target.item.kind === 'condition' ? `“${noun}”` : `the ${noun}`;
  return [{ message: `${name} is declared here`, at }];
}

/**
 * A derived step stands nowhere in the text: what is wrong in it is mended at the line that asks for it, or at the
 * one that places it. So is what such a line leaves undone.
 */
function placeOf(violation: Violation, guide: Guide): Span {
  const { at, step } = violation;
  const leaving = leftOutBy(violation, guide);
  if (leaving) return ownPlace(leaving, guide);
  return step?.origins.some(({ kind }) => kind === 'reverse') ? ownPlace(step, guide) : at;
}

function derived(violation: Violation, at: Span, guide: Guide): readonly Note[] {
  const { step, action } = violation;
  const source = action ? { at: action.at } : {};
  if (leftOutBy(violation, guide)) return [{ message: 'it leaves out the step that does this', ...source }];
  const origin = step?.origins.findLast(({ kind }) => kind === 'reverse');
  if (!step || !origin) return [];
  const asked = origin.at === at ? [] : [{ message: 'the refit is asked for here', at: origin.at }];
  return [{ message: `in the step "${step.titleText}", which undoes this`, ...source }, ...asked];
}

/** A step of the reversal that leaves out, word for word, the step after which something is not as it should be. */
function leftOutBy({ kind, step }: Violation, guide: Guide): Step | null {
  if (kind !== 'left' || !step) return null;
  return (
    stepsOf(guide).find(({ origins }) =>
      origins.some((origin) => origin.kind === 'reverse' && origin.leftOut.includes(step.id)),
    ) ?? null
  );
}

/** What would have mended the fault comes too late. */
function later({ later }: Violation, guide: Guide): readonly Note[] {
  if (!later) return [];
  const item = guide.items.get(later.item);
  const { the, is } = spoken(later.item, [], guide);
  const who = item?.kind === 'condition' ? `“${item.noun.singular}” is` : `${the} ${is}`;
  return [{ message: `${who} ${done(later.verb, later.item, guide)} only here`, at: later.at }];
}

function witness({ witness: traits }: Violation, guide: Guide): readonly Note[] {
  const told = traits.flatMap(({ option, value }) => {
    const known = guide.builds.options.find((one) => one.id === option);
    return known ? [{ option: known, value }] : [];
  });
  return told.length === 0 ? [] : [{ message: `This happens when ${traitsForAuthor(told)}.` }];
}
