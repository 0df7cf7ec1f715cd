import type { Finding } from '../../diagnostics/finding.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { fastenerTypeUnknown } from '../../directives/rules/fastener-type-unknown.ts';
import { itemUnlabelled } from '../../directives/rules/item-unlabelled.ts';
import { supplyUnlisted } from '../../directives/rules/supply-unlisted.ts';
import { toolUnlisted } from '../../directives/rules/tool-unlisted.ts';
import { reverseUnsound } from '../../guide/rules/reverse-unsound.ts';
import type { Guide } from '../../model/guide.ts';
import { wholeFile } from '../../source/span.ts';
import { cribFile } from '../lists/crib.ts';
import { fastenersFile } from '../lists/fastener-types.ts';
import { misnamed } from '../lists/read-lists.ts';
import { suppliesFile } from '../lists/supplies.ts';
import { listMissing } from '../rules.ts';

/** What every guide misses where a shared list is missing or cannot be read. */
const missedWithout: ReadonlyMap<string, string> = new Map([
  [cribFile, toolUnlisted.code],
  [fastenersFile, fastenerTypeUnknown.code],
  [suppliesFile, supplyUnlisted.code],
]);

/** One finding for each list that is not there although something is looked up in it. */
export function missingLists(
  files: ReadonlyMap<string, number>,
  found: readonly Finding[],
): readonly Finding[] {
  return [...missedWithout].flatMap(([file, code]) => {
    const asked = found.filter((one) => one.code === code);
    const [first, ...others] = asked;
    if (files.has(file) || !first) return [];
    const more = others.length === 0 ? '' : `, and ${others.length} more`;
    const notes = [{ message: `this is looked up there${more}`, at: first.at }, ...misnamed(file, files)];
    const message = `this workspace has no ${file}; ${cures.get(file)}`;
    return [finding(listMissing, wholeFile(file), message, { notes })];
  });
}

const cures: ReadonlyMap<string, string> = new Map([
  [
    cribFile,
    'list the tools there, as in "trim-lever: {name: Trim lever}", or give each a label in the guide',
  ],
  [
    fastenersFile,
    'list the types there, as in "push-clip: {name: Push clip}", or take type= out of the guide',
  ],
  [
    suppliesFile,
    'list the supplies there, as in "edge-tape: {name: Edge tape}", or give each a label in the guide',
  ],
]);

/** Codes of findings that say nothing new where the shop's own lists are missing or cannot be read. */
export function echoesOfLists(files: readonly string[]): ReadonlySet<string> {
  return new Set(files.flatMap((file) => missedWithout.get(file) ?? []));
}

/**
 * A guide without what is most likely an echo: an item may seem unused because of the very error that is told, and a
 * step that cannot be undone may be by the new fastener whose `replaces` is not understood.
 */
export function withoutEchoes(findings: readonly Finding[], { items }: Guide): readonly Finding[] {
  if (findings.every(({ severity }) => severity !== 'error')) return findings;
  const astray = [...items.values()].some(
    (item) =>
      'replaces' in item &&
      (item.unknown.has('replaces') || (item.replaces !== null && !items.has(item.replaces.value))),
  );
  const echoes = new Set(['item-unused', ...(astray ? [reverseUnsound.code] : [])]);
  return findings.filter(({ code }) => !echoes.has(code));
}

/** Codes of findings that say nothing new where a guide's platform cannot be read: its parts and options are unknown. */
export const echoesOfPlatform: ReadonlySet<string> = new Set([itemUnlabelled.code, 'option-unknown']);
