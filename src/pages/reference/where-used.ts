import { countWords, isFixing } from '../../job/index.ts';
import type { Fastener, KitItem } from '../../model/item.ts';
import type { SignalWord } from '../../trade/signal-words.ts';
import { guideFolder, type NumberedStep, numberSteps, type PageContext } from '../frame/context.ts';
import { fixingWords } from '../overview/gather.ts';
import type { PublishedGuide } from './index-page.ts';
import type { PlaceView, UsedInView } from './reference-views.ts';

/** A guide with what its job says of tools and steps, gathered once for all the pages that ask. */
export interface SurveyedGuide extends PublishedGuide {
  readonly steps: ReadonlyMap<string, NumberedStep>;
  /** The steps that use each tool and each piece of protective equipment. */
  readonly stepsOfTool: ReadonlyMap<string, ReadonlySet<string>>;
}

/** Readies guides for the pages of what they use, by title. */
export function survey(guides: readonly PublishedGuide[]): readonly SurveyedGuide[] {
  return [...guides].sort(byTitle).map(({ guide, job }) => {
    const stepsOfTool = new Map<string, Set<string>>();
    for (const { id, tools, wear } of job.plans.flatMap((plan) => plan.steps)) {
      for (const item of [...tools, ...wear]) {
        stepsOfTool.set(item, (stepsOfTool.get(item) ?? new Set()).add(id));
      }
    }
    return { guide, job, steps: numberSteps(guide, job), stepsOfTool };
  });
}

/** Where a guide uses something: ids of steps and sections, and its items in words. */
interface Use {
  readonly items: readonly string[];
  readonly steps: ReadonlySet<string>;
  readonly sections: ReadonlySet<string>;
}

/** Every guide that gathers a tool or protective equipment of the crib, with the steps that the jobs name for it. */
export function usesOfTool(
  id: string,
  guides: readonly SurveyedGuide[],
  page: PageContext,
): readonly UsedInView[] {
  return usedIn(guides, page, ({ guide, stepsOfTool }) => {
    if (!guide.items.has(id)) return null;
    return { items: [], steps: stepsOfTool.get(id) ?? new Set(), sections: new Set() };
  });
}

/** Every guide with such fasteners, of the vehicle or from the box, with what is done to them in the jobs. */
export function usesOfFasteners(
  matches: (item: Fastener | KitItem) => boolean,
  guides: readonly SurveyedGuide[],
  page: PageContext,
): readonly UsedInView[] {
  return usedIn(guides, page, ({ guide, job }) => {
    const items = [...guide.items.values()].filter((item) => isFixing(item)).filter(matches);
    if (items.length === 0) return null;
    const ids = new Set(items.map((item) => item.id));
    const lines = job.plans.flatMap((plan) => plan.fasteners.filter((line) => ids.has(line.item)));
    const steps = lines.flatMap((line) => [line.removedIn, line.putIn, line.tightenedIn]);
    return {
      items: items.map((item) => itemWords(item)),
      steps: new Set(steps.filter((step) => step !== null)),
      sections: new Set(),
    };
  });
}

/** "Arch screw, 7 mm hexagon: 2 (1 each side)". */
function itemWords(item: Fastener | KitItem): string {
  const details = fixingWords(item);
  return `${item.noun.label}${details ? `, ${details}` : ''}: ${countWords(item)}`;
}

/** Every guide with safety messages under a word, with the steps and sections that they stand in. */
export function usesOfSignalWord(
  word: SignalWord,
  guides: readonly SurveyedGuide[],
  page: PageContext,
): readonly UsedInView[] {
  return usedIn(guides, page, ({ job }) => {
    const messages = job.plans.flatMap((plan) =>
      plan.messages.filter(({ message }) => message.word === word),
    );
    if (messages.length === 0) return null;
    return {
      items: [],
      steps: new Set(messages.flatMap(({ step }) => step ?? [])),
      sections: new Set(messages.flatMap(({ step, section }) => (step === null ? section : []))),
    };
  });
}

function usedIn(
  guides: readonly SurveyedGuide[],
  { shop, root }: PageContext,
  useIn: (surveyed: SurveyedGuide) => Use | null,
): readonly UsedInView[] {
  return guides.flatMap((surveyed) => {
    const use = useIn(surveyed);
    if (!use) return [];
    const { guide } = surveyed;
    const href = `${root}${guideFolder(guide)}index.html`;
    return {
      guide: { text: guide.title.value, href },
      platform: shop.platforms.get(guide.platform.value)?.title.value ?? guide.platform.value,
      items: use.items,
      places: placesOf(surveyed, use, href),
    };
  });
}

/** The sections and then the steps, each in the order of the page. */
function placesOf({ guide, steps: numbered }: SurveyedGuide, use: Use, href: string): readonly PlaceView[] {
  const sections = guide.sections.filter(({ id }) => use.sections.has(id));
  const steps = [...numbered.values()].filter(({ step }) => use.steps.has(step.id));
  return [
    ...sections.map(({ id, titleText }) => ({ text: titleText, href: `${href}#${id}`, number: null })),
    ...steps.map(({ step, number }) => ({ text: step.titleText, href: `${href}#${step.id}`, number })),
  ];
}

function byTitle(a: PublishedGuide, b: PublishedGuide): number {
  return a.guide.title.value < b.guide.title.value ? -1 : 1;
}
