import { readAloud } from '../pages/steps/read-aloud.ts';
import { diskFiles } from '../shop/files/disk-files.ts';
import { inspect } from '../shop/index.ts';
import { namesOf } from '../site/check-some.ts';
import type { Io } from './io.ts';

/** Prints each step of the guides and visits that are named, or of all, build by build, as the technician will read it. */
export async function readGuides(root: string, names: readonly string[], io: Io): Promise<void> {
  const { guides, visits } = await inspect(diskFiles(root));
  for (const { guide, job } of [...guides, ...visits]) {
    if (names.length > 0 && !namesOf(guide.file).some((name) => names.includes(name))) continue;
    for (const plan of job.plans) {
      const build = [plan.statement, plan.found].map((words) => (words === '' ? '' : `, ${words}`)).join('');
      io.out(`\n${guide.title.value}${build}\n\n${readAloud(guide, plan)}\n`);
    }
  }
}
