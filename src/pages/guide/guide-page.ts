import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import { isDraft, marksSince } from '../../release/standing.ts';
import { aloneView, type InlinePicture } from '../frame/alone.ts';
import {
  frameOf,
  type GuideContext,
  numberSteps,
  type PageContext,
  platformFolder,
  stepRef,
} from '../frame/context.ts';
import { buildsFor, dateWords, identityWords, shortFingerprint } from '../frame/identity.ts';
import { isBlank, proseMarkup } from '../frame/prose.ts';
import type { FrameView } from '../frame/shared-views.ts';
import { aboutRows } from '../overview/about.ts';
import { comesOff } from '../overview/comes-off.ts';
import { contentsRows } from '../overview/contents.ts';
import { courseViews } from '../overview/course.ts';
import { coverView } from '../overview/cover.ts';
import { glanceRows } from '../overview/glance.ts';
import { isLimit } from '../overview/limits.ts';
import { pickerView, pickTable, tableMarkup } from '../overview/pick-table.ts';
import { safetyGroups, signalKey } from '../overview/safety.ts';
import { scheduleViews } from '../overview/schedule.ts';
import { standingView } from '../overview/standing.ts';
import { vehicleView, zonedDrawing } from '../overview/vehicle.ts';
import { visitView } from '../overview/visit.ts';
import type { Card } from '../rehearsal/cards.ts';
import { CARDS_PAGE, guideCardsPage } from '../rehearsal/cards-page.ts';
import { rehearsalData } from '../rehearsal/rehearsal.ts';
import type { RehearsalData } from '../rehearsal/rehearsal-data.ts';
import { rehearsalPage } from '../rehearsal/rehearsal-page.ts';
import type { CardsView, RehearsalView } from '../rehearsal/rehearsal-view.ts';
import { blockViews } from '../steps/blocks.ts';
import { bayData, bayMarkup } from './bay.ts';
import type { GuideView } from './guide-views.ts';
import { handOverView } from './hand-over.ts';
import { PICK_LIST } from './pick-list.ts';
import { sectionViews } from './sections.ts';
import { sheetsView } from './sheets.ts';

/** A guide's page, and the same guide where it stands alone. */
export interface GuidePages {
  readonly page: GuideView;
  /**
   * The guide as one file that needs no other: what is of the site is left out, and pictures stand in it.
   *
   * @param frame what stands around it
   * @param inline its pictures, as the page names them
   */
  readonly alone: (frame: FrameView, inline: InlinePicture) => GuideView;
  /** The page on which the guide is rehearsed. */
  readonly rehearsal: () => RehearsalView;
  /** What is rehearsed, beside that page. */
  readonly rehearsed: () => RehearsalData;
  /** The page of its card set. */
  readonly cards: (cards: readonly Card[]) => CardsView;
}

/** Makes the views of a guide once for its page and its one file. */
export function guidePages(guide: Guide, job: Job, page: PageContext): GuidePages {
  const context = guideContext(guide, job, page);
  const view = guideView(guide, job, context);
  return {
    page: view,
    alone: (frame, inline) => {
      const { frame: _, ...own } = view;
      return { ...aloneView(own, context.twins, inline), frame };
    },
    rehearsal: () => rehearsalPage(guide, job, context),
    rehearsed: () => rehearsalData(guide, job, context),
    cards: (cards) => guideCardsPage(guide, job, cards, context),
  };
}

/** One guide as its page prints it. */
export function guidePage(guide: Guide, job: Job, page: PageContext): GuideView {
  return guidePages(guide, job, page).page;
}

function guideView(guide: Guide, job: Job, context: GuideContext): GuideView {
  const platform = context.shop.platforms.get(guide.platform.value);
  const untimed = new Set(job.plans.flatMap((plan) => plan.time.untimed));
  return {
    frame: frameOf(context, {
      // A browser that prints no feet of ours puts this at the head of each sheet.
      title: `${guide.title.value} (${identityWords(guide, job)})`,
      styles: ['page-feet.css'],
      words: guide.words,
      scripts: ['guide.js'],
    }),
    title: guide.title.value,
    platform: {
      text: platform?.title.value ?? guide.platform.value,
      href: `${context.root}${platformFolder(guide.platform.value)}index.html`,
    },
    identity: [
      ['Part', guide.partNumber?.value],
      ['Revision', guide.revision?.value],
      ['Date', guide.updated ? dateWords(guide.updated.value) : undefined],
      ['For', buildsFor(guide)],
      ['Fingerprint', shortFingerprint(job.fingerprint)],
    ].flatMap(([label, value]) => (label && value ? [{ label, value }] : [])),
    standing: standingView(context),
    draft: isDraft(context.shop.settings, context.standing) ? 'DRAFT' : null,
    opening: blockViews(guide.opening, context, null, `guide ${guide.id}`),
    picker: pickerView(context),
    cover: coverView(guide, context),
    contents: contentsRows(guide, context),
    about: aboutRows(guide, context),
    glance: glanceRows(context, guide),
    vehicle: vehicleView(guide, context),
    visit: visitView(guide, context),
    untimed: [...untimed].flatMap((id) => stepRef(context, id) ?? []),
    accounted: job.accounted,
    safety: safetyGroups(guide, context),
    signalKey: signalKey(context),
    sections: sectionViews(guide, context),
    schedules: scheduleViews(context),
    course: courseViews(context),
    sheets: sheetsView(guide, context),
    handOver: handOverView(guide, context),
    footnotes: isBlank(guide.footnotes) ? null : proseMarkup(guide.footnotes, { context, stepSide: null }),
    table: tableMarkup(pickTable(context)),
    bay: bayMarkup(bayData(guide, job, context)),
    rehearsal: { text: 'Rehearse this job', href: 'rehearsal.html' },
    cards: { text: 'Break cards', href: CARDS_PAGE },
    pickList: { text: 'Pick list for counter and cart, as CSV', href: PICK_LIST },
    alone: null,
  };
}

/** Everything that the parts of a guide's page look up. */
function guideContext(guide: Guide, job: Job, page: PageContext): GuideContext {
  const steps = numberSteps(guide, job);
  const gathered = job.plans.flatMap(({ gather }) =>
    [gather.wear, gather.tools, gather.supplies, gather.kit].flat(),
  );
  const limits = [...guide.items.values()].filter(isLimit);
  return {
    ...page,
    guide,
    job,
    steps,
    marks: marksSince(page.standing),
    listed: new Set([
      ...gathered.map((line) => line.item),
      ...comesOff({ guide, steps }).map(({ item }) => item.id),
      ...limits.map(({ id }) => id),
    ]),
    places: '',
    drawing: zonedDrawing(guide, page),
    twins: new Map(),
  };
}
