import { adaptBlock, adaptProse, adaptStep } from '../../guide/procedures/adapt.ts';
import { placedIn } from '../../job/actions/walk.ts';
import { whenKey } from '../../job/builds/when.ts';
import type { Block } from '../../model/block.ts';
import type { Guide, Section, Step } from '../../model/guide.ts';
import { also, either } from '../merge-items.ts';
import { undoOf, type VisitNames } from '../names.ts';

/** A section of a guide under the names of the visit, without its steps. */
export interface VisitSection extends Omit<Section, 'steps'> {
  readonly guide: string;
}

/** What is ordered in a visit: a step, or a section that holds text or proofs and no step. */
export interface VisitNode {
  readonly id: string;
  /** The guides that want it, sorted, each with the section in which it stands. */
  readonly places: ReadonlyMap<string, VisitSection>;
  readonly step: Step | null;
}

/** The nodes of a visit, and for each guide the order in which its author has written them. */
export interface VisitNodes {
  readonly nodes: ReadonlyMap<string, VisitNode>;
  readonly chains: ReadonlyMap<string, readonly string[]>;
}

/** Lays the steps of all guides together: what is one step is one node. */
export function visitNodes(guides: readonly Guide[], names: ReadonlyMap<string, VisitNames>): VisitNodes {
  const nodes = new Map<string, VisitNode>();
  const chains = new Map<string, readonly string[]>();
  for (const guide of guides) {
    const by = names.get(guide.id);
    if (!by) continue;
    const chain: string[] = [];
    const add = (id: string, section: VisitSection, step: Step | null) => {
      chain.push(id);
      const known = nodes.get(id);
      nodes.set(id, {
        id,
        places: new Map([...(known?.places ?? []), [guide.id, section]]),
        step: known?.step && step ? oneStep(known.step, step) : step,
      });
    };
    const [about] = guide.sections;
    if (about && guide.opening.length > 0) {
      // What an author says before all headings stands before the work; the underscore keeps its id apart.
      const opening = { ...about, id: 'about_it', titleText: 'what it is', intro: guide.opening, steps: [] };
      const title = [{ type: 'text' as const, value: opening.titleText, at: null }];
      add(`text ${by.section(opening.id)}`, adaptedSection({ ...opening, title }, guide, by), null);
    }
    for (const section of guide.sections) {
      const own = adaptedSection(section, guide, by);
      if (section.steps.length === 0 && section.intro.length > 0) add(`text ${own.id}`, own, null);
      for (const step of section.steps) add(by.step(step.id), own, adaptedStep(step, by));
    }
    chains.set(guide.id, chain);
  }
  return { nodes, chains };
}

function adaptedSection({ steps: _, ...section }: Section, guide: Guide, by: VisitNames): VisitSection {
  return {
    ...section,
    id: by.section(section.id),
    title: adaptProse(section.title, by),
    intro: section.intro.map((block) => adaptBlock(block, by)),
    guide: guide.id,
  };
}

function adaptedStep(step: Step, by: VisitNames): Step {
  return {
    ...adaptStep(step, by),
    origins: step.origins.map((origin) =>
      origin.kind === 'reverse'
        ? { ...origin, step: by.step(origin.step), leftOut: origin.leftOut.map(by.step) }
        : origin,
    ),
  };
}

/** One step that two guides want: it is done where either does it, and warns of all that either warns of. */
function oneStep(a: Step, b: Step): Step {
  const told = new Set(a.blocks.map(blockKey));
  const more = b.blocks.filter((block) => block.type === 'message' && !told.has(blockKey(block)));
  const longer = (b.time?.value.likely ?? 0) > (a.time?.value.likely ?? 0) ? b.time : a.time;
  return {
    ...a,
    when: either(a.when, b.when),
    needs: also(a.needs, b.needs),
    after: also(a.after, b.after),
    time: longer,
    people: Math.max(a.people, b.people),
    signOff: a.signOff || b.signOff,
    anyOrder: a.anyOrder && b.anyOrder,
    blocks: [...more, ...a.blocks],
  };
}

/** What a block says, apart from where it stands. */
function blockKey(block: Block): string {
  return JSON.stringify(block, (key, value) => (key === 'at' || key === 'idAt' ? undefined : value));
}

/**
 * The steps that guides share by their place in a procedure and that are not the same work in each, by what they
 * would be one by: they are done for each guide by itself, and so is what undoes them.
 */
export function unlikeSteps(
  guides: readonly Guide[],
  names: ReadonlyMap<string, VisitNames>,
): ReadonlySet<string> {
  const works = new Map<string, string>();
  const unlike = new Set<string>();
  for (const guide of guides) {
    const by = names.get(guide.id);
    for (const step of by ? guide.sections.flatMap(({ steps }) => steps) : []) {
      const identity = by?.shared(step) ?? null;
      if (!by || identity === null) continue;
      const work = workKey(adaptStep(step, by));
      if ((works.get(identity) ?? work) !== work) unlike.add(identity.replace(/^(?:undo )+/, ''));
      works.set(identity, work);
    }
  }
  return new Set([...unlike].flatMap((identity) => [identity, undoOf(identity)]));
}

function workKey({ blocks, side, wait }: Step): string {
  const actions = placedIn(blocks).flatMap(({ node, block, whens }) =>
    node.type === 'action' && block.type !== 'refit-note'
      ? [[node.verb, node.target.value, node.amount?.value.base, ...whens.map(whenKey)]]
      : [],
  );
  return JSON.stringify([side?.value, wait?.value, actions]);
}
