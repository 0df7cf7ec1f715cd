import { tellChanges } from '../../release/compare/say.ts';
import { unverifiedInShort } from '../../release/standing.ts';
import type { GuideContext } from '../frame/context.ts';
import { dateWords } from '../frame/identity.ts';
import type { LinkView } from '../frame/shared-views.ts';

/** How the guide stands to its latest release. */
export interface StandingView {
  /** "Not verified on a vehicle since step 7 changed"; `null` where the work is what was verified. */
  readonly unverified: string | null;
  /** The same in one line of the bay screen: "Not verified since step 7 changed". */
  readonly inShort: string | null;
  /** Who proved it, when and on which build. */
  readonly verified: string;
  readonly note: string | null;
  readonly since: SinceView | null;
}

/** What has changed since that release. */
interface SinceView {
  readonly title: string;
  readonly changes: readonly { readonly thing: LinkView; readonly lines: readonly string[] }[];
  /** How many things are only worded otherwise; `null` where none is. */
  readonly reworded: string | null;
  /** Old lines to cut under the new ones, at full size. */
  readonly files: readonly LinkView[];
}

/** How a guide stands to its latest release; `null` where it was never released. */
export function standingView(context: GuideContext): StandingView | null {
  const { standing } = context;
  if (!standing) return null;
  const { release, revision, comparison, unverified } = standing;
  const on = release.on === '' ? '' : ` ${release.on}`;
  return {
    unverified,
    inShort: unverifiedInShort(standing),
    verified: `Revision ${revision} was verified by ${release.verified} on a ${context.guide.words.vehicle}${on}; released ${dateWords(release.date)}`,
    note: release.note,
    since: comparison.changes.length === 0 ? null : sinceView(context, standing),
  };
}

function sinceView(context: GuideContext, standing: NonNullable<GuideContext['standing']>): SinceView {
  const { work, words } = tellChanges(standing.comparison);
  return {
    title: `Since revision ${standing.revision}`,
    changes: work.map(({ of, id, heading, lines }) => ({
      thing: { text: heading, href: of === 'step' && context.steps.has(id) ? `#${id}` : '' },
      lines: lines.map(({ text }) => text),
    })),
    reworded: rewordedWords(words.length, work.length),
    files: [...(context.overlays ?? [])],
  };
}

function rewordedWords(count: number, work: number): string | null {
  if (count === 0) return null;
  const things = count === 1 ? 'One thing is' : `${count} things are`;
  return `${things} worded or shown otherwise${work === 0 ? '; the work is the same' : ''}.`;
}
