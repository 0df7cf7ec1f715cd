import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { allHold, isFixing, totalCount } from '../../job/index.ts';
import type { Fastener, Item, KitItem } from '../../model/item.ts';
import type { Build } from '../../model/when.ts';
import { buildsOf, buildsWith, witnessNotes } from '../builds/witness.ts';
import type { Rule } from '../rule.ts';
import { barStep, clampedBar } from './example.ts';

const done = barStep('fit[bar]', 'fit[spacer]', 'fit[washer]', 'start[bolt]', 'tighten[bolt]');
const washers = (count: number) =>
  clampedBar('', `::kit[Washer]{#washer count=${count}}\n`).replace(
    '"bar spacer frame"',
    '"washer bar spacer washer frame"',
  ) + done;

const card: RuleCard = {
  code: 'stack-count-differs',
  severity: 'error',
  title: 'The bolts take more or fewer of a piece than there are',
  why: 'Every washer and spacer is on some bolt, or is a spare and said to be one. A count that is off by one is found when the last bolt goes in.',
  bad: washers(2),
  good: washers(4),
};

/** A piece that lies on bolts, and that they do not all clamp together, is there once for each. */
export const stackCountDiffers: Rule = {
  card,
  run: ({ guide, job, lost }, report) => {
    const builds = buildsOf(job);
    const bolts = [...guide.items.values()].filter((item) => isFixing(item) && item.stack.length > 0);
    for (const piece of guide.items.values()) {
      if (!isPiece(piece) || piece.unknown.size > 0 || lost.ids.has(piece.id)) continue;
      const on = bolts.filter(isFixing).filter((bolt) => goesOn(bolt, piece.id));
      // What all bolts hold together, the bar itself, is there once for all of them.
      if (on.length === 0 || on.some((bolt) => bolt.holds.some(({ value }) => value === piece.id))) continue;
      if (on.some((bolt) => ['count', 'side', 'stack', 'when'].some((name) => bolt.unknown.has(name))))
        continue;
      const pieces = usedOf(piece);
      const fitted = buildsWith(piece.when ? [piece.when.value] : [], builds);
      const wrong = fitted.filter((build) => takenOn(build, on, piece.id) !== pieces);
      const [build] = wrong;
      if (!build) continue;
      const taken = takenOn(build, on, piece.id);
      const message = `the bolts take ${taken} ${taken === 1 ? piece.noun.singular : piece.noun.plural}, and there ${pieces === 1 ? 'is' : 'are'} ${pieces}`;
      const notes = on.map((bolt) => ({
        message: `on the ${bolt.noun.singular}, ${totalCount(bolt)} of them`,
        at: bolt.idAt,
      }));
      const seen = wrong.length < fitted.length ? witnessNotes(wrong, guide, job) : [];
      report(finding(card, piece.count.at, message, { notes: [...notes, ...seen] }));
    }
  },
};

/** What is counted by the bolt: from the box, or a fastener of the vehicle. A part may be clamped by any number. */
function isPiece(item: Item): item is Fastener | KitItem {
  return item.kind === 'kit' || item.kind === 'fastener';
}

function goesOn(bolt: Fastener | KitItem, id: string): boolean {
  return bolt.stack.some(({ value }) => value === id);
}

/** How many are used: all, save the spares, on each side. */
function usedOf(item: Fastener | KitItem): number {
  return totalCount(item) - (item.spare?.value ?? 0) * (totalCount(item) / item.count.value);
}

function takenOn(build: Build, bolts: readonly (Fastener | KitItem)[], id: string): number {
  return bolts
    .filter((bolt) => bolt.when === null || allHold([bolt.when.value], build))
    .reduce((sum, bolt) => sum + usedOf(bolt) * bolt.stack.filter(({ value }) => value === id).length, 0);
}
