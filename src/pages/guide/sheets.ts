import type { Guide } from '../../model/guide.ts';
import type { BagLine, CountLine } from '../../model/job.ts';
import { type GuideContext, shownStep, stepRef } from '../frame/context.ts';
import { sharedRows } from '../frame/plans.ts';
import type { Shown } from '../frame/shared-views.ts';
import { benchItemWords } from '../steps/bench.ts';
import { torquesOf } from '../steps/tightening/torques.ts';
import { evidenceRows } from './evidence-rows.ts';
import type { BagView, CountRow, SheetsView, SignOffRow, TorqueRow } from './sheet-views.ts';

/** The sheets that are filled in during the job: torque log, bags with labels, count sheet, sign-offs. */
export function sheetsView(guide: Pick<Guide, 'sections'>, context: GuideContext): SheetsView {
  return {
    torques: torqueRows(context),
    bags: bagViews(context),
    counts: countRows(context),
    evidence: evidenceRows(guide, context),
    signOffs: signOffRows(context),
  };
}

function torqueRows(context: GuideContext): readonly TorqueRow[] {
  return [...context.steps.values()].flatMap((numbered) => {
    const ref = stepRef(context, numbered.step.id);
    if (!ref) return [];
    return torquesOf(numbered.step, context).map((torque) => {
      const shown: Shown = torque.plans === null ? shownStep(context, numbered) : torque;
      return { ...torque, plans: shown.plans, only: shown.only, step: ref };
    });
  });
}

function bagViews(context: GuideContext): readonly BagView[] {
  return sharedRows(context, (plan) => plan.bags).map(({ row, shown }) => ({
    ...shown,
    number: row.number,
    step: stepRef(context, row.step),
    contents: row.contents.map((line) => ({
      text: benchItemWords(line, context),
      back: line.backIn === null ? null : stepRef(context, line.backIn),
      end: line.backIn === null ? endWords(line) : null,
    })),
  }));
}

/** What becomes of what does not go back. */
function endWords({ end }: BagLine): string {
  return end === 'off' ? 'not put back' : end;
}

function countRows(context: GuideContext): readonly CountRow[] {
  return sharedRows(context, (plan) => plan.countSheet).map(({ row, shown }) => ({
    ...shown,
    name: context.guide.items.get(row.item)?.noun.label ?? row.item,
    ...whereTo(row, context),
    from: row.from === 'box' ? 'from the box' : `off the ${context.guide.words.vehicle}`,
    out: row.out,
  }));
}

/** Of what is chosen by a reading so many are fitted as that asks for. */
function whereTo(row: CountLine, { guide }: GuideContext): Pick<CountRow, 'back' | 'elsewhere'> {
  const item = guide.items.get(row.item);
  if (item?.kind !== 'kit' || !item.chosenBy)
    return { back: String(row.back), elsewhere: elsewhereWords(row) };
  const chooser = guide.items.get(item.chosenBy.value)?.noun.singular ?? item.chosenBy.value;
  return { back: 'as needed', elsewhere: `the rest is left over by right (${chooser})` };
}

function elsewhereWords({ discarded, handedOver, replaced, spare }: CountLine): string {
  const parts = [
    discarded > 0 ? `${discarded} discarded` : null,
    handedOver > 0 ? `${handedOver} to the owner` : null,
    replaced > 0 ? `${replaced} replaced` : null,
    spare > 0 ? `${spare} spare` : null,
  ];
  return parts.filter((part) => part !== null).join(', ');
}

function signOffRows(context: GuideContext): readonly SignOffRow[] {
  return [...context.steps.values()].flatMap((numbered) => {
    const ref = numbered.step.signOff ? stepRef(context, numbered.step.id) : null;
    return ref ? [{ ...shownStep(context, numbered), step: ref }] : [];
  });
}
