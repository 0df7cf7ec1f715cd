import type { Guide, Step } from '../../model/guide.ts';
import type { Build } from '../../model/when.ts';
import { allHold } from '../builds/when.ts';
import { featuresOf, findTarget } from './target.ts';
import { actionsOf, placedInStep } from './walk.ts';

/** What a step has its hands on, by id, as far as it decides what can be done before or after what. */
interface Touch {
  readonly step: string;
  /** Parts, fasteners, kit, connectors, templates, conditions, supplies that come off again; not tools. */
  readonly things: ReadonlySet<string>;
  /** The same with all that these hold, sit on, cover, replace or need. */
  readonly reach: ReadonlySet<string>;
  /** Supplies that stay on and dry or cure. */
  readonly products: ReadonlySet<string>;
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
  const touched = new Set([
    ...named.flatMap((id) => thingOf(id, guide)),
    ...actions.flatMap(({ on }) => on.map(({ value }) => value)),
    ...needs,
  ]);
  const isProduct = (id: string) => {
    const item = guide.items.get(id);
    return item?.kind === 'supply' && !item.temporary;
  };
  const things = new Set([...touched].filter((id) => !isProduct(id)));
  return {
    step: step.id,
    things,
    reach: new Set([...things].flatMap((id) => [id, ...linkedTo(id, guide)])),
    products: new Set([...touched].filter(isProduct)),
    trials: new Set(actions.flatMap(({ trial }) => (trial ? [trial.value] : []))),
    sets: new Set(conditions('set')),
    needs: new Set([...needs, ...conditions('clear')]),
  };
}

/**
 * Whether two steps have something to do with each other, so that their order is the author's.
 *
 * @param alike whether the same product, put on anywhere, is something to do with each other
 */
export function touches(one: Touch, other: Touch, alike: boolean): boolean {
  if (alike && [...one.products].some((id) => other.products.has(id))) return true;
  if (one.trials.has(other.step) || other.trials.has(one.step)) return true;
  for (const id of other.things) if (one.reach.has(id)) return true;
  for (const id of one.things) if (other.reach.has(id)) return true;
  return false;
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
    const panel = template.panel?.value;
    const over = [...guide.items.values()].flatMap((item) =>
      'covers' in item && item.covers.some(({ value }) => value === panel) ? [item.id] : [],
    );
    return [...(panel === undefined ? [] : [panel, ...over]), ...holes];
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
