import { nothingLost, placeTakenTwice } from '../checks/index.ts';
import type { Report } from '../diagnostics/report.ts';
import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Shop } from '../model/shop.ts';
import { reportLoads } from './loads.ts';
import { reportRoutes } from './order/routes.ts';

/** Tells what the guides of a visit want of the vehicle that only one of them can have, or all of them too much. */
export function reportConflicts(guide: Guide, job: Job, shop: Shop, report: Report): void {
  placeTakenTwice.run({ guide, job, shop, lost: nothingLost }, report);
  reportLoads(guide, job, report);
  reportRoutes(guide, report);
}
