import { type Markup, markup } from '../../html/markup.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { GuideContext } from '../frame/context.ts';
import { editionWords, stepPrint } from '../frame/identity.ts';

import type { BayData } from './bay-data.ts';
import { rechecksOf } from './hand-over.ts';
import { intakePlaces } from './intake.ts';

/** The data of a guide, its steps in the order of the page. */
export function bayData(guide: Guide, job: Job, context: GuideContext): BayData {
  return {
    // A visit may bear the name of a guide.
    guide: guide.visit ? `visits/${guide.id}` : guide.id,
    title: guide.title.value,
    edition: editionWords(guide),
    revision: guide.revision?.value ?? null,
    fingerprint: job.fingerprint,
    words: { vehicle: guide.words.vehicle, left: guide.words.left, right: guide.words.right },
    steps: [...context.steps.values()].map(({ step }) => ({
      id: step.id,
      title: step.titleText,
      fingerprint: stepPrint(step.id, job),
      sides: step.side?.value === 'each',
      wait: step.wait?.value ?? 0,
    })),
    guides: (guide.visit?.guides ?? []).map(({ id, title, revision, fingerprint }) => ({
      id,
      title,
      revision,
      fingerprint,
    })),
    intake: intakePlaces(context),
    rechecks: rechecksOf(guide, context).map(({ name, detail, when, terms, plans }) => ({
      what: name,
      detail,
      when,
      terms,
      plans,
    })),
  };
}

/** The data as JSON for a `<script type="application/json">`: nothing in it can end the element. */
export function bayMarkup(data: BayData): Markup {
  return markup(JSON.stringify(data).replace(/</g, '\\u003c'));
}
