import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { featuresOf } from '../../job/actions/target.ts';
import type { Feature } from '../../job/index.ts';
import { allHold, handledCount, holesOf, whensOfTarget } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Build, When } from '../../model/when.ts';
import { buildsOf, buildsWith, witnessNotes } from '../builds/witness.ts';
import type { Rule } from '../rule.ts';

const screws = (count: number) => `::part[Bumper cover]{#cover}
::tool[5.5 mm drill bit]{#bit diameter="5.5 mm"}
::kit[Bezel screw]{#screw count=${count} thread=M5x0.8}

:::cut-template[Bezel holes]{#holes panel=cover face=outside}
::datum[Centreline]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::hole[Left bezel hole]{#left centre="-84,30" diameter="5.5 mm" for=screw unit=mm}
::hole[Right bezel hole]{#right centre="84,30" diameter="5.5 mm" for=screw unit=mm}
:::

::step[Drill and fit]{#drill}

:drill[left]{with=bit} and :drill[right]{with=bit}. Then :fit[screw].`;

const card: RuleCard = {
  code: 'holes-disagree',
  severity: 'error',
  title: 'A template makes more or fewer holes than there are fasteners for them',
  why: 'A hole without a screw lets water in. A screw without a hole is found when the template is in the bin.',
  bad: screws(3),
  good: screws(2),
};

/** What makes holes, and what holds it. */
const shapes = ['hole', 'slot', 'pattern', 'cut-template'];

/** On every build, the holes that are made for an item are as many as the item's pieces, spares apart. */
export const holesDisagree: Rule = {
  card,
  run: ({ guide, job, lost }, report) => {
    // A hole that could not be read is missing from the count.
    if (shapes.some((name) => lost.declarations.has(name))) return;
    const builds = buildsOf(job);
    for (const item of guide.items.values()) {
      const holes = holesFor(item.id, guide);
      const [first] = holes;
      if (!first || !('count' in item) || item.unknown.has('count') || item.unknown.has('side')) continue;
      if (lost.ids.has(item.id)) continue;
      const pieces = handledCount(item);
      // More spares than pieces are told by themselves.
      if (pieces < 0) continue;
      const fitted = buildsWith(item.when ? [item.when.value] : [], builds);
      const wrong = fitted.filter((build) => countOn(build, holes) !== pieces);
      const [build] = wrong;
      if (!build) continue;
      const made = countOn(build, holes);
      const message = `the templates make ${made} ${made === 1 ? 'hole' : 'holes'} for ${pieces} ${pieces === 1 ? item.noun.singular : item.noun.plural}`;
      const notes = holes.map(({ feature }) => ({ message: 'made here', at: feature.at }));
      const seen = wrong.length < fitted.length ? witnessNotes(wrong, guide, job) : [];
      report(finding(card, item.count.at, message, { notes: [...notes, ...seen] }));
    }
  },
};

interface Made {
  readonly feature: Feature;
  readonly times: number;
  /** What must hold for it to be made. */
  readonly whens: readonly When[];
}

function holesFor(id: string, guide: Guide): readonly Made[] {
  return [...guide.templates.values()].flatMap((template) =>
    featuresOf(template)
      .filter((feature) => feature.for?.value === id)
      .map((feature) => ({
        feature,
        times: template.side === 'each' ? 2 : 1,
        whens: whensOfTarget(guide, { kind: 'hole', template, feature }).map(({ value }) => value),
      })),
  );
}

function countOn(build: Build, holes: readonly Made[]): number {
  return holes
    .filter(({ whens }) => allHold(whens, build))
    .reduce((sum, { feature, times }) => sum + holesOf(feature) * times, 0);
}
