import type { Finding } from './finding.ts';

/** How many findings of each severity. */
interface FindingCounts {
  readonly errors: number;
  readonly warnings: number;
}

/** Counts findings by severity. */
export function countFindings(findings: readonly Finding[]): FindingCounts {
  const errors = findings.filter(({ severity }) => severity === 'error').length;
  return { errors, warnings: findings.length - errors };
}

/** The closing line: "4 guides checked: 2 errors, 1 warning". */
export function summaryLine(findings: readonly Finding[], guides: number): string {
  const { errors, warnings } = countFindings(findings);
  return `${counted(guides, 'guide')} checked: ${counted(errors, 'error')}, ${counted(warnings, 'warning')}`;
}

function counted(count: number, noun: string): string {
  return `${count === 0 ? 'no' : count} ${noun}${count === 1 ? '' : 's'}`;
}
