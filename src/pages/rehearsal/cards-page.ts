import { driveGlyph } from '../../drawings/drive-glyph.ts';
import { fastenerProfile } from '../../drawings/fastener-profile.ts';
import { stringify } from '../../html/stringify.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { Platform } from '../../model/shop.ts';
import { frameOf, type GuideContext, guideFolder, type PageContext } from '../frame/context.ts';
import { identityWords } from '../frame/identity.ts';
import type { FrameView, LinkView } from '../frame/shared-views.ts';
import type { GuideSummary } from '../reference/guide-summary.ts';
import { type Card, type CardKind, unfoldCards } from './cards.ts';
import type { CardsView, CardView } from './rehearsal-view.ts';

/** The card set's page, from the folder of what it is about. */
export const CARDS_PAGE = 'cards.html';

const titles: { readonly [K in CardKind]: string } = {
  fastener: 'What it is, and its tool',
  apart: 'What is undone first',
  torque: 'How tight',
  side: 'On which side',
  once: 'What serves once',
  bag: 'In which bag',
};

/** A card with where it is shown. */
interface ShownCard {
  readonly card: Card;
  /** The guide that it is from. */
  readonly guide: string;
  readonly place: LinkView;
}

/** The card set of one guide. */
export function guideCardsPage(
  guide: Guide,
  job: Job,
  cards: readonly Card[],
  context: GuideContext,
): CardsView {
  const shown = cards.map((card): ShownCard => {
    const step = context.steps.get(card.at);
    const text = step ? `Step ${step.number}, ${step.step.titleText}` : guide.title.value;
    return { card, guide: guide.title.value, place: { text, href: `index.html#${card.at}` } };
  });
  return {
    frame: cardsFrame(`Break cards: ${guide.title.value}`, context, guide.words),
    of: { text: guide.title.value, href: 'index.html' },
    edition: identityWords(guide, job),
    groups: groupsOf(shown),
  };
}

/** More questions than anybody is asked at breaks: beyond them each guide has its own cards alone. */
const MOST_CARDS = 2_000;

/** The guides of a platform of which the cards stand on one page: all that have any, or none where they are too many. */
export function guidesWithCards(platform: string, guides: readonly GuideSummary[]): readonly GuideSummary[] {
  const own = guides.filter((guide) => guide.platform === platform && guide.cards.count > 0);
  const cards = own.reduce((sum, guide) => sum + guide.cards.count, 0);
  return cards > MOST_CARDS ? [] : own;
}

/** The cards of all guides of a platform; `null` where none of them has any, or all of them too many. */
export function platformCardsPage(
  { id, title, words }: Platform,
  guides: readonly GuideSummary[],
  page: PageContext,
): CardsView | null {
  const shown = guidesWithCards(id, guides).flatMap((guide) =>
    unfoldCards(guide.cards).map((card): ShownCard => {
      const step = guide.places.find((place) => place.id === card.at);
      const text = step ? `${guide.title}, step ${step.number}, ${step.text}` : guide.title;
      const href = `${page.root}${guideFolder(guide)}index.html#${card.at}`;
      return { card, guide: guide.title, place: { text, href } };
    }),
  );
  if (shown.length === 0) return null;
  return {
    frame: cardsFrame(`Break cards: ${title.value}`, page, words),
    of: { text: title.value, href: 'index.html' },
    edition: null,
    groups: groupsOf(shown),
  };
}

function cardsFrame(title: string, page: PageContext, words: Platform['words']): FrameView {
  return frameOf(page, {
    title,
    words,
    styles: [`${page.root}assets/rehearsal.css`],
    scripts: ['cards.js'],
  });
}

function groupsOf(all: readonly ShownCard[]): CardsView['groups'] {
  return (Object.keys(titles) as CardKind[]).flatMap((about) => {
    const cards = cardViews(all.filter(({ card }) => card.about === about));
    return cards.length > 0 ? [{ title: titles[about], cards }] : [];
  });
}

/**
 * Cards of several guides that say the same are one, with all their places. Where the same question has another
 * answer in another guide, each names its guide.
 */
function cardViews(all: readonly ShownCard[]): readonly CardView[] {
  const asked = ({ card: { ask, looks } }: ShownCard) => JSON.stringify([ask, looks]);
  const answered = ({ card: { answer, only } }: ShownCard) => JSON.stringify([answer, only]);
  return [...grouped(all, asked).values()].flatMap((alike) => {
    const answersOf = (own: readonly ShownCard[]) => own.map(answered).sort().join('\n');
    const byGuide = [...grouped(alike, ({ guide }) => guide).values()];
    const named = new Set(byGuide.map(answersOf)).size > 1;
    return [...grouped(alike, (one) => answered(one) + (named ? one.guide : '')).values()].flatMap((own) => {
      const [first] = own;
      return first ? [cardView(first, named, own)] : [];
    });
  });
}

function grouped<T>(list: readonly T[], keyOf: (one: T) => string): ReadonlyMap<string, readonly T[]> {
  const groups = new Map<string, T[]>();
  for (const one of list) {
    const key = keyOf(one);
    const group = groups.get(key);
    if (group) group.push(one);
    else groups.set(key, [one]);
  }
  return groups;
}

function cardView({ card, guide }: ShownCard, named: boolean, own: readonly ShownCard[]): CardView {
  const { ask, answer, only, looks } = card;
  return {
    ask: named ? `${guide}: ${ask}` : ask,
    only,
    drawings: [
      ...(looks?.shape ? [stringify([fastenerProfile(looks.shape)])] : []),
      ...(looks?.drive ? [stringify([driveGlyph(looks.drive)])] : []),
    ],
    answer,
    places: own.map(({ place }) => place),
  };
}
