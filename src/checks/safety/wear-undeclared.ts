import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Wear } from '../../model/item.ts';
import { actionsWritten } from '../actions-written.ts';
import { referencesOf } from '../names/references.ts';
import type { Rule } from '../rule.ts';

const templateText = `:::cut-template[Notch]{#notch panel=cover face=outside}
::datum[Lower edge]{axis=horizontal at="0 mm"}
::datum[Centreline]{axis=vertical at="0 mm"}
::outline{points="-62,0 62,0 62,38 r6 -62,38 r6" unit=mm open-edge=bottom}
:::`;
const guide = (wear: string) =>
  `::part[Bumper cover]{#cover}\n${wear}::tool[Rotary cutter]{#rotary-cutter cutter-radius="3 mm"}\n\n${templateText}\n\n::step[Try the cradle]{#trial}\n\nHold the cradle up to the cover.\n\n::step[Cut the notch]{#cut}\n\nLay the :cut-template[notch] on the :part[cover] and :cut[notch]{with=rotary-cutter trial=trial}.`;

const card: RuleCard = {
  code: 'wear-undeclared',
  severity: 'error',
  title: 'Work that throws chips, and no eye protection is declared',
  why: 'Whatever cuts or drills throws chips. The gather list shows what to wear before the work begins, and what nobody declares is not on it (common practice, no source).',
  bad: guide('::none{of=wear}\n'),
  good: guide('::wear[Eye protection]{#eye-protection}\n').replace(
    'Lay the',
    'Wear :wear[eye-protection]. Lay the',
  ),
};

const protectsEyes = /\b(?:eyes?|goggles|glasses|visor|face[ -]shield)\b/i;

/** A guide that cuts or drills declares eye protection. */
export const wearUndeclared: Rule = {
  card,
  run: ({ guide, shop, lost }, report) => {
    if (lost.declarations.has('wear')) return;
    const throwsChips = actionsWritten(guide).find(
      ({ action: { verb } }) => verb === 'cut' || verb === 'drill',
    );
    if (!throwsChips) return;
    const worn = [...guide.items.values()].flatMap((item) => (item.kind === 'wear' ? [item] : []));
    if (worn.some(isForEyes)) return;
    // Protection that is named without being declared is told by its name.
    if (referencesOf(guide).some(({ ref, wanted }) => wanted === 'wear' && !guide.items.has(ref.value)))
      return;
    const owned = [...shop.crib.values()].find((item) => item.kind === 'wear' && isForEyes(item));
    const message = `to ${throwsChips.action.verb} throws chips, and no eye protection is declared`;
    const notes = owned
      ? [{ message: `the tool crib has it: declare it with ::wear{#${owned.id}}`, at: owned.idAt }]
      : [{ message: 'declare it with ::wear[Eye protection]{#eye-protection}' }];
    report(finding(card, throwsChips.action.at, message, { notes }));
  },
};

function isForEyes({ id, noun, synonyms }: Wear): boolean {
  return [id, noun.label, ...synonyms].some((name) => protectsEyes.test(name));
}
