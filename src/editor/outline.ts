import { directiveNames } from '../guide/index.ts';
import type { SourceFile } from '../source/source-file.ts';
import type { Span } from '../source/span.ts';
import { readMarkdown } from '../syntax/read.ts';
import type { Document, DocumentNode } from '../syntax/tree.ts';

/** A section with its steps, or a step, by the place from its line to where the next begins. */
export interface OutlineEntry {
  readonly title: string;
  readonly kind: 'section' | 'step' | 'template';
  readonly at: Span;
  /** The line that opens it. */
  readonly opens: Span;
  readonly within: readonly OutlineEntry[];
}

/** The outline of a guide, a platform or a procedure: sections, and in each its steps and templates. */
export function outlineOf(source: SourceFile): readonly OutlineEntry[] {
  const { nodes } = documentOf(source);
  const heads = nodes.flatMap((node, index) => (node.type === 'heading' ? [{ node, index }] : []));
  const first = heads[0]?.index ?? nodes.length;
  const sections = heads.map(({ node, index }, position) => {
    const next = heads[position + 1];
    const end = next?.node.at.start ?? source.text.length;
    return {
      title: node.text || 'Section',
      kind: 'section' as const,
      at: { ...node.at, end },
      opens: node.at,
      within: stepsIn(nodes.slice(index + 1, next?.index ?? nodes.length), end),
    };
  });
  return [...stepsIn(nodes.slice(0, first), heads[0]?.node.at.start ?? source.text.length), ...sections];
}

function stepsIn(nodes: readonly DocumentNode[], end: number): readonly OutlineEntry[] {
  const opening = nodes.flatMap((node) =>
    node.type === 'directive' && (node.name === 'step' || node.name === 'cut-template') ? [node] : [],
  );
  return opening.map((node, index) => ({
    title: node.labelText || node.name,
    kind: node.name === 'step' ? 'step' : 'template',
    at: node.form === 'container' ? node.at : { ...node.at, end: opening[index + 1]?.at.start ?? end },
    opens: node.form === 'container' ? node.openingAt : node.at,
    within: [],
  }));
}

/** What can be folded: front matter, sections, steps, containers. */
export function foldsOf(source: SourceFile): readonly Span[] {
  const { frontMatter, nodes } = documentOf(source);
  const flat = (entries: readonly OutlineEntry[]): readonly Span[] =>
    entries.flatMap(({ at, within }) => [at, ...flat(within)]);
  const containers = nodes.flatMap((node) =>
    node.type === 'directive' && node.form === 'container' ? [node.at] : [],
  );
  return [...(frontMatter ? [frontMatter.at] : []), ...flat(outlineOf(source)), ...containers];
}

function documentOf(source: SourceFile): Document {
  return readMarkdown(source, directiveNames, () => undefined).document;
}
