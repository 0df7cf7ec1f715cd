#!/usr/bin/env node
import { availableParallelism, homedir } from 'node:os';
import { join } from 'node:path';
import { folderStore } from '../store/store.ts';
import { asker } from './ask.ts';
import { run } from './run.ts';

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
