import type { Note } from '../../diagnostics/finding.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { findTarget, targetNoun, traitsForAuthor } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Violation, ViolationKind } from '../../model/violation.ts';
import type { Rule } from '../rule.ts';
import { circled } from './circles.ts';

/** The faults of some kinds. */
type ViolationOf<K extends ViolationKind> = OfKind<Violation, K>;

type OfKind<V, K> = V extends { readonly kind: infer Kind } ? (K extends Kind ? V : never) : never;

/** What a rule says of a fault; `null` leaves it to another rule of the same kind. */
export type Said = {
  readonly message: string;
  /** Further places; the declarations and the build that shows it are added. */
  readonly notes?: readonly Note[];
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
        const notes = [
          ...(said.notes ?? []),
          ...ids.flatMap((id) => declared(id, violation, guide)),
          ...derived(violation),
          ...witness(violation, guide),
        ];
        report(finding(card, violation.at, said.message, { notes }));
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

/** A derived step stands nowhere in the text: the line that asks for it does. */
function derived({ step }: Violation): readonly Note[] {
  const origin = step?.origins.findLast(({ kind }) => kind === 'reverse');
  return origin
    ? [{ message: `in the step "${step?.titleText}", which is worked out here`, at: origin.at }]
    : [];
}

function witness({ witness: traits }: Violation, guide: Guide): readonly Note[] {
  const told = traits.flatMap(({ option, value }) => {
    const known = guide.builds.options.find((one) => one.id === option);
    return known ? [{ option: known, value }] : [];
  });
  return told.length === 0 ? [] : [{ message: `This happens when ${traitsForAuthor(told)}.` }];
}
