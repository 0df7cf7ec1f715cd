import { guideFacts } from '../../checks/index.ts';
import { type GuideSummary, summaryOf } from '../../pages/reference/guide-summary.ts';
import { cardsOf } from '../../pages/rehearsal/cards.ts';
import { releaseStanding, unverifiedInShort } from '../../release/standing.ts';
import { type AnswerTo, type Ask, answers, watched } from '../../shop/asks.ts';
import { ChangedMeanwhile } from '../../shop/files/steady-files.ts';
import { inspectGuide } from '../../shop/inspect/inspect-guide.ts';
import { inspectVisit } from '../../shop/inspect/inspect-visit.ts';
import type { CheckedGuide } from '../../shop/inspect/verdict.ts';
import type { Workspace } from '../../shop/open-workspace.ts';
import type { Store } from '../../store/store.ts';
import type { SiteKit } from '../kit.ts';
import { writeKept } from './kept.ts';
import type { MadeGuide } from './made.ts';
import { makeGuide } from './make-guide.ts';

/** What a guide gave in its turn, as plain data: nothing else of it stays. */
export interface GuideResult extends CheckedGuide {
  /** What the rest of the site needs of it; `null` where it was only checked, or has errors. */
  readonly summary: GuideSummary | null;
  readonly made: MadeGuide | null;
  /** Why it cannot be relied on after all, one sentence each. */
  readonly problems: readonly string[];
}

/** What every turn of a run has in common. */
export interface TurnGround {
  readonly workspace: Workspace;
  readonly store: Store;
  /** Names the work of this Baybook with this shop's settings and layouts, apart from any other. */
  readonly basis: string;
  /** Makes pages as well; `null` where guides are only checked. */
  readonly kit: SiteKit | null;
  readonly answer: AnswerTo;
  readonly pageOf: (path: string) => string | null;
}

/** Readies a ground for turns. */
export function turnGround(ground: Omit<TurnGround, 'answer'>): TurnGround {
  return { ...ground, answer: answers(ground.workspace, ground.pageOf) };
}

/**
 * Takes a guide, or a visit, from its text to what it gives, and keeps that in the store under all that it was made from.
 *
 * @param pageAlone leaves out what the page only leads to; what that gives is not kept
 */
export async function takeTurn(path: string, ground: TurnGround, pageAlone = false): Promise<GuideResult> {
  const asked = new Map<string, { readonly ask: Ask; readonly answer: string }>();
  const note = (ask: Ask, answer?: string) => {
    const key = `${ask.of} ${ask.name}`;
    if (!asked.has(key)) asked.set(key, { ask, answer: answer ?? ground.answer(ask) });
  };
  try {
    const result = await resultOf(path, ground, note, pageAlone);
    if (result.problems.length === 0 && !(pageAlone && result.made))
      writeKept(ground, path, [...asked.values()], result);
    return result;
  } catch (error) {
    if (!(error instanceof ChangedMeanwhile)) throw error;
    return { path, facts: null, findings: [], summary: null, made: null, problems: [error.message] };
  }
}

async function resultOf(
  path: string,
  { workspace, kit, store, pageOf }: TurnGround,
  note: (ask: Ask, answer?: string) => void,
  pageAlone: boolean,
): Promise<GuideResult> {
  const seen = watched(workspace, note);
  const isVisit = workspace.found.visits.includes(path);
  const { value, findings } = await (isVisit ? inspectVisit : inspectGuide)(path, workspace, seen);
  // What lies between guides is judged of the guides themselves.
  const checked = { path, facts: isVisit ? null : value && guideFacts(value.guide), findings };
  if (!kit || !value || findings.some(({ severity }) => severity === 'error'))
    return { ...checked, summary: null, made: null, problems: [] };
  const standing = releaseStanding(value.guide, value.job, value.releases);
  const cards = cardsOf(value.guide, value.job, seen.shop);
  const made = await makeGuide({ ...value, standing }, { seen, note, pageOf, kit, store, cards, pageAlone });
  const summary = summaryOf(
    value.guide,
    value.job,
    seen.shop,
    cards,
    made.face,
    standing && unverifiedInShort(standing),
  );
  return { ...checked, summary, made, problems: made.problems };
}
