import { compareFindings, type Finding, type Note } from '../diagnostics/finding.ts';
import type { Report } from '../diagnostics/report.ts';
import type { Guide } from '../model/guide.ts';
import type { Platform } from '../model/shop.ts';
import { type ListFaults, sharedFiles } from './read-lists.ts';

/** What was read from a file, `null` where nothing could be, with its own findings. */
export interface Inspected<T> {
  readonly value: T | null;
  readonly findings: readonly Finding[];
  readonly report: Report;
}

/**
 * Findings in the order in which they are printed, each once: two guides that place one procedure find the same
 * in it, and the one finding names both places.
 */
export function sorted(findings: readonly Finding[]): readonly Finding[] {
  const once = new Map<string, Finding>();
  for (const one of findings) {
    const key = JSON.stringify([one.at, one.code, one.message]);
    const earlier = once.get(key);
    once.set(key, earlier ? { ...earlier, notes: joined(earlier.notes, one.notes) } : one);
  }
  return [...once.values()].sort(compareFindings);
}

function joined(some: readonly Note[], more: readonly Note[]): readonly Note[] {
  return [...new Map([...some, ...more].map((note) => [JSON.stringify(note), note])).values()];
}

/**
 * The shared files on whose errors every guide depends, since they cannot be laid to one entry of a list; sorted.
 */
export function brokenForAll(
  general: readonly Finding[],
  { crib, fastenerTypes }: ListFaults,
): readonly string[] {
  const ofEntries = new Set([...crib.values(), ...fastenerTypes.values()].flat());
  const broken = general.filter((one) => isError(one) && sharedFiles.has(one.at.file) && !ofEntries.has(one));
  return [...new Set(broken.map(({ at }) => at.file))].sort();
}

/**
 * The guides that may be published where nothing is broken for all: neither they, nor their platform, nor an
 * entry of the shop's lists that they use has an error.
 */
export function soundGuides(
  guides: readonly Inspected<Guide>[],
  platforms: readonly Inspected<Platform>[],
  faults: ListFaults,
): ReadonlySet<string> {
  const soundPlatforms = new Set(platforms.filter(isSound).map(({ value }) => value?.id));
  const sound = guides.filter(
    (one) =>
      isSound(one) &&
      soundPlatforms.has(one.value?.platform.value) &&
      !(one.value && usesAny(one.value, faults)),
  );
  return new Set(sound.flatMap(({ value }) => (value ? [value.id] : [])));
}

/** Whether a guide uses an entry of the shop's lists that has an error. */
function usesAny({ items }: Guide, { crib, fastenerTypes }: ListFaults): boolean {
  return [...items.values()].some((item) => {
    if (item.kind === 'fastener') return item.type !== null && fastenerTypes.has(item.type.value);
    return (item.kind === 'tool' || item.kind === 'wear') && crib.has(item.id);
  });
}

function isSound({ value, findings }: Inspected<unknown>): boolean {
  return value !== null && !findings.some(isError);
}

function isError({ severity }: Finding): boolean {
  return severity === 'error';
}
