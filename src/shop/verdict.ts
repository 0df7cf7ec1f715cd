import { compareFindings, type Finding, type Note } from '../diagnostics/finding.ts';
import type { Report } from '../diagnostics/report.ts';
import type { Guide } from '../model/guide.ts';
import type { Platform } from '../model/shop.ts';
import { sharedFiles } from './read-lists.ts';

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

/** The guides that may be published: neither they, nor their platform, nor what all share has an error. */
export function soundGuides(
  guides: readonly Inspected<Guide>[],
  platforms: readonly Inspected<Platform>[],
  general: readonly Finding[],
): ReadonlySet<string> {
  if (general.some((one) => isError(one) && sharedFiles.has(one.at.file))) return new Set();
  const soundPlatforms = new Set(platforms.filter(isSound).map(({ value }) => value?.id));
  const sound = guides.filter((one) => isSound(one) && soundPlatforms.has(one.value?.platform.value));
  return new Set(sound.flatMap(({ value }) => (value ? [value.id] : [])));
}

function isSound({ value, findings }: Inspected<unknown>): boolean {
  return value !== null && !findings.some(isError);
}

function isError({ severity }: Finding): boolean {
  return severity === 'error';
}
