import type { GuideFacts } from '../checks/index.ts';
import type { Finding } from '../diagnostics/finding.ts';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { wholeFile } from '../source/span.ts';
import { fileId } from './discover.ts';
import { procedureUnused } from './rules.ts';

/** Reports procedures that no guide places; silent where a guide has an error, which may be why it seems so. */
export function reportUnused(
  procedures: readonly string[],
  guides: readonly { readonly facts: GuideFacts | null; readonly findings: readonly Finding[] }[],
  report: Report,
): void {
  if (
    guides.some(
      ({ facts, findings }) => facts === null || findings.some(({ severity }) => severity === 'error'),
    )
  )
    return;
  const placed = new Set(guides.flatMap(({ facts }) => facts?.procedures ?? []));
  // One that is placed and gives nothing has been read too: its faults say so.
  const faulty = new Set(guides.flatMap(({ findings }) => findings.map(({ at }) => at.file)));
  for (const path of procedures) {
    if (placed.has(fileId(path)) || faulty.has(path)) continue;
    report(finding(procedureUnused, wholeFile(path), 'no guide places this procedure, so nobody checks it'));
  }
}
