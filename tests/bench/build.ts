import { mkdir, mkdtemp, rm, writeFile } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import rehypeStringify from 'rehype-stringify';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { buildSite } from '../../src/site/build-site.ts';
import { generatedWorkspace } from './generated-guides.ts';

/**
 * How long a build of 200 generated guides takes, against the bare pipeline on the same text (Markdown with
 * directives to HTML, nothing checked, computed or written), and the most memory that it held.
 *
 *   npx tsx tests/bench/build.ts [guides]
 */
const guides = Number(process.argv[2] ?? 200);
const workspace = generatedWorkspace(guides);
const texts = Object.entries(workspace).flatMap(([path, text]) => (path.endsWith('guide.md') ? [text] : []));
const folder = await mkdtemp(join(tmpdir(), 'baybook-bench-'));

try {
  for (const [path, text] of Object.entries(workspace)) {
    const full = join(folder, 'guides', path);
    await mkdir(dirname(full), { recursive: true });
    await writeFile(full, text);
  }
  const files = diskFiles(join(folder, 'guides'));
  let checked = 0;
  const built = await seconds(async () => {
    const start = process.hrtime.bigint();
    const inspection = await inspect(files);
    checked = since(start);
    const faults = inspection.findings.map(({ code, at }) => `${at.file} ${code}`);
    if (faults.length > 0)
      throw new Error(`the generated guides have faults: ${faults.slice(0, 3).join(', ')}`);
    const outcome = await buildSite(inspection, files, join(folder, 'site'));
    if (!outcome.ok) throw new Error(outcome.problems.join(', '));
  });
  // In kilobytes on Linux and macOS; taken before the bare pipeline adds its own.
  const peak = process.resourceUsage().maxRSS / 1024;
  const bare = await seconds(async () => {
    const pipeline = unified()
      .use(remarkParse)
      .use(remarkFrontmatter)
      .use(remarkDirective)
      .use(remarkRehype)
      .use(rehypeStringify);
    for (const text of texts) String(await pipeline.process(text));
  });
  const size = texts.reduce((sum, text) => sum + text.length, 0) / 1000;
  console.log(`${guides} guides, ${size.toFixed(0)} kB of text`);
  console.log(`bare pipeline     ${bare.toFixed(2)} s`);
  console.log(
    `read and checked  ${checked.toFixed(2)} s, ${(checked / bare).toFixed(1)} times the bare pipeline`,
  );
  console.log(
    `built             ${built.toFixed(2)} s, ${(built / bare).toFixed(1)} times the bare pipeline`,
  );
  console.log(`peak memory       ${peak.toFixed(0)} MB`);
} finally {
  await rm(folder, { recursive: true, force: true });
}

async function seconds(work: () => Promise<void>): Promise<number> {
  const start = process.hrtime.bigint();
  await work();
  return since(start);
}

function since(start: bigint): number {
  return Number(process.hrtime.bigint() - start) / 1e9;
}
