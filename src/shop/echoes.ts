import type { Finding } from '../diagnostics/finding.ts';
import { fastenerTypeUnknown } from '../directives/rules/fastener-type-unknown.ts';
import { itemUnlabelled } from '../directives/rules/item-unlabelled.ts';
import { cribFile } from './crib.ts';
import { fastenersFile } from './fastener-types.ts';

/** What a shared file declares, missed by every guide, where that file cannot be read. */
const missedWithout: ReadonlyMap<string, string> = new Map([
  [cribFile, itemUnlabelled.code],
  [fastenersFile, fastenerTypeUnknown.code],
]);

/** Codes of findings that say nothing new after a fault in the shop's own lists, which is told by itself. */
export function echoesOfLists(general: readonly Finding[]): ReadonlySet<string> {
  const broken = general.filter(({ severity }) => severity === 'error').map(({ at }) => at.file);
  return new Set(broken.flatMap((file) => missedWithout.get(file) ?? []));
}

/** Codes of findings that say nothing new where a guide's platform cannot be read: its parts and options are unknown. */
export const echoesOfPlatform: ReadonlySet<string> = new Set([itemUnlabelled.code, 'option-unknown']);
