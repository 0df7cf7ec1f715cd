import type { Markup } from '../../html/markup.ts';
import { stringify } from '../../html/stringify.ts';
import type { Block } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { Side } from '../../model/item.ts';
import { type GuideContext, shownSection, shownStep, stepRef } from '../frame/context.ts';
import type { Shown, StepRef } from '../frame/shared-views.ts';
import { photoView, settingsOf, sidesOf } from '../steps/evidence.ts';
import { inspectionsOf } from '../steps/inspections.ts';
import { readingsOf } from '../steps/readings.ts';
import type { EvidenceRow } from './sheet-views.ts';

/** Where evidence is asked for. */
interface Place {
  /** The id of the step or section, with which the keys of its fields on the page begin. */
  readonly id: string;
  /** "in the step", "under “Prove it”". */
  readonly where: string;
  readonly step: StepRef | null;
  readonly stepSide: Side | null;
  readonly shown: Shown;
}

/** All evidence that a guide asks for, step by step: photographs, settings and readings. */
export function evidenceRows(guide: Pick<Guide, 'sections'>, context: GuideContext): readonly EvidenceRow[] {
  return guide.sections.flatMap((section) => [
    ...rowsOf(
      section.intro,
      {
        id: section.id,
        where: `under “${section.titleText}”`,
        step: null,
        stepSide: null,
        shown: shownSection(section, guide, context),
      },
      context,
    ),
    ...section.steps.flatMap((step) => {
      const numbered = context.steps.get(step.id);
      const ref = stepRef(context, step.id);
      if (!numbered || !ref) return [];
      const shown = shownStep(context, numbered);
      const place = {
        id: step.id,
        where: 'in the step',
        step: ref,
        stepSide: step.side?.value ?? null,
        shown,
      };
      const settings = settingsOf(step, context).map(({ id: setting, name, from, to, ...own }) =>
        row(place, own, {
          key: `setting ${setting}`,
          what: 'Setting',
          text: words(name),
          expect: `from “${from}” to “${to}”`,
          written: null,
          sides: sidesOf(null, context),
        }),
      );
      const found = inspectionsOf(step, context).map(({ id: inspection, name, outcomes, ...own }) =>
        row(place, own, {
          key: `inspection ${inspection}`,
          what: 'Inspection',
          text: words(name),
          expect: `one of: ${outcomes.map((outcome) => outcome.name).join(', ')}`,
          written: null,
          sides: sidesOf(null, context),
        }),
      );
      return [...rowsOf(step.blocks, place, context), ...settings, ...found];
    }),
  ]);
}

function rowsOf(blocks: readonly Block[], place: Place, context: GuideContext): readonly EvidenceRow[] {
  const photos = blocks.filter((block) => block.type === 'photo');
  return [
    ...photos.map((block, index) => {
      const { number, shows, sides, ...own } = photoView(block, index + 1, context, place.stepSide);
      const key = `photo ${number}`;
      return row(place, own, { key, what: 'Photograph', text: shows, expect: null, written: null, sides });
    }),
    ...readingsOf(blocks, context, place.stepSide).map(({ id, name, expect, sides, check: _, ...own }) =>
      row(place, own, {
        key: `reading ${id}`,
        what: 'Reading',
        text: words(name),
        expect,
        written: `written ${place.where}`,
        sides,
      }),
    ),
  ];
}

/** What is asked for in all builds of its step is asked for where the step is. */
function row(
  { id, step, shown }: Place,
  own: Shown,
  { key, ...asked }: Pick<EvidenceRow, 'key' | 'what' | 'text' | 'expect' | 'written' | 'sides'>,
): EvidenceRow {
  const { plans, only } = own.plans === null ? shown : own;
  return { plans, only, step, key: `${id} ${key}`, ...asked };
}

function words(value: string): Markup {
  return stringify([{ type: 'text', value }]);
}
