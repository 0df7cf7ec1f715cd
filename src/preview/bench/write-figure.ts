import { type SourceFile, sourceFile } from '../../source/source-file.ts';
import {
  attributeText,
  type BenchFigure,
  figureAttributes,
  figureText,
  markText,
  quotable,
} from './figure-text.ts';
import { type PlacedFigure, readFigures } from './read-figures.ts';
import { type BenchEdit, behindPlace, placeGone, type TextWritten, unsound, withEdits } from './text-edit.ts';

/**
 * Writes a new figure behind a place of the text, with an empty line on each side, as an author would.
 *
 * @param after offset of a place that {@link readFigures} gave
 */
export function addFigure(source: SourceFile, figure: BenchFigure, after: number): TextWritten {
  const { figures, places, sound } = readFigures(source);
  if (!sound) return unsound;
  if (!places.some((place) => place.after === after)) return placeGone;
  const index = figures.filter(({ directive }) => directive.at.start < after).length;
  return written(source, [behindPlace(source, after, figureText(figure))], figure, index);
}

/** Writes a figure over one that stands in the text, and changes only what is other than there. */
export function changeFigure(source: SourceFile, figure: BenchFigure, index: number): TextWritten {
  const { figures, sound } = readFigures(source);
  const old = figures[index];
  if (!sound) return unsound;
  if (!old) return { ok: false, problem: 'the guide has changed; this picture is no longer in it' };
  return written(
    source,
    [...headEdits(source, old, figure), ...keyEdits(source, old, figure)],
    figure,
    index,
  );
}

/** What was written is read back: words that would be read as something else are refused, and nothing is lost. */
function written(
  source: SourceFile,
  edits: readonly BenchEdit[],
  figure: BenchFigure,
  index: number,
): TextWritten {
  if (edits.length === 0) return { ok: true, text: source.text };
  const text = withEdits(source, edits);
  const before = readFigures(source).figures;
  const { figures, sound } = readFigures(sourceFile(source.path, text));
  const back = figures[index];
  const others = (all: readonly PlacedFigure[], at: number) =>
    JSON.stringify(all.filter((_, place) => place !== at).map(bare));
  const isNew = figures.length > before.length;
  if (!sound || !back || JSON.stringify(bare(back)) !== JSON.stringify(bare(figure)))
    return { ok: false, problem: misread(back, figure) };
  if (others(figures, index) !== others(before, isNew ? -1 : index))
    return { ok: false, problem: 'these words would change other pictures of the guide' };
  return { ok: true, text };
}

function misread(back: PlacedFigure | undefined, figure: BenchFigure): string {
  const differing = back
    ? (['caption', ...figureAttributes] as const).find((name) => back[name] !== figure[name])
    : undefined;
  const what = differing === undefined ? 'a line of the key' : `"${figure[differing]}"`;
  return `${what} cannot be written so: the guide would read it as something else; take out brackets, colons and line ends`;
}

function bare({ src, caption, alt, shows, crop, blur, zoom, marks }: BenchFigure): BenchFigure {
  const key = marks.map(({ letter, at, text }) => ({ letter, at, text }));
  return { src, caption, alt, shows, crop, blur, zoom, marks: key };
}

function headEdits({ text }: SourceFile, old: PlacedFigure, figure: BenchFigure): readonly BenchEdit[] {
  const { directive } = old;
  const edits: BenchEdit[] = [];
  if (figure.caption !== old.caption)
    edits.push({ start: directive.labelAt.start, end: directive.labelAt.end, text: figure.caption });
  const added: string[] = [];
  for (const name of figureAttributes) {
    if (figure[name] === old[name]) continue;
    const there = directive.attributes.find((one) => one.name === name);
    if (!there) {
      added.push(` ${name}=${attributeText(figure[name])}`);
      continue;
    }
    const quote = /["']/.test(text.charAt(there.valueAt.end)) ? 1 : 0;
    const start = text.slice(0, there.nameAt.start).trimEnd().length;
    const end = there.valueAt.end + quote;
    if (figure[name] === '') edits.push({ start, end, text: '' });
    else if (quote === 1 && text.charAt(there.valueAt.end) === '"')
      edits.push({ start: there.valueAt.start, end: there.valueAt.end, text: quotable(figure[name]) });
    else edits.push({ start: there.valueAt.start - quote, end, text: attributeText(figure[name]) });
  }
  if (added.length > 0) {
    const brace = text.lastIndexOf('}', directive.openingAt.end);
    edits.push({ start: brace, end: brace, text: added.join('') });
  }
  return edits;
}

/** Lines of the key by their place: those that stay are changed where they differ, then lines go or come at the end. */
function keyEdits({ text }: SourceFile, old: PlacedFigure, { marks }: BenchFigure): readonly BenchEdit[] {
  const edits: BenchEdit[] = [];
  for (const [index, was] of old.marks.entries()) {
    const mark = marks[index];
    if (!mark) {
      const from = text.lastIndexOf('\n', was.line.start) + 1;
      const end = /^[ \t]*(?:\r\n|\n|\r)?/.exec(text.slice(was.line.end))?.[0].length ?? 0;
      edits.push({ start: from, end: was.line.end + end, text: '' });
      continue;
    }
    if (mark.letter !== was.letter)
      edits.push({ start: was.letterAt.start, end: was.letterAt.end, text: mark.letter });
    if (mark.at !== was.at)
      edits.push({ start: was.atAt.start, end: was.atAt.end, text: quotedAs(text, was.atAt, mark.at) });
    if (mark.text !== was.text)
      edits.push({
        start: was.textAt.start,
        end: was.textAt.end,
        text: mark.text === '' ? '' : ` ${mark.text}`,
      });
  }
  const more = marks.slice(old.marks.length).map(markText);
  if (more.length === 0) return edits;
  const last = old.marks.at(-1)?.line.end;
  if (last !== undefined) return [...edits, { start: last, end: last, text: `\n${more.join('\n')}` }];
  const opening = old.directive.openingAt.end;
  // What the figure says besides its key goes on in a paragraph of its own.
  const apart = old.directive.children.length > 0 ? '\n' : '';
  return [...edits, { start: opening, end: opening, text: `\n${more.join('\n')}${apart}` }];
}

/** A point holds a comma and percent signs: where it stood without quotes it gets them. */
function quotedAs(text: string, { start }: { readonly start: number }, value: string): string {
  return /["']/.test(text.charAt(start - 1)) ? value : `"${value}"`;
}
