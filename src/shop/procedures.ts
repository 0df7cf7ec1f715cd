import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { stepsOf } from '../job/index.ts';
import type { Guide } from '../model/guide.ts';
import { wholeFile } from '../source/span.ts';
import { fileId } from './discover.ts';
import { procedureUnused } from './rules.ts';
import type { Inspected } from './verdict.ts';

/** Reports procedures that no guide places; silent where a guide has an error, which may be why it seems so. */
export function reportUnused(
  procedures: readonly string[],
  guides: readonly Inspected<Guide>[],
  report: Report,
): void {
  if (
    guides.some(
      ({ value, findings }) => value === null || findings.some(({ severity }) => severity === 'error'),
    )
  )
    return;
  const placed = new Set(guides.flatMap(({ value }) => (value ? proceduresOf(value) : [])));
  // One that is placed and gives nothing has been read too: its faults say so.
  const faulty = new Set(guides.flatMap(({ findings }) => findings.map(({ at }) => at.file)));
  for (const path of procedures) {
    if (placed.has(fileId(path)) || faulty.has(path)) continue;
    report(finding(procedureUnused, wholeFile(path), 'no guide places this procedure, so nobody checks it'));
  }
}

function proceduresOf(guide: Guide): readonly string[] {
  const origins = [...guide.items.values(), ...stepsOf(guide)].flatMap((one) => one.origins);
  return origins.flatMap((origin) => (origin.kind === 'procedure' ? [origin.procedure] : []));
}
