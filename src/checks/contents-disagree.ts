import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import { totalCount } from '../job/index.ts';
import type { KitItem } from '../model/item.ts';
import { idsNamed } from './references.ts';
import type { Rule } from './rule.ts';

const nones = '::none{of=wear}\n::none{of=tools}\n::none{of=supplies}\n::none{of=conditions}';
const guide = (nuts: number) => `---
title: Example
platform: example-van
contents:
  bracket: 1
  nut: ${nuts}
---

## What you need {#need}

${nones}
::kit[Bracket]{#bracket}
::kit[Flange nut]{#nut count=4 thread=M8x1.25 holds=bracket}

## Fit {#fit}

::step[Hang the bracket]{#hang}

:fit[bracket] and :fit[nut].
`;

const card: RuleCard = {
  code: 'contents-disagree',
  severity: 'error',
  title: 'The packing list and the guide disagree',
  why: 'The packing list of the box is a second source. Where the two differ, either the guide leaves something over or the technician looks for something that was never delivered.',
  bad: { 'example/guide.md': guide(6) },
  good: { 'example/guide.md': guide(4) },
};

/** What `contents:` repeats of the box's packing list is what the guide declares as kit. */
export const contentsDisagree: Rule = {
  card,
  run: ({ guide, lost }, report) => {
    const { items, contents } = guide;
    if (contents === null) return;
    // What the text names and nobody declares has been told.
    const named = idsNamed(guide);
    const kit = [...items.values()].filter((item): item is KitItem => item.kind === 'kit');
    // What a mistyped id was meant for is on the list.
    const meant = new Set<string>();
    for (const [id, { value: packed, at, idAt }] of contents) {
      const item = kit.find((one) => one.id === id);
      if (!item && !lost.ids.has(id) && !named.has(id)) {
        const known = kit.map((one) => one.id);
        const [likely] = nearest(
          id,
          known.filter((one) => !contents.has(one)),
        );
        if (likely !== undefined) meant.add(likely);
        const message = `the packing list holds "${id}", which the guide does not declare as kit`;
        const suggestion = likely === undefined ? undefined : { at: idAt, text: likely };
        report(finding(card, idAt, message, { suggestion }));
      } else if (item && !item.unknown.has('count') && totalCount(item) !== packed) {
        const message = `the packing list says ${packed}, the guide declares ${totalCount(item)}: ${item.noun.singular}`;
        report(finding(card, at, message, { notes: [{ message: 'declared here', at: item.count.at }] }));
      }
    }
    for (const item of kit) {
      if (contents.has(item.id) || meant.has(item.id)) continue;
      report(
        finding(card, item.idAt, `the ${item.noun.singular} is not on the packing list under "contents"`),
      );
    }
  },
};
