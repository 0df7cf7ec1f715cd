import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { betweenRules, pageRules, rules } from '../../src/checks/index.ts';
import { renderText } from '../../src/diagnostics/render-text.ts';
import type { RuleCard, RuleExample } from '../../src/diagnostics/rule-card.ts';
import { inspect, memoryFiles, ruleCards } from '../../src/shop/index.ts';
import { readFonts } from '../../src/site/fonts.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { expectText } from '../expect-text.ts';

const fonts = readFonts();

async function inspected(example: RuleExample) {
  const { findings, sources } = await inspect(memoryFiles(exampleWorkspace(example)), noStore, await fonts);
  const text = renderText(findings, { sources, prefix: '' }, { colour: false, width: 100 });
  return { text, codes: findings.map(({ code }) => code) };
}

/** What no example can hold: a symbolic link, a file that this user may not open, a guide whose own errors are told too. */
const withoutExample = new Set(['link-refused', 'file-unreadable', 'visit-guide-faulty']);

describe.each(ruleCards.map((card): [string, RuleCard] => [card.code, card]))('%s', (code, card) => {
  it('is named and explained', () => {
    expect(code).toMatch(/^[a-z0-9]+(-[a-z0-9]+)+$/);
    expect(card.title).toMatch(/^[A-Z:].*[^.]$/);
    expect(card.why.length, 'letters of why it matters').toBeGreaterThan(40);
  });

  if (withoutExample.has(code)) return;

  it('finds the bad example, in these words', async () => {
    const { text, codes } = await inspected(card.bad);
    // One fault gives one finding, or several of one rule.
    expect([...new Set(codes)]).toEqual([code]);
    expectText(`${text}\n`, resolve(import.meta.dirname, 'expected', `${code}.txt`));
  });

  it('finds nothing in the good example', async () => {
    expect((await inspected(card.good)).text).toBe('');
  });
});

describe('rule files', () => {
  const all = [
    ...rules,
    ...pageRules,
    ...betweenRules.filter((rule) => !pageRules.some(({ card }) => card === rule.card)),
  ];
  const source = resolve(import.meta.dirname, '../../src/checks');
  const files = readdirSync(source, { recursive: true, encoding: 'utf8' });

  it('bear the name of their rule', () => {
    const names = files.map((file) => basename(file, '.ts'));
    const missing = all.map(({ card }) => card.code).filter((code) => !names.includes(code));
    expect(missing).toEqual([]);
  });

  it('are all listed', () => {
    const declared = files.flatMap((file) => {
      const text = file.endsWith('.ts') ? readFileSync(resolve(source, file), 'utf8') : '';
      return [...text.matchAll(/^ {2}code: '([^']+)'/gm)].map((match) => match[1]);
    });
    const listed = new Set<string | undefined>(all.map(({ card }) => card.code));
    expect(declared.filter((code) => !listed.has(code))).toEqual([]);
  });

  it('are unique by code across all rooms', () => {
    const codes = ruleCards.map(({ code }) => code);
    expect(codes.filter((code, index) => codes.indexOf(code) !== index)).toEqual([]);
  });

  it('have no expected text of a rule that is gone', () => {
    const folder = resolve(import.meta.dirname, 'expected');
    const kept = existsSync(folder) ? readdirSync(folder).map((file) => basename(file, '.txt')) : [];
    const codes = new Set(ruleCards.map(({ code }) => code));
    expect(kept.filter((code) => !codes.has(code))).toEqual([]);
  });
});
