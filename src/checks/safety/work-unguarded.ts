import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf } from '../../job/index.ts';
import type { Block } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Item, WorkClass } from '../../model/item.ts';
import type { Rule } from '../rule.ts';
import { classNotes, workNames } from './work-class.ts';

const message =
  ':::warning[Airbag charge]\nA charged module can fire and injure you. Wait for its time.\n:::\n\n';

const guide = (atRefit: string) => `::condition[Battery isolated]{#battery-off}
::connector[Airbag plug]{#airbag-plug work=airbag needs=battery-off}

## Off {#off}

::step[Free the plug]{#free sign-off=second}

${message}:set[battery-off]{say="make sure of"}, and :disconnect[airbag-plug].

## On {#on}

::step[Plug it in]{#plug sign-off=second}

${atRefit}:connect[airbag-plug], and :clear[battery-off]{say="end"}.`;

const card: RuleCard = {
  code: 'work-unguarded',
  severity: 'warning',
  title: 'Airbag or high-voltage work is warned of once, and not where it is done again',
  why: 'What can fire when a plug comes off can fire when it goes on. The refit is often done on another day, by somebody who has not read the strip-down.',
  bad: guide(''),
  good: guide(message),
};

/** Where one step of a class warns, every other section that has such work warns before it too. */
export const workUnguarded: Rule = {
  card,
  run: ({ guide: { sections, items, words } }, report) => {
    for (const work of ['airbag', 'high-voltage'] as const) {
      const found = sections.flatMap(({ intro, steps }) => {
        const first = steps.findIndex((step) => itemOf(step, work, items) !== null);
        const step = steps[first];
        const item = step && itemOf(step, work, items);
        if (!step || !item) return [];
        const before = [...intro, ...steps.slice(0, first + 1).flatMap(({ blocks }) => blocks)];
        return [{ step, item, message: before.find(isGrave) ?? null }];
      });
      const said = found.find((one) => one.message !== null)?.message;
      if (!said) continue;
      for (const { step, item } of found.filter((one) => one.message === null)) {
        const message = `${workNames[work]} in the step "${step.titleText}" is not warned of, as it is elsewhere; put the message before it, or before the first step of its section`;
        const notes = [
          { message: 'the other work is warned of here', at: said.at },
          ...classNotes(item, { words }),
        ];
        report(finding(card, step.at, message, { notes }));
      }
    }
  },
};

function itemOf(step: Step, work: WorkClass, items: Guide['items']): Item | null {
  const acted = actionsOf(step).flatMap(({ node }) => items.get(node.target.value) ?? []);
  return acted.find((item) => item.kind !== 'condition' && item.work?.value === work) ?? null;
}

function isGrave(block: Block): boolean {
  return block.type === 'message' && (block.word === 'danger' || block.word === 'warning');
}
