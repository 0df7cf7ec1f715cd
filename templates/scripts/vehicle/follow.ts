import type { Keeper } from '../bay/kept/keeper.ts';
import { isBegun } from '../bay/kept/progress.ts';
import type { KeptRecord } from './kept.ts';
import { intakeLines, recheckLines, signatureLines } from './page-facts.ts';
import type { RecordKeeper } from './record-keeper.ts';
import { withWork, workOn } from './work.ts';

/**
 * Has a record follow the job: what is ticked and typed in, and which build stands in the bay. Returns what ends that.
 *
 * @param startedAgain is called where the page was started again, which the record does not follow
 */
export function follow(keeper: Keeper, records: RecordKeeper, startedAgain: () => void): () => void {
  const at = () => new Date().toISOString();
  const seen = workOn(keeper, keeper.now(), at());
  let isOpen = true;
  const sync = (): void => {
    if (!isOpen) return;
    const { record } = records.now();
    const progress = keeper.now();
    if (!isBegun(progress) && isWorkedOn(record)) {
      startedAgain();
      return;
    }
    const work = withWork(record.work, workOn(keeper, progress, at()), seen);
    const next = { ...record, ...linesFor(record, keeper), work };
    if (JSON.stringify(next) !== JSON.stringify(record)) records.change(() => next);
  };
  keeper.onChange(sync);
  // Not after what another tab did: two that show different builds would write the lines of theirs in turn for ever.
  records.onEdit(sync);
  return () => {
    isOpen = false;
  };
}

function isWorkedOn({ work }: KeptRecord): boolean {
  const last = work.at(-1);
  return last !== undefined && last.values.length + last.steps.flatMap(({ done }) => done).length > 0;
}

/** What the build that the page shows asks for, with what is written down of it already; nothing written is dropped. */
function linesFor(
  record: KeptRecord,
  keeper: Keeper,
): Pick<KeptRecord, 'intake' | 'signatures' | 'rechecks'> {
  return {
    intake: merged(intakeLines(keeper.page), record.intake, ({ text }) => text !== ''),
    signatures: merged(signatureLines(keeper.page), record.signatures, ({ name }) => name !== ''),
    rechecks: recheckLines(keeper, record),
  };
}

function merged<L extends { readonly key: string }>(
  asked: readonly L[],
  written: readonly L[],
  isWritten: (line: L) => boolean,
): L[] {
  return [
    ...asked.map((line) => written.find(({ key }) => key === line.key) ?? line),
    ...written.filter((line) => isWritten(line) && !asked.some(({ key }) => key === line.key)),
  ];
}
