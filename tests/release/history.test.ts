import { describe, expect, it } from 'vitest';
import { recordHash } from '../../src/release/record.ts';
import { releasedOnce } from '../../src/release/rules.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const [list, record] = ['example/releases.yaml', 'example/releases/2.json'] as const;

/** What is told of a guide that was released once, with some files other than they were: code, file, the text there, which is none where the whole file is meant. */
async function told(files: { readonly [path: string]: string }): Promise<readonly string[]> {
  const all = exampleWorkspace({ ...releasedOnce, ...files });
  const { findings } = await inspect(memoryFiles(all), noStore);
  return findings.map(({ code, at }) => {
    const text = (all[at.file] ?? '').slice(at.start, at.end).split('\n')[0];
    return `${code}, ${at.file}: ${text}`;
  });
}

/** Both sides of a merge, as version control leaves them, with the common state between where it shows that too. */
const merged = (ours: string, theirs: string, base = '') =>
  `<<<<<<< HEAD\n${ours}${base}=======\n${theirs}>>>>>>> spring\n`;

describe('what was released, after a merge', () => {
  it('is sound as it was written', async () => {
    expect(await told({})).toEqual([]);
  });

  it('is one finding at the mark, where a record holds both sides', async () => {
    const text = releasedOnce[record];
    for (const base of ['', `||||||| base\n${text}`]) {
      expect(await told({ [record]: merged(text, text.replace('M. Hart', 'A. Nother'), base) })).toEqual([
        `release-conflict, ${record}: <<<<<<< HEAD`,
      ]);
    }
    const inside = text.replace(/^.*M\. Hart.*$/m, (line) => merged(`${line}\n`, `${line}\n`).trimEnd());
    expect(await told({ [record]: inside })).toEqual([`release-conflict, ${record}: <<<<<<< HEAD`]);
    // The other side of it stands, and only a mark was left.
    expect(await told({ [record]: `${text}>>>>>>> spring\n` })).toEqual([
      `release-conflict, ${record}: >>>>>>> spring`,
    ]);
  });

  it('is a finding at each mark’s own file, where list and record both hold two sides', async () => {
    const entry = releasedOnce[list];
    const both = { [list]: merged(entry, entry), [record]: merged('{}\n', '{}\n') };
    expect(await told(both)).toEqual([`release-conflict, ${list}: <<<<<<< HEAD`]);
  });
});

describe('what was released by a later Baybook', () => {
  const later = '{"format": 7, "whatever": [1, 2]}\n';

  it('is told as that, whatever its entry says of it', async () => {
    const hash = /record: "([0-9a-f]{64})"/.exec(releasedOnce[list])?.[1] ?? '';
    const known = releasedOnce[list].replace(hash, recordHash(later));
    for (const entry of [releasedOnce[list], known]) {
      expect(await told({ [list]: entry, [record]: later })).toEqual([`release-format-newer, ${record}: `]);
    }
  });
});

describe('releases of a guide that is not there', () => {
  it('are one finding, whether their list is there or only a record', async () => {
    const entry = releasedOnce[list];
    expect(await told({ 'gone/releases.yaml': entry, 'gone/releases/2.json': '{}' })).toEqual([
      'release-guide-missing, gone/releases.yaml: ',
    ]);
    expect(await told({ 'gone/releases/2.json': '{}' })).toEqual([
      'release-guide-missing, gone/releases/2.json: ',
    ]);
  });
});
