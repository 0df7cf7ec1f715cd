import { dryRunRules } from '../checks/dry-run/index.ts';
import { nothingLost } from '../checks/index.ts';
import type { Finding } from '../diagnostics/finding.ts';
import { collector } from '../diagnostics/report.ts';
import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import type { Shop } from '../model/shop.ts';

/**
 * What the rules of the dry run hold against a visit as one job, apart from warnings: its guides are sound by
 * themselves, so each of these lies between them.
 */
export function ledgerErrors(guide: Guide, job: Job, shop: Shop): readonly Finding[] {
  const { findings, report } = collector();
  const subject = { guide, job, shop, lost: nothingLost };
  for (const rule of dryRunRules) if (rule.played) rule.run(subject, report);
  return findings.filter(({ severity }) => severity === 'error');
}
