import { whenInWords } from '../job/builds/build-words.ts';
import { packedIds } from '../job/packing.ts';
import type { Guide, Section, Step } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Prose } from '../model/prose.ts';
import { ownWords } from '../trade/words.ts';
import { formatEstimate, formatMinutes } from '../units/estimate.ts';
import { names, onlyFor, type Telling, tellingOf, told, yesFact } from './facts.ts';
import { itemNode } from './item-facts.ts';
import { linesOf } from './lines.ts';
import { type Fact, type GuideRecord, RECORD_FORMAT, type RecordNode, type StepNode } from './record.ts';
import { templateNode } from './template-node.ts';

/** What a guide would be released as: everything that its technician is told, and the lines to cut. */
export function recordOf(guide: Guide, job: Job): GuideRecord {
  const telling = tellingOf(guide);
  const numbers = numbersOf(guide, job);
  return {
    format: RECORD_FORMAT,
    guide: guide.id,
    title: guide.title.value,
    revision: guide.revision?.value ?? '',
    fingerprint: job.fingerprint,
    release: null,
    about: aboutNode(guide, telling),
    items: [...guide.items.values()].map((item) => itemNode(item, telling)),
    sequences: [...guide.sequences.values()].map(({ id, label, order }) => ({
      id,
      name: label,
      facts: [...told('called', label), ...names('order', order, telling, true)],
      lines: [],
    })),
    sections: guide.sections.map((section) => sectionNode(section, telling)),
    steps: guide.sections.flatMap((section) =>
      section.steps.map((step) => stepNode(step, section, { job, numbers, telling })),
    ),
    templates: [...guide.templates.values()].map((one) => templateNode(one, guide, job, telling)),
  };
}

function aboutNode(guide: Guide, telling: Telling): RecordNode {
  const { builds, contents } = guide;
  const words = ownWords(guide.words);
  const footnotes: readonly Prose[] = guide.footnotes.length > 0 ? [guide.footnotes] : [];
  return {
    id: guide.id,
    name: guide.title.value,
    facts: [
      ...told('title', guide.title.value),
      ...told('platform', guide.platform.value),
      ...told('part number', guide.partNumber?.value),
      ...told('meant for', guide.meantFor?.value),
      ...told('not for', guide.notFor?.value),
      ...told('done by', guide.doneBy?.value),
      ...told('taken off', guide.takenOff?.value),
      ...told('own words', words && Object.values(words).join(', ')),
      // What is found is an item; it is asked of nobody.
      ...builds.options
        .filter(({ id }) => guide.items.get(id)?.kind !== 'inspection')
        .flatMap(({ name, choices, wish }) =>
          told(
            `${wish ? 'wish' : 'option'}: ${name}`,
            choices?.map((choice) => choice.name).join(', ') ?? 'yes or no',
          ),
        ),
      ...told(
        'builds that there are not',
        builds.impossible.map(({ value }) => whenInWords(value, builds.options)).join('; '),
      ),
      ...told('builds', builds.listed?.map(({ value }) => listedWords(value, guide)).join('; ')),
      ...told('none of', guide.nones.map(({ of }) => of).join(', ')),
      ...packingFacts(contents, telling),
    ],
    lines: [
      ...linesOf(guide.opening, telling, null),
      ...footnotes.flatMap((content) =>
        linesOf([{ type: 'prose', content, at: guide.title.at }], telling, null),
      ),
    ],
  };
}

/** The box's own list: what is in it, by id, and how many of each. */
function packingFacts(contents: Guide['contents'], { label }: Telling): readonly Fact[] {
  if (!contents) return [];
  const entries = [...contents];
  return [
    {
      name: 'packing list',
      says: entries.map(([id, { value }]) => `${value} ${packedIds(id).map(label).join(' and ')}`).join(', '),
      means: entries.map(([, { value }]) => value).join(', '),
      ids: entries.flatMap(([id]) => packedIds(id)),
    },
  ];
}

function listedWords(
  build: { readonly [option: string]: boolean | string | undefined },
  guide: Guide,
): string {
  return guide.builds.options
    .flatMap(({ id, name, choices }) => {
      const value = build[id];
      if (value === undefined) return [];
      if (typeof value === 'string') return [choices?.find((one) => one.id === value)?.name ?? value];
      return [value ? name : `no ${name}`];
    })
    .join(', ');
}

function sectionNode(section: Section, telling: Telling): RecordNode {
  return {
    id: section.id,
    name: section.titleText,
    facts: [...told('title', section.titleText)],
    lines: [...linesOf(section.intro, telling, null)],
  };
}

function stepNode(
  step: Step,
  section: Section,
  {
    job,
    numbers,
    telling,
  }: {
    readonly job: Job;
    readonly numbers: ReadonlyMap<string, number>;
    readonly telling: Telling;
  },
): StepNode {
  const origin = step.origins.at(-1);
  return {
    id: step.id,
    name: step.titleText,
    section: section.id,
    number: numbers.get(step.id) ?? null,
    fingerprint: job.stepFingerprints.get(step.id) ?? '',
    undoes: origin?.kind === 'reverse' ? origin.step : null,
    facts: stepFacts(step, telling),
    lines: [...linesOf(step.blocks, telling, step.side?.value ?? null)],
  };
}

function stepFacts(step: Step, telling: Telling): Fact[] {
  const { time, wait } = step;
  return [
    ...told('title', step.titleText),
    ...told('side', step.side?.value),
    ...(time
      ? [
          {
            name: 'time',
            says: formatEstimate(time.value),
            means: [time.value.least, time.value.likely, time.value.most].map(tenth).join('/'),
          },
        ]
      : []),
    ...told('times', step.times && String(step.times.value)),
    ...names('until', step.until ? [step.until] : [], telling),
    ...told('wait', wait && formatMinutes(wait.value)),
    ...told('people', step.people === 1 ? null : String(step.people)),
    ...yesFact('checked by a second person', step.signOff),
    ...yesFact('the job ends here', step.stop),
    ...yesFact('any order', step.anyOrder),
    ...names('after', step.after, telling),
    ...names('needs', step.needs, telling),
    ...onlyFor(step.when?.value, telling),
  ];
}

/** Minutes, without what a share of a refit's time leaves behind. */
function tenth(minutes: number): string {
  return minutes.toFixed(1);
}

/** The numbers of the steps that every build prints alike, which are those of the page for all builds too. */
function numbersOf(guide: Guide, { plans }: Job): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  let place = 0;
  for (const { id } of guide.sections.flatMap(({ steps }) => steps)) {
    const printed = new Set(
      plans.flatMap(({ steps }) => steps.flatMap((one) => (one.id === id ? [one.number] : []))),
    );
    if (printed.size > 0) place += 1;
    if (printed.size === 1 && printed.has(place)) numbers.set(id, place);
  }
  return numbers;
}
