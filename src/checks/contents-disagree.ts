import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import { listed, packedIds, totalCount } from '../job/index.ts';
import type { KitItem } from '../model/item.ts';
import { idsNamed } from './names/references.ts';
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
    const packed = new Set([...contents.keys()].flatMap(packedIds));
    // What a mistyped id was meant for is on the list.
    const meant = new Set<string>();
    for (const [key, { value, at, idAt }] of contents) {
      const ids = packedIds(key);
      const found = ids.flatMap((id) => kit.find((one) => one.id === id) ?? []);
      const missing = ids.filter((id) => !found.some((one) => one.id === id));
      for (const id of missing.filter((one) => !lost.ids.has(one) && !named.has(one))) {
        const known = kit.map((one) => one.id);
        const [likely] = nearest(
          id,
          known.filter((one) => !packed.has(one)),
        );
        if (likely !== undefined) meant.add(likely);
        const message = `the packing list holds "${id}", which the guide does not declare as kit`;
        const suggestion = likely === undefined ? undefined : { at: idAt, text: key.replace(id, likely) };
        report(finding(card, idAt, message, { suggestion }));
      }
      const declared = found.reduce((sum, item) => sum + totalCount(item), 0);
      const isKnown = missing.length === 0 && found.every((item) => !item.unknown.has('count'));
      if (!isKnown || declared === value) continue;
      const message = `the packing list says ${value}, the guide declares ${declared}: ${listed(found.map((item) => item.noun.singular))}`;
      const notes = found.map((item) => ({ message: 'declared here', at: item.count.at }));
      report(finding(card, at, message, { notes }));
    }
    for (const item of kit) {
      if (packed.has(item.id) || meant.has(item.id)) continue;
      report(
        finding(card, item.idAt, `the ${item.noun.singular} is not on the packing list under "contents"`),
      );
    }
  },
};
