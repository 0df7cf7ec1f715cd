/**
 * What a guide that stands for a visit knows of the guides that it was planned from. Ids of items, steps and sections
 * are those of the visit: bare for what is of the platform, of the shop or of a procedure, `guide_id` for what is a
 * guide's own.
 */
export interface Visit {
  /** The guides, in the order of their ids. */
  readonly guides: readonly VisitGuide[];
  /** Whose work each step is. */
  readonly steps: ReadonlyMap<string, VisitWork>;
  /** Whose work each section holds. */
  readonly sections: ReadonlyMap<string, VisitWork>;
  /** Steps that are done once for several guides, in the order of doing. */
  readonly shared: readonly SharedStep[];
  /** Why a step stands where it does, where the guides by themselves would not have it there. */
  readonly reasons: readonly OrderReason[];
  /** Limits that several of its guides load together. */
  readonly loads: readonly SharedLoad[];
  /** What the visit saves, for each plan of its job in turn. */
  readonly savings: readonly VisitSaving[];
}

/** One guide of a visit. */
interface VisitGuide {
  readonly id: string;
  readonly title: string;
  /** The title up to its first comma: what tells its work from that of the others. */
  readonly name: string;
  readonly partNumber: string | null;
  readonly revision: string | null;
  readonly fingerprint: string;
}

/** Whose work something is. */
export interface VisitWork {
  /** Ids of the guides, sorted. */
  readonly guides: readonly string[];
  /** The section of the guide that it comes from, under the visit's names: steps of one section may be marked free of each other. */
  readonly section: string;
}

/** A step that is done once for several guides. */
interface SharedStep {
  readonly step: string;
  readonly guides: readonly string[];
}

/** A limit that several guides load together. */
export interface SharedLoad {
  /** The rating that has the limit. */
  readonly rating: string;
  /** Ratings that claim a load of its kind, and circuits that draw one, each with its guide. */
  readonly claims: readonly { readonly item: string; readonly guide: string }[];
  /** Guides that name the limit and state no load. */
  readonly silent: readonly string[];
}

/** Why steps stand where they do. */
export interface OrderReason {
  /**
   * `dirty-first`: they throw chips, so they come before the other, which must stay clean. `fills-wait`: they are done
   * while the work after the other has to wait. `ledger`: the other needs a state, or a part, that they change. `repeated`:
   * they are done for each guide by itself, since nothing else can be ordered.
   */
  readonly kind: 'dirty-first' | 'fills-wait' | 'ledger' | 'repeated';
  /** In the order of doing. */
  readonly steps: readonly string[];
  /** The other step; `null` for what is repeated. */
  readonly other: string | null;
}

/** The times of a plan of a visit, beside those of its guides done one after the other. */
export interface VisitSaving {
  readonly together: VisitTimes;
  /** Each guide by itself, in the order of {@link Visit.guides}. */
  readonly apart: readonly VisitTimes[];
}

/** Times of a job; minutes, and tenths of an hour for labour. */
export interface VisitTimes {
  readonly handsOn: number;
  /** Everybody's hands-on minutes together. */
  readonly personMinutes: number;
  readonly labour: number;
  /** Elapsed for one technician and for two. */
  readonly elapsed: readonly { readonly crew: number; readonly minutes: number }[];
}
