import { writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { changedLines, sureMends, withMends } from '../../desk/sure-mends.ts';
import { printable } from '../../diagnostics/excerpt.ts';
import { sourcesOf } from '../../shop/files/sources-of.ts';
import { withTexts } from '../../shop/files/with-texts.ts';
import type { Checked } from '../../site/check-guides.ts';
import type { Work } from '../../site/work.ts';
import type { Io } from '../io.ts';

/** One mend can uncover what it hid; more than so many layers are a matter for a person. */
const ROUNDS = 5;

/**
 * Makes the edits that need no judgement. They are shown before a person is asked whether to write them; where nobody
 * can be asked they are only shown, unless `write` says otherwise.
 *
 * @param check what is checked after each round of edits
 */
export async function fixGuides(
  work: Work,
  { root, prefix, write }: { readonly root: string; readonly prefix: string; readonly write: boolean },
  check: (work: Work) => Promise<Checked>,
  io: Io,
): Promise<void> {
  const before = new Map<string, string>();
  const after = new Map<string, string>();
  for (let round = 0; round < ROUNDS; round += 1) {
    const files = withTexts(work.files, after);
    const { findings } = await check({ ...work, files });
    const sources = sourcesOf(findings, files);
    const mends = sureMends(findings, sources);
    if (mends.length === 0) break;
    for (const file of new Set(mends.map(({ at }) => at.file))) {
      const text = sources.get(file)?.text ?? '';
      if (!before.has(file)) before.set(file, text);
      after.set(
        file,
        withMends(
          text,
          mends.filter(({ at }) => at.file === file),
        ),
      );
    }
  }
  const shown = [...after].map(([path, text]) => changedLines(prefix + path, before.get(path) ?? '', text));
  if (shown.length === 0) {
    io.out('nothing can be mended without judgement\n\n');
    return;
  }
  io.out(`${printable(shown.join(''))}\n`);
  if (!write && !(await isWanted(io))) return;
  for (const [path, text] of after) {
    const [first, second, third] = work.files.read(path) ?? [];
    // A byte-order mark, which no text of ours holds, stays where it stood.
    const marked = first === 0xef && second === 0xbb && third === 0xbf;
    await writeFile(join(root, path), `${marked ? '\uFEFF' : ''}${text}`);
  }
  io.out(`mended ${[...after.keys()].map((path) => prefix + path).join(', ')}\n\n`);
}

async function isWanted({ ask, out }: Io): Promise<boolean> {
  if (ask) return /^y(?:es)?$/i.test((await ask('Write this? [y/N] ')).trim());
  out('nothing was written; --fix --yes writes it\n\n');
  return false;
}
