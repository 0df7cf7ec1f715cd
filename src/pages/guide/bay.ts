import { type Markup, markup } from '../../html/markup.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { GuideContext } from '../frame/context.ts';
import { dateWords } from '../frame/identity.ts';
import type { BayData } from './bay-data.ts';

/** Digits of a step's fingerprint that tell it from what it was before: a page has some hundred steps at the most. */
const STEP_DIGITS = 16;

/** The data of a guide, its steps in the order of the page. */
export function bayData(guide: Guide, job: Job, { steps }: Pick<GuideContext, 'steps'>): BayData {
  const edition = [
    guide.revision ? `revision ${guide.revision.value}` : null,
    guide.updated ? dateWords(guide.updated.value) : null,
  ];
  return {
    guide: guide.id,
    title: guide.title.value,
    edition: edition.filter((part) => part !== null).join(', '),
    fingerprint: job.fingerprint,
    words: { vehicle: guide.words.vehicle, left: guide.words.left, right: guide.words.right },
    steps: [...steps.values()].map(({ step }) => ({
      id: step.id,
      title: step.titleText,
      fingerprint: (job.stepFingerprints.get(step.id) ?? '').slice(0, STEP_DIGITS),
      sides: step.side?.value === 'each',
      wait: step.wait?.value ?? 0,
    })),
  };
}

/** The data as JSON for a `<script type="application/json">`: nothing in it can end the element. */
export function bayMarkup(data: BayData): Markup {
  return markup(JSON.stringify(data).replace(/</g, '\\u003c'));
}
