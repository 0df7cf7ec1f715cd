import { isUnsafeAddress } from '../../syntax/address.ts';
import { type OldBlock, type OldPicture, type OldPlace, plainSpaces } from './old-guide.ts';
import type { PageNode } from './page-tree.ts';

/** Finds a picture by the address that a page gives. */
export type PictureFinder = (address: string, alt: string) => OldPicture;

/** The title that a page gives itself, and its pieces in order. */
export function readPage(
  nodes: readonly PageNode[],
  findPicture: PictureFinder,
): { readonly title: string; readonly blocks: readonly OldBlock[] } {
  const reader = new PageReader(findPicture);
  reader.read(nodes);
  return { title: reader.title, blocks: reader.blocks };
}

/** What holds no words of a guide. */
const silent = new Set(['script', 'style', 'template', 'meta', 'link', 'base', 'colgroup']);
const embedded = new Set(['iframe', 'object', 'embed', 'video', 'audio', 'applet', 'canvas']);
const inline = new Set(
  'a abbr acronym b bdi bdo big cite code data del dfn em font i ins kbd label mark o:p q s samp small span strike strong sub sup time tt u var wbr'.split(
    ' ',
  ),
);
const strong = new Set(['b', 'strong']);

interface Run {
  readonly text: string;
  readonly strong: boolean;
}

/** Walks a page once and keeps what a guide can be made of. */
class PageReader {
  title = '';
  readonly blocks: OldBlock[] = [];
  readonly #findPicture: PictureFinder;
  #runs: Run[] = [];
  /** Pictures and asides of the paragraph at hand, which stand after it. */
  #after: OldBlock[] = [];
  /** The lists around, outermost first. */
  #lists: { readonly numbered: boolean }[] = [];
  /** Whether the next words are the first of an item. */
  #opensItem = false;
  #strong = 0;
  #paragraphs = 0;
  #tables = 0;
  #line = 0;

  constructor(findPicture: PictureFinder) {
    this.#findPicture = findPicture;
  }

  read(nodes: readonly PageNode[]): void {
    for (const node of nodes) this.#node(node);
    this.#flush();
  }

  #place(): OldPlace {
    return this.#line > 0 ? `line ${this.#line}` : `paragraph ${this.#paragraphs + 1}`;
  }

  #node(node: PageNode): void {
    const { tag } = node;
    if (tag === '') this.#words(node);
    else if (silent.has(tag)) return;
    else if (tag === 'title') this.title = plainSpaces(wordsOf(node));
    else if (tag === 'br') this.#runs.push({ text: '\n', strong: false });
    else if (tag === 'img') this.#picture(node);
    else if (embedded.has(tag)) this.#embedded(node);
    else if (tag === 'input') this.#field(node);
    else if (/^h[1-6]$/.test(tag)) this.#heading(node);
    else if (tag === 'ul' || tag === 'ol') this.#list(node);
    else if (tag === 'li') this.#item(node);
    else if (tag === 'table') this.#table(node);
    else if (inline.has(tag)) this.#inline(node);
    else this.#section(node);
  }

  #words({ text, line }: PageNode): void {
    if (this.#runs.length === 0 && line > 0 && text.trim() !== '')
      this.#line = line + (/^\s*/.exec(text)?.[0].split('\n').length ?? 1) - 1;
    this.#runs.push({ text: text.replace(/\s+/g, ' '), strong: this.#strong > 0 });
  }

  #section({ children }: PageNode): void {
    this.#flush();
    for (const child of children) this.#node(child);
    this.#flush();
  }

  #inline(node: PageNode): void {
    const href = node.attributes.get('href') ?? '';
    // A footnote's number and the way back from it: the footnote itself is told apart.
    if (node.tag === 'a' && /^#.*(?:foot|end)note/.test(href)) return;
    const bold = strong.has(node.tag) ? 1 : 0;
    this.#strong += bold;
    for (const child of node.children) this.#node(child);
    this.#strong -= bold;
    if (node.tag !== 'a' || href === '' || href.startsWith('#')) return;
    const words = plainSpaces(wordsOf(node));
    const where = isUnsafeAddress(href) ? 'a script' : href;
    this.#after.push({ kind: 'aside', text: `${words}: ${where}`, was: 'a link', place: this.#place() });
  }

  #heading(node: PageNode): void {
    this.#flush();
    for (const child of node.children) this.#node(child);
    const text = plainSpaces(
      this.#taken()
        .map((run) => run.text)
        .join(''),
    );
    if (text !== '') this.#push({ kind: 'heading', text, place: this.#place() });
    this.#pushAfter();
  }

  #list(node: PageNode): void {
    this.#flush();
    this.#lists.push({ numbered: node.tag === 'ol' });
    for (const child of node.children) this.#node(child);
    this.#flush();
    this.#lists.pop();
  }

  #item(node: PageNode): void {
    this.#flush();
    if (/(?:^|-)(?:fn|footnote|endnote)-/.test(node.attributes.get('id') ?? '')) {
      this.#push({
        kind: 'aside',
        text: plainSpaces(wordsOf(node).replaceAll(/[↑↩]\uFE0E?/g, '')),
        was: 'a footnote',
        place: this.#place(),
      });
      return;
    }
    this.#opensItem = true;
    for (const child of node.children) this.#node(child);
    this.#flush();
    this.#opensItem = false;
  }

  #table(node: PageNode): void {
    this.#flush();
    const rows = rowsOf(node);
    if (isLayout(rows)) {
      for (const row of rows) for (const cell of cellsOf(row)) this.#section(cell);
      return;
    }
    this.#tables += 1;
    const table = this.#tables;
    for (const row of rows) {
      const inner = cellsOf(row).map((cell) => this.#cell(cell));
      this.#line = row.line;
      if (inner.some((cell) => cell.text !== ''))
        this.#push({ kind: 'row', cells: inner.map(({ text }) => text), table, place: this.#place() });
      for (const { after } of inner) for (const block of after) this.#push(block);
    }
  }

  /** A cell as its paragraphs, and what stands after its row: its pictures and links. */
  #cell(cell: PageNode): { readonly text: string; readonly after: readonly OldBlock[] } {
    const reader = new PageReader(this.#findPicture);
    reader.read(cell.children);
    const texts: string[] = [];
    const after: OldBlock[] = [];
    for (const block of reader.blocks) {
      if (block.kind === 'picture' || block.kind === 'aside') after.push(block);
      else if (block.kind !== 'row') texts.push(block.text);
    }
    return { text: texts.join('\n'), after };
  }

  #picture({ attributes, line }: PageNode): void {
    this.#line = this.#runs.length === 0 && line > 0 ? line : this.#line;
    const picture = this.#findPicture(attributes.get('src') ?? '', plainSpaces(attributes.get('alt') ?? ''));
    this.#after.push({ kind: 'picture', picture, place: this.#place() });
  }

  #embedded(node: PageNode): void {
    const address = node.attributes.get('src') ?? node.attributes.get('data') ?? '';
    const text = plainSpaces(`${isUnsafeAddress(address) ? '' : address} ${wordsOf(node)}`);
    this.#after.push({ kind: 'aside', text, was: 'something embedded', place: this.#place() });
  }

  #field({ attributes }: PageNode): void {
    const text = plainSpaces(attributes.get('value') ?? attributes.get('placeholder') ?? '');
    if (attributes.get('type') !== 'hidden' && text !== '')
      this.#after.push({ kind: 'aside', text, was: 'a field to fill', place: this.#place() });
  }

  #taken(): readonly Run[] {
    const runs = this.#runs;
    this.#runs = [];
    return runs;
  }

  #push(block: OldBlock): void {
    this.#paragraphs += 1;
    this.blocks.push(block);
  }

  #pushAfter(): void {
    const after = this.#after;
    this.#after = [];
    for (const block of after) this.#push(block);
  }

  /** Ends the paragraph at hand. */
  #flush(): void {
    for (const runs of linesOf(this.#taken())) {
      const text = plainSpaces(runs.map((run) => run.text).join(''));
      if (text === '') continue;
      const place = this.#place();
      const list = this.#lists.at(-1);
      if (list && this.#opensItem) {
        this.#push({ kind: 'item', text, level: this.#lists.length - 1, numbered: list.numbered, place });
        this.#opensItem = false;
      } else this.#push({ kind: 'paragraph', text, lead: leadOf(runs), inItem: list !== undefined, place });
    }
    this.#pushAfter();
  }
}

/** The runs between line breaks; a line that goes on in small letters belongs to the one before. */
function linesOf(runs: readonly Run[]): readonly (readonly Run[])[] {
  const lines: Run[][] = [[]];
  for (const run of runs) {
    if (run.text === '\n') lines.push([]);
    else lines.at(-1)?.push(run);
  }
  return lines.reduce<Run[][]>((joined, line) => {
    const begins = line
      .map(({ text }) => text)
      .join('')
      .trimStart();
    const last = joined.at(-1);
    if (last && last.length > 0 && /^\p{Ll}/u.test(begins)) last.push({ text: ' ', strong: false }, ...line);
    else joined.push(line);
    return joined;
  }, []);
}

function leadOf(runs: readonly Run[]): string {
  const end = runs.findIndex((run) => !run.strong && run.text.trim() !== '');
  return plainSpaces(
    runs
      .slice(0, end < 0 ? undefined : end)
      .map(({ text }) => text)
      .join(''),
  );
}

/** All words within a node. */
function wordsOf(node: PageNode): string {
  return silent.has(node.tag) ? '' : node.text + node.children.map(wordsOf).join('');
}

function rowsOf(node: PageNode): readonly PageNode[] {
  return node.children.flatMap((child) =>
    child.tag === 'tr' || child.tag === 'caption' ? [child] : child.tag === 'table' ? [] : rowsOf(child),
  );
}

function cellsOf(row: PageNode): readonly PageNode[] {
  const cells = row.children.filter(({ tag }) => tag === 'td' || tag === 'th');
  return cells.length > 0 ? cells : [row];
}

/** A table that only places things on the page: one column, or whole chapters in its cells. */
function isLayout(rows: readonly PageNode[]): boolean {
  const cells = rows.flatMap(cellsOf);
  const holds = (node: PageNode, tags: ReadonlySet<string>): boolean =>
    node.children.some((child) => tags.has(child.tag) || holds(child, tags));
  return rows.every((row) => cellsOf(row).length < 2) || cells.some((cell) => holds(cell, chapters));
}

const chapters: ReadonlySet<string> = new Set(['table', 'h1', 'h2', 'h3', 'h4', 'h5', 'h6', 'ol']);
