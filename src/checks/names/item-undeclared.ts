import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { nearest } from '../../diagnostics/suggest.ts';
import { featuresOf } from '../../job/actions/target.ts';
import { findTarget } from '../../job/index.ts';
import type { Rule, Subject } from '../rule.ts';
import { type Reference, referencesOf } from './references.ts';
import { reportUndeclared, type Undeclared, whoNames } from './undeclared.ts';

const card: RuleCard = {
  code: 'item-undeclared',
  severity: 'error',
  title: 'Something is named that the guide does not declare',
  why: 'Name, count, drive and torque are printed from the declaration. Without one there is nothing to print and nothing to count.',
  bad: '::fastener[Arch screw]{#arch-screw}\n\n::step[Free the arch edge]{#arch}\n\n:loosen[arch-screws], then :tighten[arch-screw].',
  good: '::fastener[Arch screw]{#arch-screw}\n\n::step[Free the arch edge]{#arch}\n\n:loosen[arch-screw], then :tighten[arch-screw].',
};

/** Every item, template or hole that a guide names exists; tools and steps have rules of their own. */
export const itemUndeclared: Rule = {
  card,
  run: (subject, report) => {
    if (subject.lost.nameless.has('thing')) return;
    const missing = referencesOf(subject.guide).filter(
      ({ ref, wanted }) =>
        !['tool', 'alternative', 'step'].includes(wanted) &&
        findTarget(subject.guide, ref.value) === null &&
        !subject.lost.ids.has(ref.value),
    );
    reportUndeclared(card, missing, (first) => describe(first, subject), report);
  },
};

/** What is declared by the word that mentions it; what an action or an item names is most often a part. */
const ownWord: ReadonlySet<string> = new Set<Reference['wanted']>([
  'wear',
  'supply',
  'kit',
  'fastener',
  'connector',
  'condition',
  'setting',
  'inspection',
  'rating',
  'circuit',
]);

function describe(first: Reference, { guide, shop }: Subject): Undeclared {
  const id = first.ref.value;
  const message = `${whoNames(first)} "${id}", which this guide does not declare`;
  const owned = shop.crib.get(id);
  if (owned?.kind === 'wear' && first.wanted === 'wear')
    return {
      message,
      notes: [{ message: `the tool crib has it: declare it with ::wear{#${id}}`, at: owned.idAt }],
    };
  // What the platform has is what is meant, however near the id of another thing lies.
  const platform = shop.platforms.get(guide.platform.value);
  const shared = platform?.parts.get(id) ?? platform?.conditions.get(id) ?? platform?.ratings.get(id);
  if (shared) {
    const note = `the platform has this ${shared.kind}: declare it with ::${shared.kind}{#${id}}`;
    return { message, notes: [{ message: note }] };
  }
  const holes = [...guide.templates.values()].flatMap(featuresOf).flatMap((hole) => hole.id ?? []);
  const [likely] = nearest(id, [...guide.items.keys(), ...guide.templates.keys(), ...holes]);
  if (likely !== undefined) return { message, likely };
  const kind = ownWord.has(first.wanted) ? first.wanted : first.wanted === 'need' ? 'condition' : 'part';
  return { message, notes: [{ message: `declare it, as in ::${kind}[Name]{#${id}}` }] };
}
