import { expect, it } from 'vitest';
import type { Finding } from '../../src/diagnostics/finding.ts';
import { renderJson } from '../../src/diagnostics/render-json.ts';
import { renderSarif } from '../../src/diagnostics/render-sarif.ts';
import { summaryLine } from '../../src/diagnostics/summary.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { wholeFile } from '../../src/source/span.ts';

const source = sourceFile('a b/guide.md', 'one\ntwo\n');
const context = { sources: new Map([[source.path, source]]), prefix: '' };
const two = { file: source.path, start: 4, end: 7 };
const findings: Finding[] = [
  {
    code: 'x-wrong',
    severity: 'error',
    message: 'it is wrong',
    at: two,
    notes: [{ message: 'first here', at: { ...two, start: 0, end: 3 } }, { message: 'did you mean "ten"?' }],
    suggestion: { at: two, text: 'ten' },
  },
  { code: 'y-missing', severity: 'warning', message: 'gone', at: wholeFile('p.jpg'), notes: [] },
];

const done = ['Read from opening.dxf: 1 outline, 92 × 46 mm overall'];
const template = { file: 'a b/guide.md', id: 'opening', title: 'Opening', done };

it('prints JSON of the documented shape', () => {
  expect(JSON.parse(renderJson(findings, 3, [template], context))).toEqual({
    version: 1,
    guides: 3,
    errors: 1,
    warnings: 1,
    templates: [template],
    findings: [
      {
        code: 'x-wrong',
        severity: 'error',
        message: 'it is wrong',
        at: {
          file: 'a b/guide.md',
          start: { offset: 4, line: 2, column: 1 },
          end: { offset: 7, line: 2, column: 4 },
        },
        notes: [
          {
            message: 'first here',
            at: {
              file: 'a b/guide.md',
              start: { offset: 0, line: 1, column: 1 },
              end: { offset: 3, line: 1, column: 4 },
            },
          },
          { message: 'did you mean "ten"?', at: null },
        ],
        suggestion: {
          at: {
            file: 'a b/guide.md',
            start: { offset: 4, line: 2, column: 1 },
            end: { offset: 7, line: 2, column: 4 },
          },
          text: 'ten',
        },
      },
      {
        code: 'y-missing',
        severity: 'warning',
        message: 'gone',
        at: { file: 'p.jpg', start: null, end: null },
        notes: [],
        suggestion: null,
      },
    ],
  });
});

// Names and nesting after SARIF 2.1.0, sections 3.13 (log), 3.14 (run), 3.27 (result), 3.30 (region), 3.55 (fix).
it('prints a SARIF 2.1.0 log', () => {
  const card = {
    code: 'x-wrong',
    severity: 'error',
    title: 'Wrong',
    why: 'Because.',
    bad: '',
    good: '',
  } as const;
  const log = JSON.parse(renderSarif(findings, [card, { ...card, code: 'unused' }], context, '0.1.0'));
  expect(log.version).toBe('2.1.0');
  expect(log.runs[0].columnKind).toBe('utf16CodeUnits');
  expect(log.runs[0].tool.driver).toEqual({
    name: 'Baybook',
    semanticVersion: '0.1.0',
    rules: [
      {
        id: 'x-wrong',
        shortDescription: { text: 'Wrong' },
        fullDescription: { text: 'Because.' },
        defaultConfiguration: { level: 'error' },
      },
    ],
  });
  const region = { startLine: 2, startColumn: 1, endLine: 2, endColumn: 4 };
  const artifactLocation = { uri: 'a%20b/guide.md' };
  expect(log.runs[0].results).toEqual([
    {
      ruleId: 'x-wrong',
      ruleIndex: 0,
      level: 'error',
      message: { text: 'it is wrong\ndid you mean "ten"?' },
      locations: [{ physicalLocation: { artifactLocation, region } }],
      relatedLocations: [
        {
          id: 0,
          message: { text: 'first here' },
          physicalLocation: {
            artifactLocation,
            region: { startLine: 1, startColumn: 1, endLine: 1, endColumn: 4 },
          },
        },
      ],
      fixes: [
        {
          description: { text: 'write ten' },
          artifactChanges: [
            { artifactLocation, replacements: [{ deletedRegion: region, insertedContent: { text: 'ten' } }] },
          ],
        },
      ],
    },
    {
      ruleId: 'y-missing',
      level: 'warning',
      message: { text: 'gone' },
      locations: [{ physicalLocation: { artifactLocation: { uri: 'p.jpg' } } }],
    },
  ]);
});

it('sums up in one line', () => {
  expect(summaryLine([], 1)).toBe('1 guide checked: no errors, no warnings');
  expect(summaryLine(findings, 4)).toBe('4 guides checked: 1 error, 1 warning');
});
