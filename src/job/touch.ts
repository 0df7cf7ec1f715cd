import type { Guide, Step } from '../model/guide.ts';
import type { Build } from '../model/when.ts';
import { featuresOf, findTarget } from './target.ts';
import { actionsOf, placedInStep } from './walk.ts';
import { allHold } from './when.ts';

/** What a step has its hands on, by id, as far as it decides what can be done before or after what. */
interface Touch {
  readonly step: string;
  /** Parts, fasteners, kit, connectors, templates, conditions; not tools, nor supplies that stay on, but
   * for those that dry or cure. */
  readonly things: ReadonlySet<string>;
  /** Steps that it names as its trial fit. */
  readonly trials: ReadonlySet<string>;
  /** Conditions that it sets. */
  readonly sets: ReadonlySet<string>;
  /** Conditions that must hold for it, or that it clears. */
  readonly needs: ReadonlySet<string>;
}

/** What a step touches in a build. */
export function touchOf(step: Step, guide: Guide, build: Build): Touch {
  const actions = actionsOf(step).flatMap(({ node, whens }) => (allHold(whens, build) ? [node] : []));
  const named = placedInStep(step).flatMap(({ node, whens }) =>
    allHold(whens, build) ? [node.target.value] : [],
  );
  const conditions = (verb: 'set' | 'clear') =>
    actions.flatMap((action) => (action.verb === verb ? [action.target.value] : []));
  const needs = [
    ...step.needs.map(({ value }) => value),
    ...actions.flatMap(({ target }) => guide.items.get(target.value)?.needs.map(({ value }) => value) ?? []),
  ];
  return {
    step: step.id,
    things: new Set([
      ...named.flatMap((id) => thingOf(id, guide)),
      ...actions.flatMap(({ on }) => on.map(({ value }) => value)),
      ...needs,
    ]),
    trials: new Set(actions.flatMap(({ trial }) => (trial ? [trial.value] : []))),
    sets: new Set(conditions('set')),
    needs: new Set([...needs, ...conditions('clear')]),
  };
}

/** Whether two steps have something to do with each other, so that their order is the author's. */
export function touches(one: Touch, other: Touch, guide: Guide): boolean {
  if (one.trials.has(other.step) || other.trials.has(one.step)) return true;
  const reach = new Set([...one.things].flatMap((id) => [id, ...linkedTo(id, guide)]));
  if ([...other.things].some((id) => reach.has(id))) return true;
  return [...other.things].some((id) => linkedTo(id, guide).some((linked) => one.things.has(linked)));
}

/** The thing that an id stands for: a hole stands for its template. */
function thingOf(id: string, guide: Guide): readonly string[] {
  const target = findTarget(guide, id);
  if (!target) return [];
  if (target.kind !== 'item') return [target.template.id];
  const { item } = target;
  const leavesNoTrace =
    item.kind === 'tool' ||
    item.kind === 'wear' ||
    (item.kind === 'supply' && !item.temporary && !item.dries && !item.cures);
  return leavesNoTrace ? [] : [item.id];
}

/** What an item holds, sits on, covers, replaces or needs; what a template is cut from and for. */
function linkedTo(id: string, guide: Guide): readonly string[] {
  const template = guide.templates.get(id);
  if (template) {
    const holes = featuresOf(template).flatMap((feature) => feature.for?.value ?? []);
    return [...(template.panel === null ? [] : [template.panel.value]), ...holes];
  }
  const item = guide.items.get(id);
  if (!item) return [];
  return [
    ...item.needs.map(({ value }) => value),
    ...('holds' in item ? item.holds.map(({ value }) => value) : []),
    ...('covers' in item ? item.covers.map(({ value }) => value) : []),
    ...('on' in item ? item.on.map(({ value }) => value) : []),
    ...('replaces' in item && item.replaces ? [item.replaces.value] : []),
  ];
}
