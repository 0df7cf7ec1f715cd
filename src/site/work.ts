import type { Finding } from '../diagnostics/finding.ts';
import type { ToldTemplate } from '../diagnostics/render-json.ts';
import type { WorkspaceFiles } from '../shop/files/workspace-files.ts';
import { contentHash } from '../store/content-hash.ts';
import { readJson, type Store, writeJson } from '../store/store.ts';
import type { RunOptions } from './guides/run-guides.ts';
import { isTemplatePath } from './templates.ts';

/** A workspace to be checked or built, and what the work is done with. */
export interface Work extends RunOptions {
  readonly files: WorkspaceFiles;
  readonly store: Store;
}

/** What stood in the store after a run in which everything was as it is now. */
export interface KeptRun {
  readonly findings: readonly Finding[];
  readonly soundGuides: readonly string[];
  readonly brokenForAll: readonly string[];
  readonly guideCount: number;
  readonly templates: readonly ToldTemplate[];
  /** Every file of the site with its hash; `null` where none was made. */
  readonly site: readonly (readonly [path: string, hash: string])[] | null;
  readonly notices: readonly string[];
}

/** A text that differs where anything of a workspace does, or the Baybook that works on it. */
export async function workspaceHash({ files }: Work, identity: string): Promise<string> {
  const { files: listed, links } = await files.list();
  return contentHash(
    identity,
    JSON.stringify(links),
    ...[...listed.keys()].flatMap((path) => [path, files.hash(path) ?? 'none']),
  );
}

/** Names the work of this Baybook with this shop's layouts and styles, apart from any other. */
export async function basisOf({ files }: Work, identity: string, settings: unknown): Promise<string> {
  const { files: listed } = await files.list();
  const own = [...listed.keys()].filter(isTemplatePath);
  return contentHash(
    identity,
    JSON.stringify(settings, (_, part) => (part instanceof Set ? [...part] : part)),
    ...own.flatMap((path) => [path, files.hash(path) ?? 'none']),
  );
}

const runName = (state: string, kind: string) => `run-${contentHash(state, kind)}.json`;

/** What a run gave; `null` where nothing is known of this state of the workspace. */
export function readRun(store: Store, state: string, kind: string): KeptRun | null {
  return readJson<KeptRun>(store, runName(state, kind));
}

/** Keeps what a run gave under the state of its workspace. */
export function writeRun(store: Store, state: string, kind: string, run: KeptRun): void {
  writeJson(store, runName(state, kind), run);
}
