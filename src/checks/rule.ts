import type { Report } from '../diagnostics/report.ts';
import type { RuleCard } from '../diagnostics/rule-card.ts';
import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Shop } from '../model/shop.ts';
import type { Span } from '../source/span.ts';
import type { GuideFacts } from './between/guide-facts.ts';

/** A finished guide with all that a rule may ask about it. */
export interface Subject {
  readonly guide: Guide;
  readonly job: Job;
  readonly shop: Shop;
  readonly lost: Lost;
}

/** What a fault in the text has cost: rules stay silent about it, so that one fault gives one finding. */
export interface Lost {
  /** Ids whose declaration, or whose mention, could not be read. */
  readonly ids: ReadonlySet<string>;
  /** Names of the directives that could not be read as declarations: `tool`, `supply`. */
  readonly declarations: ReadonlySet<string>;
  /**
   * What has an id that could not be guessed, so that an unknown id may be meant for it: items and templates are
   * things, steps are places.
   */
  readonly nameless: ReadonlySet<'thing' | 'place'>;
  /** The first line of the guide's file from which it is not known what is done; `null` where all is known. */
  readonly gap: Span | null;
  /** Whether a condition could not be read, so that nobody knows which build has what. */
  readonly conditions: boolean;
}

/** What is lost where every fault is told by itself. */
export const nothingLost: Lost = {
  ids: new Set(),
  declarations: new Set(),
  nameless: new Set(),
  conditions: false,
  gap: null,
};

/** A rule that every guide is held against; it reports what it finds and says nothing about unknown values. */
export interface Rule {
  readonly card: RuleCard;
  /** It tells what the dry run found, which stops where it is no longer known what is done. */
  readonly played?: true;
  readonly run: (subject: Subject, report: Report) => void;
}

/** A rule about what lies between guides; it looks at the facts of all of them. */
export interface BetweenRule {
  readonly card: RuleCard;
  readonly runBetween: (guides: readonly GuideFacts[], report: Report) => void;
}

/** What guides and platforms have in common: a page that links and shows pictures. */
export type Page = Pick<Guide, 'file' | 'links' | 'pictures' | 'anchors'>;

/** A rule that every page is held against, of guides and of platforms. */
export interface PageRule {
  readonly card: RuleCard;
  readonly runOnPage: (page: Page, shop: Shop, report: Report, lost: Lost) => void;
}
