import { shareAPanel } from '../../cut/shape/neighbours.ts';
import { cutsOnPanel, isCutAway, type PanelCut } from '../../cut/shape/on-panel.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { type Feature, featuresOf } from '../../job/actions/target.ts';
import { actionsOf, allHold, findTarget, stepsOf, targetNoun, whensOfTarget } from '../../job/index.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Guide } from '../../model/guide.ts';
import type { Action, Verb } from '../../model/inline.ts';
import type { When } from '../../model/when.ts';
import { buildsOf } from '../builds/witness.ts';
import type { Rule } from '../rule.ts';

const guide = (x: number) => `::wear[Eye protection]{#eye-protection}
::tool[Jigsaw]{#jigsaw}
::tool[8 mm bit]{#bit diameter="8 mm"}
::part[Side panel]{#panel}

:::cut-template[Window]{#window panel=panel face=outside}
::datum[Door edge]{axis=vertical at="0 mm"}
::datum[Sill edge]{axis=horizontal at="0 mm"}
::outline{points="-40,20 40,20 40,60 -40,60" unit=mm}
:::

:::cut-template[Handle holes]{#handle panel=panel face=outside}
::datum[Door edge]{axis=vertical at="0 mm"}
::datum[Sill edge]{axis=horizontal at="0 mm"}
::hole[Handle hole]{#handle-hole centre="${x},40" unit=mm diameter="8 mm"}
:::

::step[Try the window]{#trial}

Hold the window up to the panel.

::step[Cut the window]{#cut-window}

:::warning[Flying chips]
Steel chips can blind an eye. Wear :wear[eye-protection].
:::

:cut[window]{with=jigsaw trial=trial}.

::step[Drill for the handle]{#drill-handle}

:drill[handle-hole]{with=bit trial=trial}.`;

const card: RuleCard = {
  code: 'material-gone',
  severity: 'error',
  title: 'Something is made, or fitted, in material that has been cut away',
  why: 'What is cut out cannot be drilled or screwed into any more. Either the templates were measured from different places, or the order of the cuts is wrong.',
  bad: guide(0),
  good: guide(80),
};

/** Nothing is drilled, cut or put in where an earlier cut of the same panel has taken the material away. */
export const materialGone: Rule = {
  card,
  run: ({ guide: written, job }, report) => {
    const builds = buildsOf(job);
    const gone: Use[] = [];
    const told = new Set<string>();
    for (const use of usesOf(written)) {
      const earlier = gone.find(
        (one) =>
          isComparable(one, use) &&
          isCutAway(use.cut, one.cut) &&
          builds.some((build) => allHold([...one.whens, ...use.whens], build)),
      );
      const key = `${use.action.at.file} ${use.action.at.start} ${use.words}`;
      if (earlier && !told.has(key)) {
        told.add(key);
        const notes = [
          { message: 'it is cut away here', at: earlier.action.at },
          { message: 'its place is stated here', at: use.cut.at },
        ];
        const message = `${use.words} where “${earlier.template.title}” has been cut away by then`;
        report(finding(card, use.action.at, message, { notes }));
      }
      if (makes(use.action.verb)) gone.push(use);
    }
  },
};

/** A cut that an action makes, or puts something into. */
interface Use {
  readonly action: Action;
  readonly template: CutTemplate;
  readonly cut: PanelCut;
  readonly whens: readonly When[];
  readonly words: string;
}

/** Two cuts of one template, made one after the other, or of two that are measured from the same places. */
function isComparable(earlier: Use, later: Use): boolean {
  if (earlier.template === later.template) {
    return earlier.action !== later.action && earlier.cut.at !== later.cut.at;
  }
  return shareAPanel(earlier.template, later.template);
}

function makes(verb: Verb): boolean {
  return verb === 'cut' || verb === 'drill';
}

/** Every cut that a guide makes or uses, in the order of doing, a row of holes hole by hole. */
function usesOf(guide: Guide): readonly Use[] {
  const placed = stepsOf(guide).flatMap(actionsOf);
  const named = new Set(placed.map(({ node }) => node.target.value));
  const all = [...guide.templates.values()];
  // What cuts nothing out is held against others of its panel, and a template alone on it against its own outlines.
  const drawn = all.filter(
    (one) =>
      (one.outlines.length > 0 && featuresOf(one).length > 0) ||
      all.some((other) => other !== one && shareAPanel(one, other)),
  );
  const cutsOf = new Map(drawn.map((one) => [one, cutsOnPanel(one)]));
  return placed.flatMap(({ node: action, whens }) =>
    drawn.flatMap((template) => {
      const touched = touchedBy(action, template, named, guide);
      return (cutsOf.get(template) ?? []).flatMap((cut): Use[] => {
        const target = touched.find(({ at }) => at === cut.at);
        if (!target) return [];
        return [{ action, template, cut, whens: [...whens, ...target.whens], words: target.words }];
      });
    }),
  );
}

type Touched = Pick<Use, 'whens' | 'words'> & { readonly at: PanelCut['at'] };

/** What of a template an action makes or puts something into; a hole that an action names is made by that one. */
function touchedBy(
  action: Action,
  template: CutTemplate,
  named: ReadonlySet<string>,
  guide: Guide,
): readonly Touched[] {
  const { verb, target } = action;
  const features = featuresOf(template);
  const touched = (feature: Feature, words: string): Touched => ({
    at: feature.at,
    whens: whensOfTarget(guide, { kind: 'hole', template, feature }).map(({ value }) => value),
    words,
  });
  const theHole = (feature: Feature) => `the ${targetNoun({ kind: 'hole', template, feature }).singular}`;
  if (makes(verb) && target.value === template.id) {
    const rest = features.filter(({ id }) => id === null || !named.has(id));
    const place = whensOfTarget(guide, { kind: 'template', template }).map(({ value }) => value);
    const outlines = template.outlines.map(({ at, when }) => ({
      at,
      whens: when ? [...place, when.value] : place,
      words: `“${template.title}” is cut`,
    }));
    return [...outlines, ...rest.map((feature) => touched(feature, `${theHole(feature)} is made`))];
  }
  if (makes(verb)) {
    const own = features.filter(({ id }) => id === target.value);
    return own.map((feature) => touched(feature, `${theHole(feature)} is made`));
  }
  if (!['fit', 'refit', 'start', 'tighten'].includes(verb)) return [];
  const item = findTarget(guide, target.value);
  const into = features.filter((feature) => feature.for?.value === target.value);
  return item
    ? into.map((feature) =>
        touched(feature, `the ${targetNoun(item).singular} goes into ${theHole(feature)}`),
      )
    : [];
}
