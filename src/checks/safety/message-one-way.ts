import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, findTarget, stepsOf, targetNoun } from '../../job/index.ts';
import type { SafetyMessage } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action } from '../../model/inline.ts';
import { instructionsOf } from '../language/clauses.ts';
import { type Sentence, sentencesOf } from '../language/sentences.ts';
import type { Rule } from '../rule.ts';

const guide = (avoid: string) =>
  `::condition[Battery isolated]{#battery-off set="unbolt the negative lead" clear="bolt the negative lead down"}

## Off {#off}

::step[Isolate the battery]{#battery}

:::warning[Short circuit]
A spanner across the battery can burn you. ${avoid}.
:::

:set[battery-off].

## On {#on}

::reverse{of=off}`;

const card: RuleCard = {
  code: 'message-one-way',
  severity: 'warning',
  title: 'A safety message that the refit repeats tells to undo what is put back there',
  why: 'A refit that is worked out carries the messages of its source. "Undo the negative lead only" is sound advice at the strip-down; at the refit, where the lead is bolted down, it is the wrong way round, and the reader stops believing the messages.',
  bad: guide('Undo the negative lead only'),
  good: guide('Keep the spanner to the negative lead'),
};

/** What a message of a derived refit tells to do is not the undoing of what is put back there. */
export const messageOneWay: Rule = {
  card,
  run: ({ guide }, report) => {
    const told = new Set<SafetyMessage['at']>();
    for (const step of stepsOf(guide)) {
      const origin = step.origins.at(-1);
      if (origin?.kind !== 'reverse') continue;
      const names = namesIn(step, guide);
      for (const block of step.blocks) {
        if (block.type !== 'message' || told.has(block.at)) continue;
        const words = sentencesOf(block.body, guide, step.side?.value ?? null).flatMap(
          (sentence) => undoingIn(sentence, names) ?? [],
        )[0];
        if (words === undefined) continue;
        told.add(block.at);
        const message = `the refit repeats this ${block.word}, and "${words}" is the wrong way round there; word it so that it holds for both ways`;
        report(finding(card, block.at, message, { notes: [{ message: 'repeated here', at: origin.at }] }));
      }
    }
  },
};

const undoing = /^(?:undo|unbolt|unscrew|unplug|disconnect|remove|loosen|detach|unclip|untie)$/;
const doing = /^(?:do|bolt|screw|plug|connect|refit|fit|tighten|attach|clip|tie)$/;
const small = new Set(['the', 'a', 'an', 'both', 'each', 'every', 'all', 'down', 'off', 'on', 'and', 'of']);

/** The command of a sentence that undoes one of some things, in its own words; `null` where none does. */
function undoingIn(sentence: Sentence, names: ReadonlySet<string>): string | null {
  const { words } = sentence;
  // "Never unplug or plug it with the battery connected" holds for both ways.
  if (words.some(({ text }) => text === 'never' || text === 'not' || doing.test(text))) return null;
  for (const start of instructionsOf(sentence)) {
    if (!undoing.test(words[start]?.text ?? '')) continue;
    const rest = words.slice(start);
    const end = rest.findIndex(({ mark }) => mark !== '');
    const clause = (end < 0 ? rest : rest.slice(0, end + 1)).map(({ text }) => text);
    if (clause.some((word) => names.has(word))) return clause.join(' ');
  }
  return null;
}

/** The words for what a derived step handles: nouns, and what is told where a state ends. */
function namesIn(step: Step, guide: Guide): ReadonlySet<string> {
  const texts = actionsOf(step).flatMap(({ node }) => textsOf(node, guide));
  const words = texts.flatMap((text) => text.toLowerCase().split(/[^\p{L}\p{N}-]+/u));
  return new Set(words.filter((word) => word !== '' && !small.has(word) && !doing.test(word)));
}

function textsOf({ target }: Action, guide: Guide): readonly string[] {
  const found = findTarget(guide, target.value);
  if (!found) return [];
  const { singular, plural } = targetNoun(found);
  const stated = found.kind === 'item' && found.item.kind === 'condition' ? found.item.clearWords : null;
  return [singular, plural, stated ?? ''];
}
