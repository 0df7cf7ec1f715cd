import { listed, lowered } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import { formatEstimate } from '../../units/estimate.ts';
import { base } from '../../units/quantity.ts';
import { guideFolder, type PageContext } from '../frame/context.ts';
import { dateWords } from '../frame/identity.ts';
import type { GuideEntry } from '../overview/overview-views.ts';

/** A guide as lists name it: what it is, how long it takes, for which builds it differs. */
export function guideEntry(guide: Guide, job: Job, { root }: Pick<PageContext, 'root'>): GuideEntry {
  const least = Math.min(...job.plans.map(({ time }) => time.job.least));
  const most = Math.max(...job.plans.map(({ time }) => time.job.most));
  const bounds = {
    least: base<'time'>(least),
    likely: base<'time'>((least + most) / 2),
    most: base<'time'>(most),
  };
  const people = Math.max(1, ...job.plans.flatMap((plan) => plan.steps.map((step) => step.people)));
  return {
    link: { text: guide.title.value, href: `${root}${guideFolder(guide)}index.html` },
    partNumber: guide.partNumber?.value ?? null,
    revision: guide.revision?.value ?? null,
    updated: guide.updated ? dateWords(guide.updated.value) : null,
    time: formatEstimate(bounds),
    people: people > 1 ? `${people} people for some steps` : '1 person',
    builds: buildWords(guide, job),
  };
}

/** For whom the guide is: "for every build", or the options by which it differs. */
function buildWords({ builds }: Guide, job: Job): string {
  const deciding = builds.options.filter(({ id }) => job.decidingOptions.includes(id));
  if (deciding.length === 0 || job.plans.length < 2) return 'The same for every build';
  const names = deciding.flatMap(({ name, choices }) => choices?.map((choice) => choice.name) ?? [name]);
  return `Differs with ${listed(names.map(lowered))}`;
}
