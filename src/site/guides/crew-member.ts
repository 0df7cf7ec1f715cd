import { type FoldedResult, foldResult } from './folded-result.ts';
import { type GroundPlan, openGround } from './ground.ts';
import { type TurnGround, takeTurn } from './turn.ts';

let ground: Promise<TurnGround> | null = null;

/** What a thread of the crew does for each guide; what guides share is read once. */
export default async function turn({
  path,
  plan,
}: {
  readonly path: string;
  readonly plan: GroundPlan;
}): Promise<FoldedResult> {
  ground ??= openGround(plan);
  return foldResult(await takeTurn(path, await ground));
}
