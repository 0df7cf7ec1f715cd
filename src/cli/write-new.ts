import { mkdir, stat, writeFile } from 'node:fs/promises';
import { dirname, join, relative } from 'node:path';
import { didYouMean, nearest } from '../diagnostics/suggest.ts';
import { idLike } from '../directives/attributes/id-text.ts';
import type { Workspace } from '../shop/open-workspace.ts';
import { type Io, UsageError } from './io.ts';

/** The platform that a flag names, the only one there is, or what a person answers; one that is not there is wrong usage. */
export async function platformOf(named: string | undefined, { shop }: Workspace, io: Io): Promise<string> {
  const known = [...shop.platforms.keys()];
  if (known.length === 0) throw new UsageError('there is no platform yet; begin with baybook new platform');
  const [only] = known;
  const question = `For which platform: ${known.join(', ')}?`;
  const platform =
    named ??
    (known.length === 1 && only !== undefined ? only : await given(undefined, '--platform', question, io));
  if (shop.platforms.has(platform)) return platform;
  const help = didYouMean(nearest(platform, known)) || `there are ${known.join(', ')}`;
  throw new UsageError(`there is no platform "${platform}"; ${help}`);
}

/** What a flag says, or else a person. */
export async function given(
  said: string | undefined,
  flag: string,
  question: string,
  { ask }: Io,
): Promise<string> {
  const answer = (said ?? (ask ? await ask(`${question} `) : '')).trim();
  if (answer === '') throw new UsageError(`${flag} is missing, and there is nobody to ask`);
  return answer;
}

/** The id that was given, or the one that a title gives. */
export function idOf(named: string | undefined, title: string): string {
  if (named !== undefined && idLike(named) === named) return named;
  const likely = idLike(named ?? title.split(',')[0] ?? title);
  if (named !== undefined || likely === undefined) {
    const help = likely === undefined ? '' : `, as in ${likely}`;
    throw new UsageError(`"${named ?? title}" is no id; small letters, digits and hyphens make one${help}`);
  }
  return likely;
}

/** Writes new files, all or none: what is there is never overwritten. */
export async function writeNew(
  root: string,
  files: ReadonlyMap<string, string | Uint8Array>,
  io: Io,
): Promise<void> {
  for (const path of files.keys()) {
    const there = await stat(join(root, path)).catch(() => null);
    if (there) throw new UsageError(`${shown(join(root, path), io)} is there already, and is left as it is`);
  }
  for (const [path, text] of files) {
    await mkdir(dirname(join(root, path)), { recursive: true });
    await writeFile(join(root, path), text, { flag: 'wx' });
    io.out(`wrote ${shown(join(root, path), io)}\n`);
  }
}

function shown(path: string, { cwd }: Io): string {
  return relative(cwd, path) || '.';
}
