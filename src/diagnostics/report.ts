import type { Finding } from './finding.ts';

/** Where a stage puts what it finds. Stages are handed one and never throw for an author's fault. */
export type Report = (finding: Finding) => void;

/** Gathers findings in a list. */
export function collector(): { readonly findings: Finding[]; readonly report: Report } {
  const findings: Finding[] = [];
  return { findings, report: (finding) => void findings.push(finding) };
}
