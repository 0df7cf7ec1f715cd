import rehypeStringify from 'rehype-stringify';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';
import { pageUnderPen, siteUnderPen } from '../../src/preview/site-under-pen.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { memoryFiles } from '../../src/shop/files/memory-files.ts';
import type { WorkspaceFiles } from '../../src/shop/files/workspace-files.ts';
import { memoryStore } from '../../src/store/store.ts';
import { corpus } from './corpus.ts';
import { spread } from './measure.ts';

/**
 * How long a save takes until the preview has the new page: our own work, without the watcher and the browser, and
 * as a ratio to the bare pipeline on that one guide. CPU counts this process alone, so that others do not disturb.
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
await site.file(pageUnderPen(`${id}/guide.md`));

const pipeline = unified()
  .use(remarkParse)
  .use(remarkFrontmatter)
  .use(remarkGfm)
  .use(remarkDirective)
  .use(remarkRehype)
  .use(rehypeStringify)
  .freeze();

const [own, bare]: [Spent[], Spent[]] = [[], []];
for (let edit = 1; edit <= edits; edit += 1) {
  const text = first.replace(/(\n::step\[[^\n]*\n\n)/, `$1Save number ${edit} is looked at. `);
  files.set(guide, text);
  now.files = memoryFiles(Object.fromEntries(files));
  own.push(await spent(() => site.changed([guide], false)));
  const page = Buffer.from((await site.file(pageUnderPen(`${id}/guide.md`))) ?? '').toString();
  if (!page.includes(`Save number ${edit}`)) throw new Error('the page does not show what was saved');
  bare.push(await spent(async () => pipeline.processSync(text)));
}
console.log(
  `${files.size} files, the last ${edits / 2} of ${edits} saves of ${guide}, milliseconds, median (worst)`,
);
console.log('                    wall          CPU');
const rows = [
  ['preview', own],
  ['bare pipeline', bare],
] as const;
for (const [name, spends] of rows) {
  const late = spends.slice(edits / 2);
  const [wall, cpu] = [late.map((one) => one.wall), late.map((one) => one.cpu)].map(spread);
  const words = [wall, cpu].map((one) => `${one?.median.toFixed(0)} (${one?.most.toFixed(0)})`.padStart(10));
  console.log(`${name.padEnd(14)}${words.join('   ')}`);
}
const ratio = (kind: keyof Spent) =>
  spread(own.slice(edits / 2).map((one) => one[kind])).median /
  spread(bare.slice(edits / 2).map((one) => one[kind])).median;
console.log(
  `${'ratio'.padEnd(14)}${[ratio('wall'), ratio('cpu')].map((one) => one.toFixed(1).padStart(10)).join('   ')}`,
);

/** Milliseconds of the clock, and of this process with its threads. */
interface Spent {
  readonly wall: number;
  readonly cpu: number;
}

async function spent(work: () => Promise<unknown>): Promise<Spent> {
  const before = process.cpuUsage();
  const start = performance.now();
  await work();
  const { user, system } = process.cpuUsage(before);
  return { wall: performance.now() - start, cpu: (user + system) / 1000 };
}

async function onDisk(root: string): Promise<ReadonlyMap<string, Uint8Array>> {
  const disk = diskFiles(root);
  return new Map([...(await disk.list()).files].map(([path]) => [path, disk.read(path) ?? new Uint8Array()]));
}
