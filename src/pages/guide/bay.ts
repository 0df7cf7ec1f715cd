import { type Markup, markup } from '../../html/markup.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { GuideContext } from '../frame/context.ts';
import { editionWords, stepPrint } from '../frame/identity.ts';
import type { BayData } from './bay-data.ts';

/** The data of a guide, its steps in the order of the page. */
export function bayData(guide: Guide, job: Job, { steps }: Pick<GuideContext, 'steps'>): BayData {
  return {
    // A visit may bear the name of a guide.
    guide: guide.visit ? `visits/${guide.id}` : guide.id,
    title: guide.title.value,
    edition: editionWords(guide),
    fingerprint: job.fingerprint,
    words: { vehicle: guide.words.vehicle, left: guide.words.left, right: guide.words.right },
    steps: [...steps.values()].map(({ step }) => ({
      id: step.id,
      title: step.titleText,
      fingerprint: stepPrint(step.id, job),
      sides: step.side?.value === 'each',
      wait: step.wait?.value ?? 0,
    })),
  };
}

/** The data as JSON for a `<script type="application/json">`: nothing in it can end the element. */
export function bayMarkup(data: BayData): Markup {
  return markup(JSON.stringify(data).replace(/</g, '\\u003c'));
}
