import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf } from '../../job/index.ts';
import type { Block, SafetyMessage } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Build, When } from '../../model/when.ts';
import type { Rule } from '../rule.ts';
import { areKnown, buildsOf, buildsWith, witnessNotes } from './witness.ts';

const cover = '::part[Bumper cover]{#cover}\n\n::step[Take the cover off]{#cover-off people=2}\n\n';
const off = '\n:remove[cover].\n\n::step[Put the cover on]{#cover-on people=2}\n\n:refit[cover].';
const message = (when: string) =>
  `:::caution[Wide panel]${when}\nA cover that is held by one person falls on a foot. Lift it with a helper.\n:::\n`;

const card: RuleCard = {
  code: 'message-narrower',
  severity: 'error',
  title: 'A safety message that some of those at risk do not read',
  why: 'The message guards the step. On a build where the step is done and the message is left out, the hazard is the same and the warning is gone.',
  bad: `${cover}${message('{when=fog}')}${off}`,
  good: `${cover}${message('')}${off}`,
};

/**
 * A safety message is read on every build on which what it guards is done. One that is narrower than its step
 * is sound where something in the step is as narrow: it guards that.
 */
export const messageNarrower: Rule = {
  card,
  run: ({ guide, job }, report) => {
    const builds = buildsOf(job);
    const judge = (blocks: readonly Block[], steps: readonly Step[], outer: readonly When[]) => {
      for (const block of blocks) {
        if (block.type !== 'message' || !block.when || !areKnown([...outer, block.when.value], guide))
          continue;
        const missing = missingBuilds(block, steps, outer, builds, guide);
        if (missing.length === 0) continue;
        const what = steps.length === 1 ? 'the step that it guards' : 'the section that it guards';
        const notes = witnessNotes(missing, guide, job);
        report(
          finding(card, block.when.at, `this message is left out on a build that does ${what}`, { notes }),
        );
      }
    };
    for (const section of guide.sections) {
      judge(section.intro, section.steps, []);
      for (const step of section.steps) {
        // A derived step repeats the messages of its source.
        if (step.origins.some(({ kind }) => kind === 'reverse')) continue;
        judge(step.blocks, [step], step.when ? [step.when.value] : []);
      }
    }
  },
};

function missingBuilds(
  message: SafetyMessage,
  steps: readonly Step[],
  outer: readonly When[],
  builds: readonly Build[],
  guide: Guide,
): readonly Build[] {
  if (!message.when) return [];
  const around = buildsWith(outer, builds);
  const read = buildsWith([message.when.value], around);
  const guardedAlone = steps.flatMap(actionsOf).some(({ node, whens }) => {
    const item = guide.items.get(node.target.value)?.when;
    const done = buildsWith(item ? [...whens, item.value] : whens, builds);
    return done.length > 0 && done.length < around.length && done.every((build) => read.includes(build));
  });
  return guardedAlone ? [] : around.filter((build) => !read.includes(build));
}
