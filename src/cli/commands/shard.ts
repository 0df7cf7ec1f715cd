import { relative, resolve } from 'node:path';
import { fillShard, mergedStore, openShard, reusingStore, type ShardPart } from '../../site/shards.ts';
import { type ExitCode, type Io, UsageError } from '../io.ts';
import { exitCodeOf, printVerdict } from '../output.ts';
import { progressBar } from '../progress.ts';
import { workOn } from '../work.ts';
import { outputFolder, workspaceFolder } from '../workspace.ts';
import { type BuildOptions, build, siteFolder } from './build.ts';

/** `baybook build --shard 2/4`: works out a part of the guides, to be merged with the other parts. */
export async function buildShard(part: ShardPart, options: BuildOptions, io: Io): Promise<ExitCode> {
  const workspace = await workspaceFolder(options.guides, io);
  const named = options.out ?? `shard-${part.part}-of-${part.of}`;
  const folder = outputFolder(named, workspace, io);
  const store = openShard(folder, part, new Date());
  if ('problem' in store) throw new UsageError(store.problem);
  const bar = progressBar(io);
  const { work } = workOn(workspace.root, { ...io, store }, options.threads, bar.show);
  const { verdict, notices } = await fillShard(folder, work, part).finally(() => bar.stop());
  for (const notice of notices) io.err(`${notice}\n`);
  const closing = `${relative(io.cwd, folder)}: part ${part.part} of ${part.of}\n`;
  await printVerdict(verdict, work.files, options, workspace.prefix, closing, io);
  return exitCodeOf(verdict, options.strict === true);
}

/** `baybook merge SHARD…`: makes the one site from all parts, byte for byte that of a single build. */
export async function merge(shards: readonly string[], options: BuildOptions, io: Io): Promise<ExitCode> {
  const workspace = await workspaceFolder(options.guides, io);
  outputFolder(siteFolder(options), workspace, io);
  const { work } = workOn(workspace.root, io, options.threads);
  const folders = shards.map((shard) => resolve(io.cwd, shard));
  const store = await mergedStore(folders, work, new Date());
  if (!('problem' in store)) return build(options, { ...io, store });
  io.err(`nothing was published: ${store.problem}\n`);
  return 1;
}

/** `baybook build --reuse FOLDER…`: a build that works out only what no shard in these folders holds already. */
export async function buildReusing(
  shards: readonly string[],
  options: BuildOptions,
  io: Io,
): Promise<ExitCode> {
  const folders = shards.map((shard) => resolve(io.cwd, shard));
  const store = reusingStore(folders, io.store, new Date());
  if ('problem' in store) throw new UsageError(store.problem);
  return build(options, { ...io, store });
}
