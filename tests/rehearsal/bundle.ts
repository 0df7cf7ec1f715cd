import { createContext, runInContext } from 'node:vm';
import type { Guide } from '../../src/model/guide.ts';
import type { Job } from '../../src/model/job.ts';
import { numberSteps } from '../../src/pages/frame/context.ts';
import { rehearsalData } from '../../src/pages/rehearsal/rehearsal.ts';
import type { RehearsalData } from '../../src/pages/rehearsal/rehearsal-data.ts';
import { browserScript } from '../../src/site/scripts.ts';
import type { Rehearsing } from '../../templates/scripts/rehearse.ts';

/** The very script of the page, run without one. */
export async function bundled(): Promise<Rehearsing> {
  const context = createContext({});
  runInContext(await browserScript('rehearse'), context);
  const { rehearsing } = context;
  return rehearsing;
}

/** What is published of a guide for its rehearsal, as a page reads it. */
export function published(guide: Guide, job: Job): RehearsalData {
  return JSON.parse(JSON.stringify(rehearsalData(guide, job, { steps: numberSteps(guide, job) })));
}
