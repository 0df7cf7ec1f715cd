import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { findTarget, placedIn, stepsOf, targetNoun } from '../../job/index.ts';
import type { Block, SafetyMessage } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action, Verb } from '../../model/inline.ts';
import { instructionsOf } from '../language/clauses.ts';
import { sentencesOf } from '../language/sentences.ts';
import { isWritten } from '../language/written.ts';
import type { Rule } from '../rule.ts';

const card: RuleCard = {
  code: 'message-late',
  severity: 'error',
  title: 'A safety message stands after the work that it guards',
  why: 'The order of the text is the order of doing. A warning that follows the action is read by someone who is already hurt.',
  bad: '::part[Undertray]{#undertray}\n\n::step[Take down the undertray]{#tray}\n\n:remove[undertray]{say=lower}, then :refit[undertray].\n\n:::caution[Grit]\nDirt falls out of the tray and can hurt an eye. Look away.\n:::',
  good: '::part[Undertray]{#undertray}\n\n::step[Take down the undertray]{#tray}\n\n:::caution[Grit]\nDirt falls out of the tray and can hurt an eye. Look away.\n:::\n\n:remove[undertray]{say=lower}, then :refit[undertray].',
};

/** No safety message stands after the work that it guards. */
export const messageLate: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const step of stepsOf(guide).filter(isWritten)) {
      for (const [index, block] of step.blocks.entries()) {
        if (block.type !== 'message') continue;
        const done = actionsIn(step.blocks.slice(0, index));
        const last = done.at(-1);
        if (!last || !isLate(block, done, step.blocks.slice(index + 1), guide)) continue;
        const next = index === step.blocks.length - 1 ? nextStep(step, guide) : null;
        const mend = next
          ? `; put it before the first action of the step, or, if it guards "${next.titleText}", below that ::step line`
          : '; put it before the first action of the step';
        const message = `this ${block.word} stands after what it guards${mend}`;
        const notes = [{ message: 'done before it is read', at: last.at }];
        report(finding(card, block.at, message, { notes }));
      }
    }
  },
};

/** The written step whose line follows the last line of another, in the same file. */
function nextStep(step: Step, guide: Guide): Step | null {
  const steps = stepsOf(guide);
  const next = steps[steps.indexOf(step) + 1];
  return next && isWritten(next) && next.at.file === step.at.file ? next : null;
}

/**
 * Late where nothing is done after it; where what follows is told in words alone, and it speaks of what was handled
 * before; and where it speaks of work that was done before and is not done again.
 */
function isLate(
  message: SafetyMessage,
  done: readonly Action[],
  after: readonly Block[],
  guide: Guide,
): boolean {
  const follows = after.filter(({ type }) => type === 'prose');
  const coming = actionsIn(after);
  const sentences = follows.flatMap((block) =>
    block.type === 'prose' ? sentencesOf(block.content, guide, null) : [],
  );
  if (coming.length === 0 && sentences.every((one) => instructionsOf(one).length === 0)) return true;
  const said = [message.hazard, message.body]
    .flatMap((prose) => sentencesOf(prose, guide, null))
    .flatMap(({ words }) => words.map(({ text }) => text));
  const speaksOf = (names: readonly string[]) => names.some((name) => said.includes(name));
  if (coming.length === 0 && speaksOf(done.flatMap((action) => headOf(action, guide)))) return true;
  const again = (verbs: readonly Verb[]) => coming.some(({ verb }) => verbs.includes(verb));
  return works.some(
    ({ verbs, words }) =>
      done.some(({ verb }) => verbs.includes(verb)) && !again(verbs) && said.some((word) => words.test(word)),
  );
}

/** What a message calls the work that it guards, where the word is plain enough. */
const works: readonly { readonly verbs: readonly Verb[]; readonly words: RegExp }[] = [
  { verbs: ['cut', 'drill'], words: /^(?:chips?|swarf|splinters?|cutting|drilling|sawing)$/ },
  { verbs: ['disconnect'], words: /^(?:unplugging|disconnecting)$/ },
  { verbs: ['remove'], words: /^(?:removing|levering|prying|unbolting|unscrewing)$/ },
  { verbs: ['tighten'], words: /^(?:tightening)$/ },
  { verbs: ['bond'], words: /^(?:bonding|gluing|glueing)$/ },
];

/** The last word of what an action handles, in both numbers: "tray", "trays". */
function headOf({ target }: Action, guide: Guide): readonly string[] {
  const found = findTarget(guide, target.value);
  if (!found) return [];
  const { singular, plural } = targetNoun(found);
  return [singular, plural].map((noun) => noun.split(' ').at(-1)?.toLowerCase() ?? noun);
}

function actionsIn(blocks: readonly Block[]): readonly Action[] {
  const told = blocks.filter(({ type }) => type === 'prose');
  return placedIn(told).flatMap(({ node }) => (node.type === 'action' ? [node] : []));
}
