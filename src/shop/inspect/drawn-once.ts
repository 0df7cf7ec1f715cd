import { witnessNotes } from '../../checks/builds/witness.ts';
import type { OnOnePanel } from '../../cut/shape/neighbours.ts';
import type { Finding } from '../../diagnostics/finding.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { Build } from '../../model/when.ts';

/** What is wrong with one of the drawings that a template comes to, and the builds that have it. */
export interface Judged {
  readonly builds: readonly Build[];
  readonly findings: readonly Finding[];
}

/** One of those drawings, worked out. */
export type WorkedOut = Judged & OnOnePanel;

/** The faults of all drawings of a template, each once; one that not all of them have says which builds show it. */
export function eachOnce(drawn: readonly Judged[], guide: Guide, job: Job): readonly Finding[] {
  const found = new Map<string, { readonly fault: Finding; readonly shownBy: Judged[] }>();
  for (const one of drawn) {
    for (const fault of one.findings) {
      const key = JSON.stringify([fault.code, fault.at, fault.message]);
      const known = found.get(key);
      if (known) known.shownBy.push(one);
      else found.set(key, { fault, shownBy: [one] });
    }
  }
  return [...found.values()].map(({ fault, shownBy }) => {
    if (shownBy.length === drawn.length) return fault;
    const builds = shownBy.flatMap((one) => one.builds);
    return { ...fault, notes: [...fault.notes, ...witnessNotes(builds, guide, job)] };
  });
}
