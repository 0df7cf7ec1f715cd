import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { actionsOf, provesOf, stepsOf } from '../../job/index.ts';
import { referencesOf } from '../names/references.ts';
import type { Rule } from '../rule.ts';

const guide = (needs: string) =>
  `::condition[Sealant cured]{#cured stays}\n\n::step[Seal the seam]{#seal wait="24 h"}\n\nLay the bead, then let it be and :set[cured].\n\n:::prove[Leak test]${needs}\n- No water inside after ten minutes\n:::`;

const card: RuleCard = {
  code: 'condition-gates-nothing',
  severity: 'warning',
  title: 'Nothing waits for a lasting state',
  why: 'A cure is declared because something must not happen before it. Where nothing needs it, the vehicle is tested, or driven, on sealant that is still wet.',
  bad: guide(''),
  good: guide('{needs=cured}'),
};

/** A state that stays, and that a job with a proof sets, is needed by the proof or by something else. */
export const conditionGatesNothing: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    if (provesOf(guide).length === 0) return;
    const needed = new Set(
      referencesOf(guide).flatMap(({ ref, wanted }) => (wanted === 'need' ? [ref.value] : [])),
    );
    const set = new Set(
      stepsOf(guide)
        .flatMap(actionsOf)
        .flatMap(({ node }) => (node.verb === 'set' ? [node.target.value] : [])),
    );
    for (const item of guide.items.values()) {
      if (item.kind !== 'condition' || !item.stays || item.unknown.has('needs')) continue;
      if (!set.has(item.id) || needed.has(item.id) || lost.ids.has(item.id)) continue;
      const message = `“${item.noun.singular}” is set and stays, and nothing needs it; where the proof must wait for it, write needs=${item.id} on the :::prove, or on the step that must`;
      report(finding(card, item.idAt, message));
    }
  },
};
