import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { actionsWritten, type WrittenAction } from './actions-written.ts';
import type { Rule } from './rule.ts';

const card: RuleCard = {
  code: 'action-unplayed',
  severity: 'error',
  title: 'An action where nothing is done',
  why: 'A note informs and never instructs, and a caption tells what a picture shows. An action there is printed like an instruction, and nobody counts it.',
  bad: '::connector[Lamp plug]{#lamp-plug}\n\n::step[Look at the plug]{#look}\n\nLook behind the edge.\n\n:::note\nTo reach it, :disconnect[lamp-plug].\n:::',
  good: '::connector[Lamp plug]{#lamp-plug}\n\n::step[Look at the plug]{#look}\n\nLook behind the edge.\n\n:::note\nThe :connector[lamp-plug] is hard to reach.\n:::',
};

/** How the places are called where an action is not carried out. */
const silent: Readonly<Partial<Record<WrittenAction['in'], string>>> = {
  note: 'in a note, which informs and never instructs',
  why: 'in an explanation, which the print leaves out',
  owner: 'in the text for the owner',
  'refit-note': 'in a refit note; what is refitted follows from the step itself',
  figure: 'in a figure, which shows and never instructs',
  title: 'in the title of a step, which only names it',
};

/** Actions stand in the sentences of a step, where they are read, done and counted. */
export const actionUnplayed: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const { action, in: place } of actionsWritten(guide)) {
      const why = silent[place];
      if (why !== undefined) report(finding(card, action.at, `:${action.verb} stands ${why}`));
    }
  },
};
