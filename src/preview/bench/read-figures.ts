import { directiveNames } from '../../guide/index.ts';
import type { ProseElement } from '../../model/prose.ts';
import type { SourceFile } from '../../source/source-file.ts';
import type { Span } from '../../source/span.ts';
import { readMarkdown } from '../../syntax/read.ts';
import type { ContainerDirective, DocumentNode, TextDirective } from '../../syntax/tree.ts';
import type { BenchFigure, BenchMark } from './figure-text.ts';

/** A mark with its places in the text. */
interface PlacedBenchMark extends BenchMark {
  /** The whole line of the key, without its end. */
  readonly line: Span;
  /** The value of `at`. */
  readonly atAt: Span;
  readonly letterAt: Span;
  /** What follows the mark. */
  readonly textAt: Span;
}

/** A figure with its places in the text. */
export interface PlacedFigure extends BenchFigure {
  readonly directive: ContainerDirective;
  readonly marks: readonly PlacedBenchMark[];
  /** The step that it stands in, by its title; empty outside one. */
  readonly step: string;
  /** The thing whose own picture it shows, in the place of one beside the guide; empty for a picture of the guide. */
  readonly of: string;
}

/** A place behind which a picture can be put. */
export interface FigurePlace {
  /** Offset in the text. */
  readonly after: number;
  readonly step: string;
  /** How what stands before it begins. */
  readonly words: string;
}

/** What of a guide's text concerns its pictures. */
interface FiguresRead {
  readonly figures: readonly PlacedFigure[];
  readonly places: readonly FigurePlace[];
  /** Whether the text can be read well enough to be written to. */
  readonly sound: boolean;
}

/** The figures of a guide, and the places where others can stand, in the order of the text. */
export function readFigures(source: SourceFile): FiguresRead {
  const { document, sound } = readMarkdown(source, directiveNames, () => undefined);
  const figures: PlacedFigure[] = [];
  const places: FigurePlace[] = [];
  let step = '';
  for (const node of document.nodes) {
    if (node.type === 'heading') step = '';
    if (node.type === 'directive' && node.form === 'leaf' && node.name === 'step') step = node.labelText;
    if (step !== '') places.push({ after: node.at.end, step, words: beginning(node, source) });
    figures.push(...figuresIn(node, step, source));
  }
  return { figures, places, sound };
}

function beginning(node: DocumentNode, { text }: SourceFile): string {
  if (node.type === 'directive' && node.form === 'leaf') return '';
  const words = text.slice(node.at.start, node.at.end).replace(/\s+/g, ' ');
  return words.length > 60 ? `${words.slice(0, 57)}…` : words;
}

function figuresIn(node: DocumentNode, step: string, source: SourceFile): readonly PlacedFigure[] {
  if (node.type !== 'directive' || node.form !== 'container') return [];
  if (node.name !== 'figure') return node.children.flatMap((child) => figuresIn(child, step, source));
  const value = (name: string) => node.attributes.find((one) => one.name === name)?.value ?? '';
  return [
    {
      directive: node,
      src: value('src'),
      caption: source.text.slice(node.labelAt.start, node.labelAt.end),
      alt: value('alt'),
      shows: value('shows'),
      crop: value('crop'),
      blur: value('blur'),
      zoom: value('zoom'),
      marks: node.children.flatMap((child) => marksIn(child, source)),
      step,
      of: value('of'),
    },
  ];
}

function marksIn(node: DocumentNode, source: SourceFile): readonly PlacedBenchMark[] {
  if (node.type !== 'prose') return [];
  return node.content.flatMap((list) =>
    list.type === 'element' && list.tagName === 'ul'
      ? list.children.flatMap((item) => (item.type === 'element' ? markOf(item, source) : []))
      : [],
  );
}

function markOf(item: ProseElement<TextDirective>, { text, path }: SourceFile): readonly PlacedBenchMark[] {
  const content = item.children.flatMap((node) =>
    node.type === 'element' && node.tagName === 'p' ? node.children : [node],
  );
  const mark = content.find((node) => node.type !== 'text' || node.value.trim() !== '');
  if (mark?.type !== 'directive' || mark.name !== 'mark' || !item.at) return [];
  const at = mark.attributes.find(({ name }) => name === 'at');
  if (!at || at.value === null) return [];
  const behind = text.slice(mark.at.end, item.at.end);
  const textAt = { file: path, start: mark.at.end, end: mark.at.end + behind.trimEnd().length };
  return [
    {
      letter: mark.labelText,
      letterAt: mark.labelAt,
      at: at.value,
      atAt: at.valueAt,
      text: behind.trim(),
      textAt,
      line: { ...item.at, end: Math.max(textAt.end, mark.at.end) },
    },
  ];
}
