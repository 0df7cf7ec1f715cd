import type { ElementContent } from 'hast';
import type { RuleExample } from '../diagnostics/rule-card.ts';
import type { Markup } from '../html/markup.ts';
import { stringify } from '../html/stringify.ts';
import { oncePer } from '../job/once.ts';
import { frameOf, type PageContext } from '../pages/frame/context.ts';
import { handbookFolder } from '../pages/frame/reference-paths.ts';
import type { FrameView, LinkView } from '../pages/frame/shared-views.ts';
import { ruleCards } from '../shop/index.ts';
import { type Chapter, chapterBody } from './chapters.ts';
import { directiveEntries, firstEntries } from './directive-entries.ts';
import { excerptLines, firstSentence, type HandbookEntry } from './entry.ts';
import { fileEntries } from './file-entries.ts';
import { wants } from './wants.ts';

/** A page of the handbook. */
export interface HandbookView {
  readonly frame: FrameView;
  readonly title: string;
  /** Back to the first page; `null` on that one. */
  readonly up: LinkView | null;
  /** What stands below the title, before all else. */
  readonly body: Markup | null;
  readonly wants: readonly { readonly want: string; readonly links: readonly WordLink[] }[];
  readonly entries: readonly EntryView[];
  readonly rules: readonly RuleView[];
}

/** A word with what is told of it. */
interface WordLink extends LinkView {
  readonly told: Markup;
}

interface EntryView {
  readonly id: string;
  readonly title: string;
  readonly lead: Markup;
  readonly rows: readonly {
    readonly name: string;
    readonly expects: Markup;
    readonly means: Markup;
    readonly needed: boolean;
  }[];
  readonly example: readonly ExampleFile[];
}

interface RuleView {
  readonly id: string;
  readonly title: string;
  readonly severity: string;
  readonly why: Markup;
  readonly bad: readonly ExampleFile[];
  readonly good: readonly ExampleFile[];
}

/** A file of an example; without a path it is a part of a guide. */
interface ExampleFile {
  readonly path: string | null;
  readonly text: string;
}

/** The pages of the handbook, by path from the site's root. */
export function handbookPages(
  chapters: readonly Chapter[],
  page: PageContext,
): ReadonlyMap<string, HandbookView> {
  const view = (title: string, own: Partial<HandbookView>): HandbookView => ({
    frame: frameOf(page, { title, styles: [`${page.root}assets/reference.css`] }),
    title,
    up: { text: 'Handbook', href: 'index.html' },
    body: null,
    wants: [],
    entries: [],
    rules: [],
    ...own,
  });
  const own = chapters.map(
    (chapter) => [`${chapter.name}.html`, view(chapter.title, { body: chapterBody(chapter) })] as const,
  );
  const pages = new Map([
    ['index.html', view('Handbook', { up: null, body: words(opening), wants: wantViews(chapters) })],
    ...own,
    ['directives.html', view('Everything that a guide may say', { entries: entryViews(directiveEntries) })],
    ['files.html', view('The files of a workspace', { entries: entryViews(fileEntries) })],
    ['rules.html', view('What a check finds', { rules: ruleViews(ruleCards) })],
  ]);
  return new Map([...pages].map(([name, made]) => [handbookFolder + name, made]));
}

const opening =
  'For whoever writes guides. `baybook explain` says the same at a terminal, for any word that stands here.';

function wantViews(chapters: readonly Chapter[]): HandbookView['wants'] {
  const link = (name: string, told: string, href: string) => ({ text: name, href, told: words(told) });
  const linkOf = (name: string): WordLink => {
    const chapter = chapters.find((one) => one.name === name);
    if (chapter) return link(name, chapter.title, `${name}.html`);
    const file = fileEntries.find((one) => one.name === name);
    if (file) return link(name, firstSentence(file.lead), `files.html#${file.id}`);
    const entry = firstEntries.get(name);
    if (!entry) throw new Error(`the handbook leads to "${name}", which it does not have`);
    return link(name, firstSentence(entry.lead), `directives.html#${entry.id}`);
  };
  const rules = link('rules', `All ${ruleCards.length} rules; each finding names its own`, 'rules.html');
  return [
    ...wants.map(({ want, names }) => ({ want, links: names.map(linkOf) })),
    { want: 'Understand a finding', links: [rules] },
  ];
}

/** The same for every shop, and some hundred: made once. */
const entryViews = oncePer((entries: readonly HandbookEntry[]) => entries.map(entryView));
const ruleViews = oncePer((cards: typeof ruleCards) => cards.map(ruleView));

function entryView({ id, title, lead, rows, example }: HandbookEntry): EntryView {
  return {
    id,
    title,
    lead: words(lead),
    rows: rows.map((row) => ({ ...row, expects: words(row.expects), means: words(row.means) })),
    example: filesOf(example),
  };
}

function ruleView({ code, title, severity, why, bad, good }: (typeof ruleCards)[number]): RuleView {
  return { id: code, title, severity, why: words(why), bad: filesOf(bad), good: filesOf(good) };
}

/** The files of an example; one that is not there on purpose says so. */
function filesOf(example: RuleExample): readonly ExampleFile[] {
  const shown = (text: string) => excerptLines(text).join('\n');
  if (typeof example === 'string') return example === '' ? [] : [{ path: null, text: shown(example) }];
  return Object.entries(example).map(([path, text]) => ({
    path: text === '' ? `no ${path}` : path,
    text: shown(text),
  }));
}

/** Text in which what an author types stands in backticks. */
function words(text: string): Markup {
  const nodes = text.split('`').map((part, index): ElementContent => {
    const value: ElementContent = { type: 'text', value: part };
    return index % 2 === 0 ? value : { type: 'element', tagName: 'code', properties: {}, children: [value] };
  });
  return stringify(nodes);
}
