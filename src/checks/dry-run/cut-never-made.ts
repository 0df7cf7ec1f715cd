import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { findTarget } from '../../job/index.ts';
import { violationRule } from './violation-rule.ts';
import { spoken } from './words.ts';

const card: RuleCard = {
  code: 'cut-never-made',
  severity: 'error',
  title: 'A template is drawn, and no step cuts it',
  why: 'What is on the template is taken to be needed. A hole that no step drills is found when its screw has nowhere to go.',
  bad: '::part[Bumper cover]{#cover}\n::tool[Rotary cutter]{#cutter cutter-radius="3 mm"}\n\n:::cut-template[Grille notch]{#notch panel=cover face=outside}\n::datum[Centreline]{axis=vertical at="0 mm"}\n::datum[Lower edge]{axis=horizontal at="0 mm"}\n::outline{points="-62,10 r4 62,10 r4 62,38 r4 -62,38 r4" unit=mm}\n:::\n\n::step[Cut the notch]{#cut}\n\nLay the :cut-template[notch] on its datums. Keep the :tool[cutter] at hand.',
  good: '::part[Bumper cover]{#cover}\n::tool[Rotary cutter]{#cutter cutter-radius="3 mm"}\n\n:::cut-template[Grille notch]{#notch panel=cover face=outside}\n::datum[Centreline]{axis=vertical at="0 mm"}\n::datum[Lower edge]{axis=horizontal at="0 mm"}\n::outline{points="-62,10 r4 62,10 r4 62,38 r4 -62,38 r4" unit=mm}\n:::\n\n::step[Cut the notch]{#cut}\n\nLay the :cut-template[notch] on its datums and :cut[notch]{with=cutter}.',
};

/** What a template draws is cut, and every hole with a name is drilled. */
export const cutNeverMade = violationRule(card, ['never-made'], (violation, guide) => {
  const item = spoken(violation.item, [], guide);
  const target = findTarget(guide, violation.item);
  const cause = target?.kind === 'hole' ? target.template.id : violation.item;
  return { message: `no step makes ${item.the}`, cause };
});
