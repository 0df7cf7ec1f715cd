import { capitalised } from '../../job/words/noun.ts';
import type { FastenerType, Tool, Wear } from '../../model/item.ts';
import type { Platform } from '../../model/shop.ts';
import { guideFolder, platformFolder } from '../../pages/frame/context.ts';
import { fastenerTypePath, termPath, toolPath } from '../../pages/frame/reference-paths.ts';
import type { GuideSummary } from '../../pages/reference/guide-summary.ts';
import { formatDrive } from '../../trade/drives.ts';
import { type GlossaryTerm, glossary, namesOfDrive, standardWords } from '../../trade/glossary/glossary.ts';
import { formatBoth, formatRangeBoth } from '../../units/format.ts';
import type { Publication } from '../publication.ts';
import type { SearchEntry, SearchFact } from './search-data.ts';

/** Everything that can be found, in the order in which equal results stand. */
export function searchEntries({
  shop,
  summaries: guides,
  visits,
  platforms,
}: Publication): readonly SearchEntry[] {
  return [
    ...guides.map((guide) => guideEntry(guide, platforms)),
    ...visits.map((visit) => guideEntry(visit, platforms)),
    ...platforms.map(platformEntry),
    ...[...shop.crib.values()].map((item) => toolEntry(item, guides)),
    ...[...shop.fastenerTypes.values()].map((type) => fastenerEntry(type, guides)),
    ...glossary.map(termEntry),
  ];
}

function guideEntry(guide: GuideSummary, platforms: readonly Platform[]): SearchEntry {
  const platform = platforms.find(({ id }) => id === guide.platform);
  const part = guide.partNumber;
  return {
    kind: 'guide',
    label: guide.visit ? 'Visit' : 'Guide',
    title: guide.title,
    href: `${guideFolder(guide)}index.html`,
    note: [platform?.title.value, part ? `part ${part}` : null].filter((word) => word).join(', '),
    names: [guide.id, ...(part ? [part] : [])],
    facts: guide.facts,
    platforms: [guide.platform],
  };
}

function platformEntry(platform: Platform): SearchEntry {
  const options = platform.builds.options.flatMap(({ name, choices }) => [
    name,
    ...(choices ?? []).map((choice) => choice.name),
  ]);
  return {
    kind: 'platform',
    label: capitalised(platform.words.vehicle),
    title: platform.title.value,
    href: `${platformFolder(platform.id)}index.html`,
    note: '',
    names: [platform.id],
    facts: [...options, ...platform.sections.map(({ titleText }) => titleText)].map(plainFact),
    platforms: [platform.id],
  };
}

function toolEntry(item: Tool | Wear, guides: readonly GuideSummary[]): SearchEntry {
  const drive = item.kind === 'tool' ? item.drive?.value : undefined;
  const users = guides.filter(({ tools }) => item.id in tools);
  return {
    kind: 'tool',
    label: item.kind === 'tool' ? 'Tool' : 'To wear',
    title: item.noun.label,
    href: toolPath(item.id),
    note: drive ? formatDrive(drive) : '',
    names: [...item.synonyms, ...(drive ? namesOfDrive(drive) : [])],
    facts: item.kind === 'tool' ? toolSizes(item).map(plainFact) : [],
    platforms: platformsOf(users),
  };
}

function toolSizes({ range, diameter, offset }: Tool): readonly string[] {
  return [
    ...(range ? [formatRangeBoth(range.value)] : []),
    ...[diameter, offset].flatMap((size) => (size ? [formatBoth(size.value)] : [])),
  ];
}

function fastenerEntry(type: FastenerType, guides: readonly GuideSummary[]): SearchEntry {
  const uses = guides.flatMap((guide) =>
    guide.fasteners.flatMap((fastener) => (fastener.type === type.id ? [{ guide, fastener }] : [])),
  );
  return {
    kind: 'fastener',
    label: 'Fastener',
    title: type.noun.label,
    href: fastenerTypePath(type.id),
    note: type.drive ? formatDrive(type.drive.value) : '',
    names: [...type.synonyms, ...(type.drive ? namesOfDrive(type.drive.value) : [])],
    facts: [...new Set(uses.map(({ fastener }) => fastener.name))].map(plainFact),
    platforms: platformsOf(uses.map(({ guide }) => guide)),
  };
}

const termLabels = {
  drive: 'Glossary, drive',
  fastener: 'Glossary, kind of fastener',
  'signal-word': 'Glossary, signal word',
} as const;

function termEntry(term: GlossaryTerm): SearchEntry {
  return {
    kind: 'term',
    label: termLabels[term.kind],
    title: term.term,
    href: termPath(term),
    note: standardWords(term) ?? '',
    names: [...term.synonyms, ...(term.tradeMarks ?? [])],
    facts: [plainFact(term.meaning)],
    platforms: null,
  };
}

function platformsOf(guides: readonly GuideSummary[]): readonly string[] {
  return [...new Set(guides.map(({ platform }) => platform))].sort();
}

function plainFact(text: string): SearchFact {
  return { text, at: null };
}
