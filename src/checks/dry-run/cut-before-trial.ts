import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { violationRule } from './violation-rule.ts';
import { done, spoken } from './words.ts';

const card: RuleCard = {
  code: 'cut-before-trial',
  severity: 'error',
  title: 'Something is cut before it has been tried',
  why: 'A panel that is cut stays cut. The trial fit is the last moment at which a wrong part costs nothing.',
  bad: '::part[Bumper cover]{#cover}\n::tool[Rotary cutter]{#cutter cutter-radius="3 mm"}\n\n:::cut-template[Grille notch]{#notch panel=cover face=outside}\n::datum[Centreline]{axis=vertical at="0 mm"}\n::datum[Lower edge]{axis=horizontal at="0 mm"}\n::outline{points="-62,10 r4 62,10 r4 62,38 r4 -62,38 r4" unit=mm}\n:::\n\n::step[Cut the notch]{#cut}\n\n:cut[notch]{with=cutter trial=trial}.\n\n::step[Try the cradle]{#trial}\n\nHold it up and see that the notch will clear it.\n',
  good: '::part[Bumper cover]{#cover}\n::tool[Rotary cutter]{#cutter cutter-radius="3 mm"}\n\n:::cut-template[Grille notch]{#notch panel=cover face=outside}\n::datum[Centreline]{axis=vertical at="0 mm"}\n::datum[Lower edge]{axis=horizontal at="0 mm"}\n::outline{points="-62,10 r4 62,10 r4 62,38 r4 -62,38 r4" unit=mm}\n:::\n\n::step[Try the cradle]{#trial}\n\nHold it up and see that the notch will clear it.\n\n::step[Cut the notch]{#cut}\n\n:cut[notch]{with=cutter trial=trial}.\n',
};

/** What cannot be undone comes after the trial fit that it names. */
export const cutBeforeTrial = violationRule(card, ['before-trial'], (violation, guide) => {
  const item = spoken(violation.item, [], guide);
  const verb = violation.action ? done(violation.action.verb, violation.item, guide) : 'cut';
  const trial = guide.sections.flatMap(({ steps }) => steps).find(({ id }) => id === violation.trial.value);
  const title = trial?.titleText ?? violation.trial.value;
  const [side] = violation.sides;
  const tried = trial?.side?.value;
  if (trial?.side && side && tried && tried !== 'each' && tried !== side) {
    return {
      message: `${item.the} ${item.is} ${verb} on the ${guide.words[side]}, and the trial fit "${title}" is made on the ${guide.words[tried]} only`,
      notes: [{ message: 'the side of the trial fit is said here', at: trial.side.at }],
    };
  }
  return {
    message: `${item.the} ${item.is} ${verb} before the trial fit "${title}"`,
    notes: trial ? [{ message: 'the trial fit comes only here', at: trial.at }] : [],
  };
});
