import { execFileSync } from 'node:child_process';
import { resolve } from 'node:path';
import { gzipSync } from 'node:zlib';
import { describe, expect, it } from 'vitest';
import { browserScript } from '../../src/site/scripts.ts';

const top = resolve(import.meta.dirname, '../..');

describe('the scripts of the pages', () => {
  it('are classic scripts: from file:// no module runs', async () => {
    const script = await browserScript('guide');
    expect(script).not.toMatch(/^\s*(?:import|export)\b/m);
    expect(script.startsWith('"use strict"') || script.startsWith('(()=>{')).toBe(true);
  });

  it('are the same bytes from source as from the build, which calls esbuild by its command', async () => {
    const flags = ['--bundle', '--format=iife', '--target=es2022', '--minify', '--charset=utf8'];
    const command = resolve(top, 'node_modules/.bin/esbuild');
    const built = execFileSync(command, ['templates/scripts/guide.ts', ...flags], {
      cwd: top,
      encoding: 'utf8',
    });
    expect(await browserScript('guide')).toBe(built);
  });

  it('bring the judge of a rehearsal in a script of its own, under 40 kB compressed, and load it nowhere else', async () => {
    const script = await browserScript('rehearse');
    expect(gzipSync(script).length).toBeLessThan(40_000);
    expect(script).toContain('still-held');
    expect(await browserScript('guide')).not.toContain('still-held');
  });

  it('ask no other host for anything', async () => {
    const script = await browserScript('guide');
    expect(script).not.toMatch(/https?:|XMLHttpRequest|import\(/);
    // The one thing that is fetched is a PDF of this site, to correct its size; the page's policy allows no other host.
    expect(script.match(/fetch\(/g)).toHaveLength(1);
  });
});
