#!/usr/bin/env node
import { availableParallelism, homedir } from 'node:os';
import { join } from 'node:path';
import { setFlagsFromString } from 'node:v8';
import { folderStore } from '../store/store.ts';
import { asker } from './ask.ts';
import { run } from './run.ts';

// Most of what a run does it does for a moment only, and a quarter of its work was optimizing it under Node 20: its V8
// is to wait nine times as long as of itself (67,584 bytes of bytecode) before it does, and to write a fifth as much of
// what a function calls into it (of itself 920 bytes). Later ones compile such code in a cheaper way first.
if (process.versions.node.startsWith('20.')) {
  setFlagsFromString('--interrupt-budget=600000');
  setFlagsFromString('--max-inlined-bytecode-size-cumulative=200');
}

const { stdout, stderr } = process;

// A reader such as `head` may close the pipe early; that is no fault.
stdout.on('error', (error: NodeJS.ErrnoException) => {
  if (error.code !== 'EPIPE') throw error;
  process.exit(0);
});

process.exitCode = await run(process.argv.slice(2), {
  out: (text) => void stdout.write(text),
  err: (text) => void stderr.write(text),
  cwd: process.cwd(),
  width: stdout.columns ?? 100,
  colour: stdout.isTTY === true && !process.env.NO_COLOR && process.env.TERM !== 'dumb',
  watched: stderr.isTTY === true,
  ask: asker(process.stdin, stdout),
  threads: availableParallelism(),
  store: folderStore(
    join(process.env.XDG_CACHE_HOME || join(homedir(), '.cache'), 'baybook', 'store'),
    new Date(),
  ),
});
