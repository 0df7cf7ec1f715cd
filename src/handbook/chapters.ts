import type { ElementContent } from 'hast';
import { directiveNames } from '../guide/index.ts';
import type { Markup } from '../html/markup.ts';
import { proseToHtml } from '../html/prose.ts';
import { stringify } from '../html/stringify.ts';
import { sourceFile } from '../source/source-file.ts';
import { readMarkdown } from '../syntax/read.ts';
import type { DocumentNode, RawProse, TextDirective } from '../syntax/tree.ts';

/** A chapter of the handbook, written for people. */
export interface Chapter {
  readonly name: string;
  readonly title: string;
  /** Its Markdown, title included. */
  readonly text: string;
}

/** A chapter from its Markdown, which begins with its title. */
export function chapterOf(name: string, text: string): Chapter {
  const [, title] = /^# (.+)$/m.exec(text) ?? [];
  if (title === undefined) throw new Error(`the chapter ${name} has no title`);
  return { name, title, text };
}

/** What stands below the title of a chapter, as HTML; links to other chapters lead to their pages. */
export function chapterBody(chapter: Chapter): Markup {
  const known = bodies.get(chapter.text) ?? readBody(chapter);
  bodies.set(chapter.text, known);
  return known;
}

/** By the text of the chapter: a preview, and the tests, make one site after another with the same chapters. */
const bodies = new Map<string, Markup>();

function readBody({ name, text }: Chapter): Markup {
  const source = sourceFile(`${name}.md`, text);
  const { document } = readMarkdown(source, directiveNames, ({ message }) => {
    throw new Error(`the chapter ${name}: ${message}`);
  });
  return stringify(document.nodes.flatMap(nodeElements));
}

function nodeElements(node: DocumentNode): readonly ElementContent[] {
  if (node.type === 'prose') return elements(node.content);
  if (node.type !== 'heading') throw new Error(`a chapter holds no directive, but ${node.name} was found`);
  if (node.depth === 1) return [];
  return [{ type: 'element', tagName: `h${node.depth}`, properties: {}, children: elements(node.content) }];
}

function elements(content: RawProse): ElementContent[] {
  const nodes = proseToHtml(content, ({ name }: TextDirective) => {
    throw new Error(`a chapter holds no directive, but ${name} was found`);
  });
  return nodes.map(withPageLinks);
}

function withPageLinks(node: ElementContent): ElementContent {
  if (node.type !== 'element') return node;
  const { href } = node.properties;
  const own = typeof href === 'string' ? { href: href.replace(/^([a-z-]+)\.md$/, '$1.html') } : {};
  return {
    ...node,
    properties: { ...node.properties, ...own },
    children: node.children.map(withPageLinks),
  };
}
