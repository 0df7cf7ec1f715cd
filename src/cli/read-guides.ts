import { readAloud } from '../pages/steps/read-aloud.ts';
import { diskFiles } from '../shop/disk-files.ts';
import { inspect } from '../shop/index.ts';
import type { Io } from './io.ts';

/** Prints each step of the guides that are named, or of every guide, build by build, as the technician will read it. */
export async function readGuides(root: string, ids: readonly string[], io: Io): Promise<void> {
  const { guides } = await inspect(diskFiles(root));
  for (const { guide, job } of guides) {
    if (ids.length > 0 && !ids.includes(guide.id)) continue;
    for (const plan of job.plans) {
      const build = [plan.statement, plan.found].map((words) => (words === '' ? '' : `, ${words}`)).join('');
      io.out(`\n${guide.title.value}${build}\n\n${readAloud(guide, plan)}\n`);
    }
  }
}
