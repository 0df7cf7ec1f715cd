import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { BetweenRule } from '../rule.ts';

const guide = (title: string, cures: string) => `---
title: ${title}
platform: example-van
---

::none{of=wear}
::none{of=tools}
::none{of=kit}
::none{of=conditions}
::supply[Roof sealant]{#sealant quantity="30 ml" cures="${cures}"}
::part[Rail]{#rail}

## Work {#work}

::step[Seal the rail]{#seal}

:apply[sealant]{amount="10 ml" on=rail}.
`;

const card: RuleCard = {
  code: 'product-facts-differ',
  severity: 'warning',
  title: 'Two guides say different things of one product',
  why: 'A sealant cures as long in one job as in the other. Where two guides differ, one of them is wrong, and nobody knows which. Say it once, in supplies.yaml.',
  bad: { 'example/guide.md': guide('Awning', '12 h'), 'other/guide.md': guide('Vent', '24 h') },
  good: { 'example/guide.md': guide('Awning', '24 h'), 'other/guide.md': guide('Vent', '24 h') },
};

/** What guides say of a product of one name is the same in all of them. */
export const productFactsDiffer: BetweenRule = {
  card,
  runBetween: (guides, report) => {
    const firsts = new Map<
      string,
      { readonly value: string; readonly words: string; readonly at: (typeof all)[number]['at'] }
    >();
    const all = guides.flatMap(({ products }) => products);
    for (const { label, says, at } of all) {
      for (const [attribute, { words, value }] of Object.entries(says)) {
        const key = `${attribute} ${label.toLowerCase()}`;
        const first = firsts.get(key);
        if (!first) firsts.set(key, { value, words, at });
        else if (first.value !== value) {
          const message = `here \`${attribute}\` of "${label}" is ${words}, in another guide ${first.words}; say it once, in supplies.yaml`;
          report(finding(card, at, message, { notes: [{ message: 'the other guide', at: first.at }] }));
        }
      }
    }
  },
};
