import { type GroundPlan, openGround } from './ground.ts';
import { type GuideResult, type TurnGround, takeTurn } from './turn.ts';

let ground: Promise<TurnGround> | null = null;

/** What a thread of the crew does for each guide; what guides share is read once. */
export default async function turn({
  path,
  plan,
}: {
  readonly path: string;
  readonly plan: GroundPlan;
}): Promise<GuideResult> {
  ground ??= openGround(plan);
  return takeTurn(path, await ground);
}
