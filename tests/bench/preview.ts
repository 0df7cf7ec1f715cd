import rehypeStringify from 'rehype-stringify';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { pageOfGuide, siteUnderPen } from '../../src/preview/site-under-pen.ts';
import { diskFiles } from '../../src/shop/disk-files.ts';
import { memoryFiles } from '../../src/shop/memory-files.ts';
import type { WorkspaceFiles } from '../../src/shop/workspace-files.ts';
import { memoryStore } from '../../src/store/store.ts';
import { corpus } from './corpus.ts';
import { spread } from './measure.ts';

/**
 * How long a save takes until the preview has the new page: our own work in milliseconds of this process, without
 * the watcher and the browser, and as a ratio to the bare pipeline on that one guide.
 *
 *   npx tsx tests/bench/preview.ts                        the 100th of 1,000 made guides
 *   npx tsx tests/bench/preview.ts guides lamp-cradle     a guide of a workspace on disk
 */
const [folder, id = 'job-100'] = process.argv.slice(2);
const edits = 20;

const files = new Map<string, string | Uint8Array>(
  folder === undefined ? corpus(1000) : await onDisk(folder),
);
const guide = `${id}/guide.md`;
const first = String(files.get(guide));
const now: { files: WorkspaceFiles } = { files: memoryFiles(Object.fromEntries(files)) };
const alive: WorkspaceFiles = {
  list: () => now.files.list(),
  read: (path) => now.files.read(path),
  hash: (path) => now.files.hash(path),
};
const site = await siteUnderPen({ files: alive, store: memoryStore(), openCrew: async () => null }, 'bench');
await site.file(pageOfGuide(id));

const pipeline = unified()
  .use(remarkParse)
  .use(remarkFrontmatter)
  .use(remarkGfm)
  .use(remarkDirective)
  .use(remarkRehype)
  .use(rehypeStringify)
  .freeze();

const [own, bare]: [number[], number[]] = [[], []];
for (let edit = 1; edit <= edits; edit += 1) {
  const text = first.replace(/(\n::step\[[^\n]*\n\n)/, `$1Save number ${edit} is looked at. `);
  files.set(guide, text);
  now.files = memoryFiles(Object.fromEntries(files));
  own.push(await spent(() => site.changed([guide], false)));
  const page = Buffer.from((await site.file(pageOfGuide(id))) ?? '').toString();
  if (!page.includes(`Save number ${edit}`)) throw new Error('the page does not show what was saved');
  bare.push(await spent(async () => pipeline.processSync(text)));
}
const [pen, plain] = [spread(own.slice(edits / 2)), spread(bare.slice(edits / 2))];
console.log(`${files.size} files, the last ${edits / 2} of ${edits} saves of ${guide}, milliseconds of CPU`);
console.log(`preview        median ${pen.median.toFixed(0)}, worst ${pen.most.toFixed(0)}`);
console.log(`bare pipeline  median ${plain.median.toFixed(0)}, worst ${plain.most.toFixed(0)}`);
console.log(`ratio          ${(pen.median / plain.median).toFixed(1)}`);

/** Milliseconds of this process, so that other programs on the machine do not count. */
async function spent(work: () => Promise<unknown>): Promise<number> {
  const before = process.cpuUsage();
  await work();
  const { user, system } = process.cpuUsage(before);
  return (user + system) / 1000;
}

async function onDisk(root: string): Promise<ReadonlyMap<string, Uint8Array>> {
  const disk = diskFiles(root);
  return new Map([...(await disk.list()).files].map(([path]) => [path, disk.read(path) ?? new Uint8Array()]));
}
