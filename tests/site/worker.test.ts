import { createHash } from 'node:crypto';
import { describe, expect, it } from 'vitest';
import { siteManifest } from '../../src/site/device/manifest.ts';
import { workerScript } from '../../src/site/device/worker.ts';
import { buildSite } from './build.ts';
import { files, filesBelow, inspection, outputFolder } from './workspace.ts';

const buildOf = (script: string) => /"build":"([0-9a-f]{64})"/.exec(script)?.[1];

describe('the worker of a site', () => {
  it('names every file of the site with its hash, but itself, and keeps all but the guides in one file', async () => {
    const folder = await outputFolder();
    await buildSite(inspection(), files(), folder);
    const site = new Map([...(await filesBelow(folder))].filter(([path]) => path !== '.baybook-files.json'));
    const [first = ''] = (site.get('worker.js') ?? '').split('\n');
    const build = JSON.parse(first.replace('globalThis.siteBuild=', '').replace(/;$/, ''));
    expect(Object.keys(build.asked)).toEqual(['guides/lamp-cradle/lamp-cradle.html']);
    const hashes = { ...build.kept, ...build.asked };
    expect(new Set([...Object.keys(hashes), 'worker.js'])).toEqual(new Set(site.keys()));
    for (const [path, hash] of Object.entries(hashes)) {
      const bytes = Buffer.from(site.get(path) ?? '', 'latin1');
      expect(createHash('sha256').update(bytes).digest('hex'), path).toBe(hash);
    }
  });

  it('has another build for another content or another name, and the same in any order', () => {
    const script = (...entries: [string, string][]) => buildOf(workerScript(new Map(entries), new Map(), ''));
    const one = script(['a', '1'], ['b', '2']);
    expect(script(['b', '2'], ['a', '1'])).toBe(one);
    expect(script(['a', '1'], ['b', '3'])).not.toBe(one);
    expect(script(['a', '1'], ['c', '2'])).not.toBe(one);
  });
});

describe('the manifest', () => {
  it('names the shop and only relative addresses', () => {
    const manifest = JSON.parse(siteManifest({ name: 'Quarrel Lane Fitting' }));
    expect(manifest.name).toBe('Install guides, Quarrel Lane Fitting');
    for (const address of [
      manifest.start_url,
      manifest.scope,
      ...manifest.icons.map((icon: { src: string }) => icon.src),
    ]) {
      expect(address).not.toMatch(/^\/|:/);
    }
  });
});
