import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import rehypeStringify from 'rehype-stringify';
import remarkDirective from 'remark-directive';
import remarkFrontmatter from 'remark-frontmatter';
import remarkGfm from 'remark-gfm';
import remarkParse from 'remark-parse';
import remarkRehype from 'remark-rehype';
import { unified } from 'unified';

/**
 * What a build is measured against: every Markdown file of a folder goes through the bare unified pipeline, with
 * front matter, full GFM and directives, to HTML that is written. Nothing is checked or computed.
 *
 *   node bare-pipeline.mjs <from> <to>
 */
const [from = '', to = ''] = process.argv.slice(2);
const pipeline = unified()
  .use(remarkParse)
  .use(remarkFrontmatter)
  .use(remarkGfm)
  .use(remarkDirective)
  .use(remarkRehype)
  .use(rehypeStringify)
  .freeze();
for (const path of readdirSync(from, { recursive: true, encoding: 'utf8' })) {
  if (!path.endsWith('.md')) continue;
  const html = pipeline.processSync(readFileSync(join(from, path), 'utf8'));
  const page = join(to, path.replace(/\.md$/, '.html'));
  mkdirSync(dirname(page), { recursive: true });
  writeFileSync(page, String(html));
}
