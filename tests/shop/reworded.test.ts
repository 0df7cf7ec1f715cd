import { createHash } from 'node:crypto';
import { readdir } from 'node:fs/promises';
import { join } from 'node:path';
import { afterEach, expect, it, vi } from 'vitest';
import type { RuleExample } from '../../src/diagnostics/rule-card.ts';
import { diskFiles, inspect, memoryFiles, ruleCards, type WorkspaceFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { repository } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { sampleOf } from '../samples.ts';

/**
 * Between rooms go facts: with every message and note of ours put into other words, what is found, where it is
 * found and how it could be mended stay the same.
 */
const told = vi.hoisted(() => ({ otherwise: false }));

vi.mock('../../src/diagnostics/rule-card.ts', async (original) => {
  const real = await original<typeof import('../../src/diagnostics/rule-card.ts')>();
  // Equal texts stay equal, as they would in another language.
  const nonsense = (text: string) => createHash('sha256').update(text).digest('hex').slice(0, 12);
  const finding: typeof real.finding = (...args) => {
    const found = real.finding(...args);
    if (!told.otherwise) return found;
    const notes = found.notes.map((note) => ({ ...note, message: nonsense(note.message) }));
    return { ...found, message: nonsense(found.message), notes };
  };
  return { ...real, finding };
});

afterEach(() => {
  told.otherwise = false;
});

async function facts(files: WorkspaceFiles) {
  const { findings } = await inspect(files, noStore);
  return findings.map(({ code, severity, at, notes, suggestion }) => ({
    code,
    severity,
    at,
    notes: notes.map((note) => note.at),
    suggestion,
  }));
}

async function staysTheSame(name: string, files: WorkspaceFiles): Promise<number> {
  told.otherwise = false;
  const before = await facts(files);
  told.otherwise = true;
  expect(await facts(files), name).toEqual(before);
  return before.length;
}

const casesFolder = join(repository, 'tests/cases');
const cases = (await readdir(casesFolder, { withFileTypes: true })).filter((entry) => entry.isDirectory());

it.each(sampleOf(cases, 8).map(({ name }) => name))(
  'the case %s is found the same in other words',
  async (name) => {
    await staysTheSame(name, diskFiles(join(casesFolder, name)));
  },
);

it('every rule’s bad example is found the same in other words', async () => {
  let found = 0;
  for (const { code, bad } of sampleOf(ruleCards, 80)) found += await staysTheSame(code, filesOf(bad));
  expect(found).toBeGreaterThan(60);
});

it('a fault of which another could follow is told of alone, whatever the words', async () => {
  told.otherwise = true;
  for (const broken of ['when="fog and"', 'wenn=fog', 'when', '']) {
    const words = broken === '' ? ':where[Look behind.]' : `:where[Look behind.]{${broken}}`;
    const body = `::step[Look]{#look}\n\n${words}\n`;
    expect(
      (await facts(filesOf(body))).map(({ code }) => code.split('-')[0]),
      broken,
    ).toEqual(['attribute']);
  }
});

function filesOf(example: RuleExample): WorkspaceFiles {
  return memoryFiles(exampleWorkspace(example));
}
