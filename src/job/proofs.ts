import type { Block, Prove } from '../model/block.ts';
import type { Guide, Section, Step } from '../model/guide.ts';
import type { Prose } from '../model/prose.ts';
import type { Build } from '../model/when.ts';
import { sectionsOf } from './actions/uses.ts';
import { allHold } from './builds/when.ts';
import type { DoneStep } from './precedence.ts';

/**
 * The work of a build in the order of the text: its steps, and its proofs that state a time, each as a step of its
 * own, which nothing numbers, on request also those that state none. A proof stands after the step in which it is written.
 * A step may end the job.
 */
export function workOf(guide: Guide, build: Build, untimed = false): readonly DoneStep[] {
  return sectionsOf(guide, build).flatMap((section) => [
    ...proofsIn(section.intro, section, build, untimed),
    ...section.steps.flatMap((step) => [
      { section: section.id, step },
      ...proofsIn(step.blocks, section, build, untimed, step.id),
    ]),
  ]);
}

function proofsIn(
  blocks: readonly Block[],
  section: Section,
  build: Build,
  untimed: boolean,
  host = section.id,
): readonly DoneStep[] {
  return blocks.flatMap((block, index) => {
    if (block.type !== 'prove' || !(block.time || untimed)) return [];
    if (block.when && !allHold([block.when.value], build)) return [];
    return [{ section: section.id, step: asStep(block, `prove-${host}-${index + 1}`), isProof: true }];
  });
}

/** A proof as a step: it takes the hands of one person, and waits for what it needs and measures. */
function asStep(block: Prove, id: string): Step {
  return {
    id,
    idAt: block.at,
    title: block.title,
    titleText: `Prove: ${textOf(block.title)}`,
    refitTitle: null,
    side: null,
    time: block.time,
    times: null,
    until: null,
    wait: null,
    people: 1,
    signOff: false,
    stop: false,
    anyOrder: false,
    after: [],
    needs: block.needs,
    zones: [],
    when: block.when,
    blocks: [block],
    origins: [],
    unknown: new Set(),
    at: block.at,
  };
}

function textOf(prose: Prose): string {
  return prose
    .map((node) => {
      if (node.type === 'text') return node.value;
      return node.type === 'element' || node.type === 'where' ? textOf(node.children) : '';
    })
    .join('');
}
