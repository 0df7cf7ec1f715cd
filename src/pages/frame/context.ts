import { markup } from '../../html/markup.ts';
import { sectionsOf } from '../../job/actions/uses.ts';
import { stepsOf } from '../../job/actions/walk.ts';
import type { Figure } from '../../model/block.ts';
import type { Guide, Section, Step } from '../../model/guide.ts';
import type { Job, Plan } from '../../model/job.ts';
import type { Shop } from '../../model/shop.ts';
import type { Marks, ReleaseStanding } from '../../release/standing.ts';
import type { TradeWords } from '../../trade/words.ts';
import type { ZonedDrawing } from '../overview/vehicle.ts';
import type { PictureView, TemplateView } from '../steps/block-views.ts';
import type { Twins } from './alone.ts';
import { always, type Planned, shownIn } from './plans.ts';
import { printedWords } from './printed-words.ts';
import type { FrameView, LinkView, Shown, StepRef } from './shared-views.ts';

/** What a page shows that other rooms have drawn: asked for by name, `null` where there is none. */
export interface Shelf {
  /**
   * A picture of the workspace, as the page that asks may name it.
   *
   * @param turned with the way back in the place of the way off; `null` where the picture does not say it
   */
  readonly picture: (path: string, figure: Figure | null, turned?: boolean) => PictureView | null;
  /** The drawing of a template, its files at full scale and the check of their print. */
  readonly template: (id: string) => Pick<TemplateView, 'drawings' | 'files' | 'printCheck'>;
  /**
   * Where a link that an author wrote leads, relative to the page; `null` where it leads nowhere.
   *
   * @param from file that holds the link, from the workspace's root
   */
  readonly link: (href: string, from: string) => string | null;
  /** Another page of the site, by its path from the site's root, relative to the page that asks; `null` for a page that stands alone. */
  readonly page: (path: string) => string | null;
}

/** What any page is made from. */
export interface PageContext {
  readonly shop: Shop;
  readonly shelf: Shelf;
  /** From the page to the site's root: empty, or `../` as often as needed. */
  readonly root: string;
  /** How the guide stands to its latest release; `null` or absent where it was never released. */
  readonly standing?: ReleaseStanding | null;
  /** Drawings of its old lines to cut under the new ones, by address. */
  readonly overlays?: readonly LinkView[];
}

/** What prose is printed with: all of the above, and what its nouns and conditions refer to. */
export interface GuideContext extends PageContext, Planned {
  readonly guide: Pick<Guide, 'id' | 'builds' | 'words' | 'items' | 'templates' | 'visit' | 'zones'>;
  /** The platform's drawing, for a guide of a platform that has zones. */
  readonly drawing: ZonedDrawing | null;
  readonly steps: ReadonlyMap<string, NumberedStep>;
  /** The page on which the guide's places stand, from the page that is made; empty where that is the same. */
  readonly places: string;
  /** Is told what of the page's prose reads otherwise where the guide stands alone. */
  readonly twins: Twins;
  /** Ids of the items that have a row on the page. */
  readonly listed: ReadonlySet<string>;
  /** What has changed since the latest release. */
  readonly marks: Marks;
}

/** A step with its number on the page on which all builds stand. */
export interface NumberedStep {
  readonly step: Step;
  readonly number: number;
  /** The plans that carry it out; never empty. */
  readonly plans: readonly Plan[];
}

/** Numbers the steps that at least one build carries out, in the order of the text. */
export function numberSteps(
  guide: Pick<Guide, 'sections'>,
  job: Pick<Job, 'plans'>,
): ReadonlyMap<string, NumberedStep> {
  const numbered = new Map<string, NumberedStep>();
  for (const step of stepsOf(guide)) {
    const plans = job.plans.filter((plan) => plan.steps.some(({ id }) => id === step.id));
    if (plans.length > 0) numbered.set(step.id, { step, number: numbered.size + 1, plans });
  }
  return numbered;
}

/** A step named on the page; `null` for one that no build carries out. */
export function stepRef(context: GuideContext, id: string): StepRef | null {
  const found = context.steps.get(id);
  return found ? { ...always, id, number: found.number, title: found.step.titleText } : null;
}

/** The step that each plan names, equal ones told once. */
export function stepRefs(context: GuideContext, idOf: (plan: Plan) => string | null): readonly StepRef[] {
  const byStep = new Map<string, Plan[]>();
  for (const plan of context.job.plans) {
    const id = idOf(plan);
    if (id !== null) byStep.set(id, [...(byStep.get(id) ?? []), plan]);
  }
  const shown = (plans: readonly Plan[]) => (byStep.size === 1 ? always : shownIn(context, plans));
  return [...byStep].flatMap(([id, plans]) => {
    const ref = stepRef(context, id);
    return ref ? [{ ...ref, ...shown(plans) }] : [];
  });
}

/** For which plans a step stands. */
export function shownStep(context: GuideContext, { plans }: NumberedStep): Shown {
  return shownIn(context, plans);
}

/** For which plans a section stands: a step of an earlier one may have ended the job. */
export function shownSection(section: Section, guide: Pick<Guide, 'sections'>, context: GuideContext): Shown {
  const plans = context.job.plans.filter(({ builds: [build = {}] }) =>
    sectionsOf(guide, build).some(({ id }) => id === section.id),
  );
  return plans.length === 0 ? always : shownIn(context, plans);
}

/** The style sheets of every page, in the order in which they apply; a shop's own colours stand last. */
const styleSheets = [
  'tokens.css',
  'page.css',
  'guide.css',
  'message.css',
  'step.css',
  'bay.css',
  'screen.css',
  'picture.css',
  'vehicle-drawing.css',
  'schedule.css',
  'tightening.css',
  'cover.css',
  'print-check.css',
  'print.css',
  'paper.css',
  'shop.css',
];

/** Files of the site alone: nothing inline, and no other host. */
const policy = markup(
  [
    "default-src 'none'",
    ...['img', 'style', 'script', 'worker', 'manifest', 'connect'].map((kind) => `${kind}-src 'self'`),
    "base-uri 'none'",
    "form-action 'none'",
  ].join('; '),
);

/** What stands around every page. */
export function frameOf(
  { shop, shelf, root }: PageContext,
  page: {
    readonly title: string;
    readonly styles?: readonly string[];
    readonly scripts?: readonly string[];
    /** Scripts with data of the page, which lie beside it and run first. */
    readonly data?: readonly string[];
    /** Where the page is about one platform; else the shop's. */
    readonly words?: TradeWords;
  },
): FrameView {
  return {
    title: page.title,
    words: printedWords(page.words ?? shop.settings.words),
    root,
    shop: shop.settings.name,
    logo: shop.settings.logo ? shelf.picture(shop.settings.logo.value, null) : null,
    styles: [...styleSheets.map((sheet) => `${root}assets/${sheet}`), ...(page.styles ?? [])],
    scripts: [
      ...(page.data ?? []),
      ...[...(page.scripts ?? []), 'offline.js'].map((script) => `${root}assets/${script}`),
    ],
    policy,
    inlined: null,
  };
}

/** What tells where the page of a guide is. */
interface NamedPage {
  readonly id: string;
  readonly visit?: unknown;
}

/**
 * The folder of a guide from the site's root; several guides planned as one job have theirs among the visits.
 *
 * @param guide the guide itself, or what is known of it, which says by `visit` whether it is such a plan
 */
export function guideFolder({ id, visit = null }: NamedPage): string {
  return `${visit ? 'visits' : 'guides'}/${id}/`;
}

/** Where a guide's page is published; `null` where the shop has no address. */
export function pageAddress(address: string | null, guide: NamedPage): string | null {
  if (address === null) return null;
  const site = new URL(address);
  if (!site.pathname.endsWith('/')) site.pathname += '/';
  return new URL(`${guideFolder(guide)}index.html`, site).href;
}

/** A platform's page from the site's root. */
export function platformFolder(id: string): string {
  return `platforms/${id}/`;
}
