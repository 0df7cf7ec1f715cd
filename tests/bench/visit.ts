import { resolve } from 'node:path';
import { stepsOf } from '../../src/job/index.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { bookable } from '../visit/request.ts';

/**
 * How long it takes to plan three guides of the demo shop, of some 25 steps each, as one visit: two seconds is the most
 * that it may, on a quiet machine.
 *
 *   npx tsx tests/bench/visit.ts
 */
const names = ['lamp-cradle', 'roof-vent', 'side-awning'];
const shop = await bookable(diskFiles(resolve(import.meta.dirname, '../../guides')), names, false);
const counts = names.map((name) => stepsOf(shop.guide(name).guide).length);

const times = Array.from({ length: 5 }, () => {
  const [wall, cpu] = [process.hrtime.bigint(), process.cpuUsage()];
  const { visit } = shop.plan(names, ['led', 'lining']);
  if (!visit) throw new Error('the visit for the benchmark cannot be planned');
  const { user, system } = process.cpuUsage(cpu);
  const seconds = Number(process.hrtime.bigint() - wall) / 1e9;
  return { seconds, busy: (user + system) / 1e6, steps: stepsOf(visit.guide).length };
});
const [first] = times;
console.log(`${counts.join(' + ')} steps, ${first?.steps} in one visit`);
console.log(`first time  ${first?.seconds.toFixed(2)} s, ${first?.busy.toFixed(2)} s of CPU`);
console.log(
  `best of ${times.length}   ${Math.min(...times.map(({ seconds }) => seconds)).toFixed(2)} s, ${Math.min(...times.map(({ busy }) => busy)).toFixed(2)} s of CPU`,
);
