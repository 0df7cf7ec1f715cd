import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf } from '../../job/actions/walk.ts';
import { findTarget } from '../../job/index.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action } from '../../model/inline.ts';
import { visitRouteCut } from '../rules.ts';

/** The template that an action cuts or drills; `null` for any other action. */
export function templateCutBy(
  { verb, target }: Action,
  guide: Pick<Guide, 'items' | 'templates'>,
): CutTemplate | null {
  if (verb !== 'cut' && verb !== 'drill') return null;
  const found = findTarget(guide, target.value);
  return found && found.kind !== 'item' ? found.template : null;
}

/** Tells where one guide of a visit cuts into a part along which another lays something. */
export function reportRoutes(guide: Guide, report: Report): void {
  const steps = stepsOf(guide);
  const works = steps.flatMap((step, place) => actionsOf(step).map(({ node }) => ({ node, step, place })));
  for (const route of works) {
    if (route.node.verb !== 'route') continue;
    for (const { value } of route.node.on) {
      const cut = works.find(
        ({ node, step }) =>
          templateCutBy(node, guide)?.panel?.value === value && !isOneGuide(guide, step, route.step),
      );
      const template = cut && templateCutBy(cut.node, guide);
      if (!cut || !template) continue;
      const [what, along] = [route.node.target.value, value].map(
        (id) => guide.items.get(id)?.noun.singular ?? id,
      );
      const when =
        cut.place < route.place
          ? 'keep it clear of the edges, and of what is put into them'
          : 'it lies there when the tool comes through: draw it aside first';
      const message = `the ${what} is routed along the ${along}, into which “${template.title}” is cut: ${when}`;
      const notes = [{ message: `cut in “${cut.step.titleText}”`, at: cut.node.at }];
      report(finding(visitRouteCut, route.node.at, message, { notes }));
    }
  }
}

function isOneGuide({ visit }: Guide, one: Step, other: Step): boolean {
  const others = visit?.steps.get(other.id)?.guides ?? [];
  return visit?.steps.get(one.id)?.guides.some((id) => others.includes(id)) ?? true;
}
