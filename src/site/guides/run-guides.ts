import type { Crew } from './crew.ts';
import { type FoldedResult, unfoldResult } from './folded-result.ts';
import type { GroundPlan } from './ground.ts';
import { readKept } from './kept.ts';
import { inTightHeap } from './tight-heap.ts';
import type { GuideResult, TurnGround } from './turn.ts';

/** How the guides of a run are worked through. */
export interface RunOptions {
  /** Opens threads for so many guides; `null` where that does not pay. */
  readonly openCrew: (guides: number, plan: CrewPlan) => Promise<Crew | null>;
  /** Is told how many guides are done. */
  readonly progress?: (done: number, of: number) => void;
}

/** What threads have to know of the work that they share. */
export type CrewPlan = Pick<GroundPlan, 'basis' | 'make'>;

/** What a run of guides gave, in their order, and what whoever runs it should know. */
interface GuideRun {
  readonly results: readonly GuideResult[];
  readonly notices: readonly string[];
}

/** Takes what guides gave from the store, and the turn of each that it does not hold. */
export async function runGuides(
  paths: readonly string[],
  ground: TurnGround,
  { openCrew, progress }: RunOptions,
): Promise<GuideRun> {
  const results = new Map<string, FoldedResult>();
  const take = (path: string, result: FoldedResult) => {
    results.set(path, result);
    progress?.(results.size, paths.length);
  };
  for (const path of paths) {
    const kept = readKept(path, ground);
    if (kept) take(path, kept);
  }
  const waiting = paths.filter((path) => !results.has(path));
  const plan = { basis: ground.basis, make: ground.kit !== null };
  const crew = waiting.length > 0 ? await openCrew(waiting.length, plan) : null;
  const notices = crew ? await withCrew(crew, waiting, take) : [];
  for (const path of waiting) {
    if (!results.has(path)) take(path, await takeTurn(path, ground));
  }
  const all = await inTightHeap(async () => paths.flatMap((path) => takenOut(path, results)));
  return { results: all, notices };
}

/** A result unfolded, of which no other form is held any more. */
function takenOut(path: string, results: Map<string, FoldedResult>): GuideResult | readonly [] {
  const result = results.get(path);
  results.delete(path);
  return result ? unfoldResult(result) : [];
}

async function takeTurn(path: string, ground: TurnGround): Promise<GuideResult> {
  // Loaded only where a guide really takes its turn: a run with nothing new reads no Markdown.
  const turn = await import('./turn.ts');
  return turn.takeTurn(path, ground);
}

/** What a thread could not do is left to be done without it. */
async function withCrew(
  crew: Crew,
  paths: readonly string[],
  take: (path: string, result: FoldedResult) => void,
): Promise<readonly string[]> {
  let lost = 0;
  const turns = paths.map(async (path) => {
    try {
      take(path, await crew.takeTurn(path));
    } catch {
      lost += 1;
    }
  });
  await Promise.all(turns);
  await crew.close();
  if (lost === 0) return [];
  return [`a thread broke off; ${lost} ${lost === 1 ? 'guide was' : 'guides were'} done again without it`];
}
