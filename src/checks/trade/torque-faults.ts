import type { Note } from '../../diagnostics/finding.ts';
import { isFixing } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Fastener, Item, KitItem } from '../../model/item.ts';
import { judgeTorque, judgeUngraded, type TorqueJudgement } from '../../trade/torque.ts';
import { greatestTorque } from '../../units/torque.ts';

/** A stated torque that does not go with the thread and the class. */
interface TorqueFault {
  readonly item: Fastener | KitItem;
  readonly verdict: TorqueJudgement['verdict'];
  readonly message: string;
}

/**
 * Judges the greatest torque of a fastener: without a grade that a table has, only against what is too much for
 * every bolt. `null` where there is no fault, and where thread or torque is not stated. A torque that a further
 * turn follows only snugs, so it is never too low.
 */
export function torqueFault(item: Item): TorqueFault | null {
  if (!isFixing(item) || !item.torque || !item.thread || item.unknown.has('friction')) return null;
  const torque = greatestTorque(item.torque.value);
  const thread = item.thread.value;
  const friction = item.friction?.value ?? null;
  const graded = item.grade && torque ? judgeTorque(torque, thread, item.grade.value, friction) : undefined;
  const judged =
    graded ?? (torque && !item.unknown.has('grade') ? judgeUngraded(torque, thread, friction) : undefined);
  if (!judged || judged.verdict === 'plausible') return null;
  const turns = item.torque.value.some(({ kind }) => kind === 'turn');
  if (judged.verdict === 'low' && turns) return null;
  return { item, verdict: judged.verdict, message: `for the ${item.noun.singular}, ${judged.message}` };
}

/** Where the thread stands, and whose word counts. */
export function torqueNotes(
  { thread }: TorqueFault['item'],
  { words }: Pick<Guide, 'words'>,
): readonly Note[] {
  const data = { message: `the data of the ${words.vehicle} maker and of the accessory maker decide` };
  return thread ? [{ message: 'the thread is stated here', at: thread.at }, data] : [data];
}
