import { spawn } from 'node:child_process';
import { readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join, resolve } from 'node:path';

/** What a process took, with all that it started. */
export interface Usage {
  /** Seconds by the clock on the wall. */
  readonly wall: number;
  /** Seconds of all cores, user and system. */
  readonly cpu: number;
  /** Most memory at once in MB; where it started processes of its own, the sum of the most of each. */
  readonly memory: number;
}

const usageScript = resolve(import.meta.dirname, 'usage.cjs');

/** Runs Node with arguments in a folder; an exit code other than 0 is an error with what was printed. */
export async function measured(
  args: readonly string[],
  cwd: string,
  env: Readonly<Record<string, string>> = {},
): Promise<Usage> {
  const report = join(tmpdir(), `baybook-bench-usage-${process.pid}`);
  await rm(report, { force: true });
  const start = process.hrtime.bigint();
  await finished(args, cwd, { ...env, BENCH_USAGE: report, NODE_OPTIONS: `--require ${usageScript}` });
  const wall = Number(process.hrtime.bigint() - start) / 1e9;
  const used: readonly { readonly cpu: number; readonly maxRSS: number }[] = (await readFile(report, 'utf8'))
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  await rm(report);
  return {
    wall,
    cpu: used.reduce((sum, { cpu }) => sum + cpu, 0),
    // Node gives kilobytes of 1024 bytes.
    memory: used.reduce((sum, { maxRSS }) => sum + (maxRSS * 1024) / 1e6, 0),
  };
}

/** The same by the clock alone, with nothing loaded into the process: for what takes a twentieth of a second. */
export async function timed(args: readonly string[], cwd: string): Promise<number> {
  const start = process.hrtime.bigint();
  await finished(args, cwd, {});
  return Number(process.hrtime.bigint() - start) / 1e9;
}

function finished(
  args: readonly string[],
  cwd: string,
  env: Readonly<Record<string, string>>,
): Promise<void> {
  const child = spawn(process.execPath, args, { cwd, env: { ...process.env, ...env } });
  let said = '';
  for (const stream of [child.stdout, child.stderr]) {
    stream.on('data', (chunk: Buffer) => {
      said += chunk;
    });
  }
  return new Promise((resolve, reject) => {
    child.on('error', reject);
    child.on('close', (code) => {
      if (code === 0) resolve();
      else reject(new Error(`${args.join(' ')} ended with ${code}:\n${said.slice(-2000)}`));
    });
  });
}

/** The middle, the least and the most of some values. */
export interface Spread {
  readonly median: number;
  readonly least: number;
  readonly most: number;
}

/** The median of an even number of values is the mean of the two in the middle. */
export function spread(values: readonly number[]): Spread {
  const sorted = values.toSorted((a, b) => a - b);
  const at = (index: number) => sorted[index] ?? Number.NaN;
  const half = (sorted.length - 1) / 2;
  return {
    median: (at(Math.floor(half)) + at(Math.ceil(half))) / 2,
    least: at(0),
    most: at(sorted.length - 1),
  };
}
