import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { bench, repository } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

/** Runs the program itself, as it was built. */
function program(cwd: string, args: readonly string[], read = true) {
  const child = spawn(process.execPath, [join(repository, 'dist/cli/main.js'), ...args], {
    cwd,
    env: { ...process.env, FORCE_COLOR: '1' },
  });
  const written = { out: '', err: '' };
  if (read)
    child.stdout.on('data', (chunk) => {
      written.out += chunk;
    });
  else child.stdout.destroy();
  child.stderr.on('data', (chunk) => {
    written.err += chunk;
  });
  return new Promise<{ code: number | null; out: string; err: string }>((done) => {
    child.on('close', (code) => done({ code, ...written }));
  });
}

const broken = exampleWorkspace('::step[Look around]{#look}\n\nLook with the :tool[lamp].\n');

it('answers as a program, without colours where nobody looks', async () => {
  const { folder } = await bench(broken);
  const { code, out, err } = await program(folder, ['check']);
  expect({ code, err }).toEqual({ code: 1, err: '' });
  expect(out).toContain('error tool-undeclared');
  expect(out).not.toContain('\u001b');
}, 240_000);

it('ends in peace where its reader has gone', async () => {
  const { folder } = await bench(broken);
  const { err } = await program(folder, ['explain'], false);
  expect(err).toBe('');
}, 240_000);
