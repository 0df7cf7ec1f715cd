import { betweenRules, type GuideFacts } from '../../checks/index.ts';
import { compareFindings, type Finding, type Note } from '../../diagnostics/finding.ts';
import type { ToldTemplate } from '../../diagnostics/render-json.ts';
import { collector, type Report } from '../../diagnostics/report.ts';
import type { Platform } from '../../model/shop.ts';
import { type ListFaults, sharedFiles } from '../lists/read-lists.ts';
import type { Workspace } from '../open-workspace.ts';
import { reportUnused } from '../procedures.ts';
import { echoesOfLists, missingLists } from './echoes.ts';

/** What was read from a file, `null` where nothing could be, with its own findings. */
export interface Inspected<T> {
  readonly value: T | null;
  readonly findings: readonly Finding[];
  readonly report: Report;
}

/** A guide that has been checked by itself, as plain data. */
export interface CheckedGuide {
  readonly path: string;
  /** `null` where nothing of it could be judged. */
  readonly facts: GuideFacts | null;
  readonly findings: readonly Finding[];
}

/** What a run has found. */
export interface Verdict {
  /** Sorted by file, place and code; each once. */
  readonly findings: readonly Finding[];
  /** Guides without an error of their own, of their platform or of the shop; only these may be published. */
  readonly soundGuides: ReadonlySet<string>;
  /** The shop's own files that have an error on which every guide depends, so that no guide is sound. */
  readonly brokenForAll: readonly string[];
  /** Files that are meant to be guides, whether or not they could be read. */
  readonly guideCount: number;
  /** What is told of templates though nothing is wrong, in the order of the guides. */
  readonly templates: readonly ToldTemplate[];
}

/**
 * Judges what lies between guides of a workspace, and sums up what they and the visits gave; not all of them have to be
 * there.
 */
export function conclude(
  workspace: Workspace,
  guides: readonly CheckedGuide[],
  visits: readonly Pick<CheckedGuide, 'findings'>[] = [],
): Verdict {
  const { found, platforms, faults, listing } = workspace;
  const { findings: unused, report: tellUnused } = collector();
  // Among some of the guides a procedure may seem unused.
  if (guides.length === found.guides.length) reportUnused(found.procedures, guides, tellUnused);
  const { findings: between, report: tellBetween } = collector();
  const facts = guides.flatMap((guide) => guide.facts ?? []);
  for (const rule of betweenRules) rule.runBetween(facts, tellBetween);

  const general = [...workspace.general, ...unused];
  const told = [
    ...general,
    ...[...platforms, ...guides, ...visits].flatMap(({ findings }) => findings),
    ...between,
  ];
  const all = sorted(told);
  const missing = missingLists(listing.files, all);
  const brokenForAll = brokenShared(general, faults);
  const echoes = echoesOfLists([...brokenForAll, ...missing.map(({ at }) => at.file)]);
  return {
    findings: sorted([...all.filter(({ code }) => !echoes.has(code)), ...missing]),
    soundGuides: brokenForAll.length > 0 ? new Set() : soundGuides(guides, between, platforms, faults),
    brokenForAll,
    guideCount: guides.length,
    templates: facts.flatMap(({ templates }) => templates),
  };
}

/**
 * Findings in the order in which they are printed, each once: two guides that place one procedure find the same
 * in it, and the one finding names both places.
 */
function sorted(findings: readonly Finding[]): readonly Finding[] {
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
function brokenShared(
  general: readonly Finding[],
  { crib, fastenerTypes, supplies }: ListFaults,
): readonly string[] {
  const ofEntries = new Set([...crib.values(), ...fastenerTypes.values(), ...supplies.values()].flat());
  const broken = general.filter((one) => isError(one) && sharedFiles.has(one.at.file) && !ofEntries.has(one));
  return [...new Set(broken.map(({ at }) => at.file))].sort();
}

/**
 * The guides that may be published where nothing is broken for all: neither they, nor their platform, nor an
 * entry of the shop's lists that they use has an error.
 */
function soundGuides(
  guides: readonly CheckedGuide[],
  between: readonly Finding[],
  platforms: readonly Inspected<Platform>[],
  faults: ListFaults,
): ReadonlySet<string> {
  const soundPlatforms = new Set(
    platforms.flatMap(({ value, findings }) => (value && !findings.some(isError) ? [value.id] : [])),
  );
  const atFault = new Set(between.filter(isError).map(({ at }) => at.file));
  const sound = guides.flatMap(({ facts, findings }) =>
    facts &&
    !findings.some(isError) &&
    !atFault.has(facts.file) &&
    soundPlatforms.has(facts.platform) &&
    !usesAny(facts, faults)
      ? [facts.id]
      : [],
  );
  return new Set(sound);
}

/** Whether a guide uses an entry of the shop's lists that has an error. */
function usesAny(guide: GuideFacts, { crib, fastenerTypes, supplies }: ListFaults): boolean {
  return (
    guide.tools.some((id) => crib.has(id)) ||
    guide.fastenerTypes.some((id) => fastenerTypes.has(id)) ||
    guide.products.some(({ id }) => supplies.has(id))
  );
}

function isError({ severity }: Finding): boolean {
  return severity === 'error';
}
