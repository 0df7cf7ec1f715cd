import { expect, it } from 'vitest';
import { collector } from '../../src/diagnostics/report.ts';
import { discover } from '../../src/shop/discover.ts';

/** What is told of a workspace of these files. */
function told(...paths: readonly string[]): readonly string[] {
  const { findings, report } = collector();
  discover(['example/guide.md', ...paths], report);
  return findings.map(({ code, at }) => `${code} ${at.file}`);
}

// That these are one file: NTFS and APFS as they are set up by their makers.
it.each([
  [['example/A.jpg', 'example/a.jpg'], ['names-alike example/a.jpg']],
  [['platforms/Van.md', 'platforms/van.md'], ['names-alike platforms/van.md']],
  // e with an acute accent, as one character and as two.
  [['example/caf\u00e9.txt', 'example/cafe\u0301.txt'], ['names-alike example/cafe\u0301.txt']],
  [['x/Sheets/a.txt', 'x/Sheets/b.txt', 'x/sheets/a.txt', 'x/sheets/b.txt'], ['names-alike x/sheets/a.txt']],
  [['Example/guide.md', 'Example/a.jpg'], ['guide-misplaced Example/guide.md']],
  [['example/a.jpg', 'example/b.jpg', 'other/a.jpg'], []],
])('%j is told of once', (paths, wanted) => {
  expect(told(...paths)).toEqual(wanted);
});
