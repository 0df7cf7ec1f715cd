import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { nearest } from '../../diagnostics/suggest.ts';
import type { Rule } from '../rule.ts';

const body = '\n## Work {#work}\n\n::step[Look around]{#look}\n\nLook behind the edge.\n';
const nones =
  '::none{of=wear}\n::none{of=tools}\n::none{of=supplies}\n::none{of=kit}\n::none{of=conditions}\n';
const guide = (platform: string) =>
  `---\ntitle: Example\nplatform: ${platform}\n---\n\n## What you need {#need}\n\n${nones}${body}`;

const card: RuleCard = {
  code: 'platform-unknown',
  severity: 'error',
  title: 'A guide for a platform that the shop does not have',
  why: 'The platform says which builds of the vehicle there are. Without it nobody can tell for which vehicles the guide is right.',
  bad: { 'example/guide.md': guide('exampel-van') },
  good: { 'example/guide.md': guide('example-van') },
};

/** The platform of a guide is a file in `platforms/`. */
export const platformUnknown: Rule = {
  card,
  run: ({ guide: { platform }, shop }, report) => {
    const { value: id, at } = platform;
    // A platform whose file is there but cannot be read has findings of its own.
    if (shop.platforms.has(id) || shop.files.has(`platforms/${id}.md`)) return;
    const near = nearest(id, shop.platforms.keys())[0];
    report(
      finding(card, at, `there is no platform "${id}"; it would be the file platforms/${id}.md`, {
        suggestion: near === undefined ? undefined : { at, text: near },
      }),
    );
  },
};
