import { actionsOf, stepsOf } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Item, WorkClass } from '../../model/item.ts';
import type { NotChecked } from '../../model/not-checked.ts';

/** Names that speak of a kind of work that asks for more care; a brake lamp is none of it (common practice, no source). */
const names: readonly (readonly [WorkClass, RegExp])[] = [
  ['airbag', /\b(?:air ?-?bags?|(?:pre-?|belt )tensioners?|clock spring|squib)\b/i],
  [
    'seat-belt',
    /\b(?:seat[ -]?)?belt (?:anchors?|anchorages?|buckles?|reels?|retractors?|bolts?)\b|\bseat[ -]?belts?\b/i,
  ],
  ['brakes', /\bbrakes?\b(?! (?:lamp|light|pedal pad))/i],
  ['high-voltage', /\b(?:high[ -]voltage|traction batter(?:y|ies))\b/i],
  ['towing', /\b(?:tow(?:ing)? (?:bars?|balls?|brackets?|hooks?)|hitch(?:es)?)\b/i],
];

/** What is worked on, is called so, and states no kind of work: its messages and signatures are not asked for. */
export function uncheckedWork(guide: Guide): readonly NotChecked[] {
  const worked = new Set(
    stepsOf(guide).flatMap((step) => actionsOf(step).map(({ node }) => node.target.value)),
  );
  return [...guide.items.values()].flatMap((item): readonly NotChecked[] => {
    if (!isThing(item) || item.work || item.unknown.has('work') || !worked.has(item.id)) return [];
    const [found] = names.find(([, name]) => name.test(item.noun.label)) ?? [];
    const whens = item.when ? [item.when.value] : [];
    return found ? [{ check: 'care', item: item.id, work: found, lacks: 'class', whens }] : [];
  });
}

function isThing({ kind }: Item): boolean {
  return kind === 'part' || kind === 'fastener' || kind === 'connector' || kind === 'kit';
}

/** What is put on, has to cure, and has nothing that waits for it: a load or water may come too early. */
export function uncheckedCures(guide: Guide): readonly NotChecked[] {
  const steps = stepsOf(guide);
  const applied = new Set(
    steps.flatMap((step) =>
      actionsOf(step).flatMap(({ node }) => (node.verb === 'apply' ? [node.target.value] : [])),
    ),
  );
  const proofs = [...guide.sections.flatMap(({ intro }) => intro), ...steps.flatMap(({ blocks }) => blocks)];
  const waited = new Set(
    [...steps, ...guide.items.values(), ...proofs.filter((block) => block.type === 'prove')].flatMap(
      ({ needs }) => needs.map(({ value }) => value),
    ),
  );
  return [...guide.items.values()].flatMap((item): readonly NotChecked[] => {
    if (item.kind !== 'supply' || !item.cures || waited.has(item.id) || !applied.has(item.id)) return [];
    return [{ check: 'cure', item: item.id, lacks: 'need', whens: item.when ? [item.when.value] : [] }];
  });
}
