import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { ShopSettings } from '../model/shop.ts';
import { type Comparison, changesWork, compare, type GuideChange } from './compare/compare.ts';
import type { Release } from './history.ts';
import type { GuideRecord, ReleaseFacts } from './record.ts';
import { recordOf } from './record-of.ts';

/** How a guide stands to its latest release. */
export interface ReleaseStanding {
  readonly revision: string;
  readonly release: ReleaseFacts;
  /** Whether it is still what was released. */
  readonly isCurrent: boolean;
  /** What has changed since; empty where nothing has. */
  readonly comparison: Comparison;
  /** The released record, and what the guide is now. */
  readonly records: readonly [released: GuideRecord, now: GuideRecord];
  /** "Not verified on a vehicle since step 7 changed"; `null` where the work is what was verified. */
  readonly unverified: string | null;
}

/** How a guide stands to its latest release; `null` where it was never released. */
export function releaseStanding(
  guide: Guide,
  job: Job,
  releases: readonly Release[],
): ReleaseStanding | null {
  const latest = releases.at(-1)?.record;
  if (!latest?.release) return null;
  const now = recordOf(guide, job);
  const comparison = compare(latest, now);
  return {
    revision: latest.revision,
    release: latest.release,
    isCurrent: latest.fingerprint === now.fingerprint,
    comparison,
    records: [latest, now],
    unverified: unverifiedWords(comparison, guide),
  };
}

/** Whether a guide may only be printed as a draft: the shop asks for releases, and this is not what was released. */
export function isDraft(
  { unreleased }: Pick<ShopSettings, 'unreleased'>,
  standing: Pick<ReleaseStanding, 'isCurrent'> | null | undefined,
): boolean {
  return unreleased === 'draft' && !standing?.isCurrent;
}

/** What has changed of the work, by what was written: what follows from others is not counted. */
function ownChanges({ changes }: Comparison): readonly GuideChange[] {
  const own = changes.filter((one) => one.follows === null && changesWork(one));
  // Steps say most to whoever holds a print.
  return [...own.filter(({ of }) => of === 'step'), ...own.filter(({ of }) => of !== 'step')];
}

function unverifiedWords(comparison: Comparison, { words }: Guide): string | null {
  const own = ownChanges(comparison);
  const [first] = own;
  if (!first) return null;
  const others = new Set(own.map(({ of, id }) => `${of} ${id}`)).size - 1;
  const more = others === 0 ? '' : others === 1 ? ' and one other thing' : ` and ${others} other things`;
  return `Not verified on a ${words.vehicle} since ${changedThing(first)}${more} changed`;
}

/** The same for the narrow head of a template's sheet: "Not verified since step 7 changed". */
export function unverifiedInShort({ comparison, unverified }: ReleaseStanding): string | null {
  const [first] = ownChanges(comparison);
  return first && unverified !== null ? `Not verified since ${changedThing(first)} changed` : null;
}

function changedThing({ of, name, number }: GuideChange): string {
  if (of === 'step') return number === null ? `step “${name}”` : `step ${number}`;
  if (of === 'template') return `template “${name}”`;
  return of === 'guide' ? 'what the guide is for' : `“${name}”`;
}

/** What of the page has changed since the latest release, so that it is marked in the margin. */
export interface Marks {
  /** Steps whose time, people, order or place has changed. */
  readonly steps: ReadonlySet<string>;
  /** Changed paragraphs of steps and sections, as `step hang 2`: places among what a technician reads there, from 0. */
  readonly lines: ReadonlySet<string>;
  readonly items: ReadonlySet<string>;
}

/** The marks of a page; none where the guide was never released. */
export function marksSince(standing: Pick<ReleaseStanding, 'comparison'> | null | undefined): Marks {
  const changes = standing?.comparison.changes ?? [];
  return {
    steps: new Set(
      changes.flatMap((one) => (one.of === 'step' && one.line === null && changesWork(one) ? [one.id] : [])),
    ),
    lines: new Set(
      changes.flatMap(({ of, id, line, whole, what }) => {
        if (line) return line.to === null ? [] : [`${of} ${id} ${line.to}`];
        return what === 'added' ? (whole?.lines ?? []).map((_, index) => `${of} ${id} ${index}`) : [];
      }),
    ),
    items: new Set(changes.flatMap((one) => (one.of === 'item' && changesWork(one) ? [one.id] : []))),
  };
}
