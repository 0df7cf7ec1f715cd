import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { findTarget } from '../job/index.ts';
import { referencesOf } from './names/references.ts';
import { declaredOf, leafOf, noneKinds } from './none-kinds.ts';
import type { Rule } from './rule.ts';

const everything =
  '::none{of=wear}\n::none{of=tools}\n::none{of=supplies}\n::none{of=kit}\n::none{of=conditions}';
const step = '::step[Look around]{#look}\n\nLook behind the edge.';
const frontMatter = '---\ntitle: Example\nplatform: example-van\n---\n\n## What you need {#need}\n\n';

const card: RuleCard = {
  code: 'none-missing',
  severity: 'error',
  title: 'Nothing is declared, and nothing says that none is needed',
  why: '"None needed" and "forgotten" look the same on a print. A guide that needs no supplies says so.',
  bad: `${frontMatter}${everything.replace('::none{of=supplies}\n', '')}\n\n${step}`,
  good: `${frontMatter}${everything}\n\n${step}`,
};

/** Each of the five lists holds something, or `::none` says that it is empty on purpose. */
export const noneMissing: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    if (lost.declarations.has('none') || lost.declarations.has('procedure')) return;
    const silent = noneKinds.filter(
      (kind) =>
        declaredOf(guide, kind).length === 0 &&
        !guide.nones.some(({ of }) => of === kind) &&
        !lost.declarations.has(leafOf(kind)),
    );
    if (silent.length === 0) return;
    const missing = referencesOf(guide).filter(({ ref }) => findTarget(guide, ref.value) === null);
    for (const kind of silent) {
      // What is named without being declared is told by its name.
      if (missing.some(({ wanted }) => wanted === leafOf(kind))) continue;
      const message = `no ${kind} declared; where none ${kind === 'kit' ? 'is' : 'are'} needed, say ::none{of=${kind}}`;
      report(finding(card, guide.title.at, message));
    }
  },
};
