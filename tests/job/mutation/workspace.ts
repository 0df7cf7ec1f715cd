import { posix } from 'node:path';
import { rules } from '../../../src/checks/index.ts';
import { languageRules } from '../../../src/checks/language/index.ts';
import { collector } from '../../../src/diagnostics/report.ts';
import { type ReadingContext, readGuide, readPlatform } from '../../../src/guide/index.ts';
import { distinctOutcomes } from '../../../src/job/builds/outcomes.ts';
import { dryRun } from '../../../src/job/dry-run/index.ts';
import type { Guide } from '../../../src/model/guide.ts';
import type { Job, Plan } from '../../../src/model/job.ts';
import type { Shop } from '../../../src/model/shop.ts';
import { diskFiles, inspect, type WorkspaceFiles } from '../../../src/shop/index.ts';
import { decodeSource, type SourceFile, type Sources, sourceFile } from '../../../src/source/source-file.ts';
import type { Estimate } from '../../../src/units/estimate.ts';
import { base } from '../../../src/units/quantity.ts';
import { pictureStore } from '../../picture-store.ts';
import type { Mutant } from './mutants.ts';

/** A workspace in which single guides can be read again with a line changed. */
export interface Workspace {
  /** The guides with nothing to find. */
  readonly clean: readonly Guide[];
  readonly sources: Sources;
  /** The codes of what is found in a guide after a change; `null` is the guide as it is. */
  readonly check: (guide: Guide, mutant: Pick<Mutant, 'file' | 'text'> | null) => readonly string[];
}

/** Long sentences and the like: a change that only they notice has not been noticed. */
const language = new Set(languageRules.map(({ card }) => card.code));

export async function openWorkspace(folder: string): Promise<Workspace> {
  const files = diskFiles(folder);
  const { shop, guides, findings } = await inspect(files, await pictureStore());
  const sources = new Map([...shop.files.keys()].flatMap((path) => textIn(files, path)));
  const faulty = new Set(findings.map(({ at }) => at.file));
  return {
    clean: guides.map(({ guide }) => guide).filter(({ file }) => !faulty.has(file)),
    sources,
    check: (guide, mutant) => codesIn(guide, mutant, shop, sources),
  };
}

function textIn(files: WorkspaceFiles, path: string): [string, SourceFile][] {
  const bytes = /\.(?:md|svg|dxf)$/.test(path) ? files.read(path) : null;
  const source = bytes && decodeSource(path, bytes);
  return source ? [[path, source]] : [];
}

function codesIn(
  guide: Guide,
  mutant: Pick<Mutant, 'file' | 'text'> | null,
  shop: Shop,
  sources: Sources,
): readonly string[] {
  const { findings, report } = collector();
  const all = mutant ? new Map([...sources, [mutant.file, sourceFile(mutant.file, mutant.text)]]) : sources;
  const source = all.get(guide.file);
  const context = contextOf(shop, all);
  const [, id] = /^platforms\/(.+)\.md$/.exec(mutant?.file ?? '') ?? [];
  const changed = mutant && id !== undefined && all.get(mutant.file);
  const platform = changed ? readPlatform(changed, context, report) : null;
  const platforms = platform && id ? new Map([...shop.platforms, [id, platform]]) : shop.platforms;
  const read = source && readGuide(source, { ...context, platforms }, report);
  if (read && findings.length === 0) {
    const job = jobOf(read);
    const lost = {
      ids: new Set<string>(),
      declarations: new Set<string>(),
      nameless: new Set<'thing' | 'place'>(),
      gap: null,
      conditions: false,
    };
    for (const rule of rules) rule.run({ guide: read, job, shop, lost }, report);
  }
  return findings.map(({ code }) => code).filter((code) => !language.has(code));
}

/** The job as far as rules look at it: without the schedules, which take longer than all the rest. */
function jobOf(guide: Guide): Job {
  const outcomes = distinctOutcomes(guide);
  return {
    fingerprint: '',
    stepFingerprints: new Map(),
    decidingOptions: outcomes.deciding.map((option) => option.id),
    buildProblem: outcomes.problem,
    accounted: true,
    violations: dryRun(guide, outcomes).violations,
    halt: null,
    plans: outcomes.groups.map((builds, index) => ({
      index,
      builds,
      statement: '',
      ...emptyPlan,
    })),
  };
}

const none: Estimate = { least: base<'time'>(0), likely: base<'time'>(0), most: base<'time'>(0) };
const emptyPlan: Omit<Plan, 'index' | 'builds' | 'statement'> = {
  found: '',
  steps: [],
  gather: { tools: [], wear: [], supplies: [], kit: [] },
  messages: [],
  time: { job: none, sections: [], helper: none, waiting: 0, from: [], untimed: [] },
  bags: [],
  countSheet: [],
  fasteners: [],
  schedules: [],
};

function contextOf(shop: Shop, sources: Sources): ReadingContext {
  const procedures = [...sources].filter(([path]) => path.startsWith('procedures/'));
  return {
    crib: shop.crib,
    supplies: shop.supplies,
    fastenerTypes: shop.fastenerTypes,
    platforms: shop.platforms,
    words: shop.settings.words,
    procedures: new Map(
      procedures.map(([path, source]) => [path.slice('procedures/'.length).replace(/\.md$/, ''), source]),
    ),
    resolve: (from, path) => posix.join(posix.dirname(from), path),
    textOf: (path) => sources.get(path)?.text ?? null,
  };
}
