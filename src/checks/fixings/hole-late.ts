import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { featuresOf } from '../../job/actions/target.ts';
import { actionsOf, findTarget, stepsOf, targetNoun } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action, Verb } from '../../model/inline.ts';
import type { When } from '../../model/when.ts';
import { buildsOf, buildsWith } from '../builds/witness.ts';
import type { Rule, Subject } from '../rule.ts';

const drill = '::step[Drill the hole]{#drill}\n\n:drill[bolt-hole]{with=bit trial=trial}.\n\n';
const fit = '::step[Fit the bracket]{#fit}\n\n:fit[bracket] and :fit[bolt].\n\n';
const guide = (steps: string) => `::part[Panel]{#panel}
::tool[9 mm drill bit]{#bit diameter="9 mm"}
::kit[Bracket]{#bracket}
::kit[Bracket bolt]{#bolt thread=M8x1.25 holds=bracket}

:::cut-template[Bracket hole]{#holes panel=panel face=outside}
::datum[Middle of the panel]{axis=vertical at="0 mm"}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::hole[Bolt hole]{#bolt-hole centre="0,40" diameter="9 mm" for=bolt unit=mm}
:::

::step[Try the bracket]{#trial}

Hold the :kit[bracket] up. It must lie flat.

${steps}`;

const card: RuleCard = {
  code: 'hole-late',
  severity: 'error',
  title: 'Something is fitted before the hole that it goes through is made',
  why: 'A bolt, a grommet or a rivet nut has nowhere to go until its hole is there. Whoever follows the order stands with the part in one hand and reaches for the drill with the other, over paint and chips.',
  bad: guide(`${fit}${drill}`),
  good: guide(`${drill}${fit}`),
};

/** An action with the step and the turn in which it is done, and what it hangs on. */
interface Done {
  readonly action: Action;
  readonly step: Step;
  readonly turn: number;
  readonly whens: readonly When[];
}

/** What comes out of the box and goes through a hole goes in once that is made, in each build and on each side. */
export const holeLate: Rule = {
  card,
  run: (subject, report) => {
    const { guide: checked, lost } = subject;
    const all = stepsOf(checked).flatMap((step) =>
      actionsOf(step).map(({ node, whens }) => ({ action: node, step, whens })),
    );
    const done = all.map((one, turn): Done => ({ ...one, turn }));
    const madeAs = (ids: readonly string[], verbs: readonly Verb[]) =>
      done.filter(({ action }) => verbs.includes(action.verb) && ids.includes(action.target.value));
    for (const template of checked.templates.values()) {
      for (const { id, for: through } of featuresOf(template)) {
        const item = through && checked.items.get(through.value);
        if (item?.kind !== 'kit' || lost.ids.has(item.id)) continue;
        const made = madeAs(id === null ? [template.id] : [id, template.id], ['cut', 'drill']);
        const late = madeAs([item.id], ['fit', 'start']).find((fitted) => comesFirst(fitted, made, subject));
        const [first] = made;
        if (!late || !first) continue;
        const hole = nounOf(first.action, checked);
        const message = `the ${item.noun.singular} goes through the ${hole}, which is made only after this`;
        report(
          finding(card, late.action.at, message, { notes: [{ message: 'made here', at: first.action.at }] }),
        );
      }
    }
  },
};

/** Whether something is fitted in a build, and on a side, in which all that makes its hole comes later. */
function comesFirst(fitted: Done, made: readonly Done[], { job }: Subject): boolean {
  return buildsWith(fitted.whens, buildsOf(job)).some((build) => {
    const here = made.filter(
      (one) => buildsWith(one.whens, [build]).length > 0 && shareASide(one.step, fitted.step),
    );
    return here.length > 0 && here.every(({ turn }) => turn > fitted.turn);
  });
}

function shareASide({ side: one }: Step, { side: other }: Step): boolean {
  const both = (side: Step['side']) => side === null || side.value === 'each';
  return both(one) || both(other) || one?.value === other?.value;
}

function nounOf({ target }: Action, checked: Guide): string {
  const found = findTarget(checked, target.value);
  return found ? targetNoun(found).singular : target.value;
}
