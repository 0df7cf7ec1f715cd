import { directiveNames } from '../../guide/index.ts';
import { fillIn } from '../../shop/marked-places.ts';
import { type SourceFile, sourceFile } from '../../source/source-file.ts';
import { readMarkdown } from '../../syntax/read.ts';
import type { PanelReading } from './panel-points.ts';
import { readFigures } from './read-figures.ts';
import { behindPlace, placeGone, type TextWritten, unsound, withEdits } from './text-edit.ts';

/** What else is said of an outline that comes from a photograph. */
interface OutlineWords {
  /** The photograph, by its path from the guide. */
  readonly src: string;
  /** The part that is cut, by its id. */
  readonly panel: string;
  readonly face: 'outside' | 'inside';
  /** Both known lengths as they were typed. */
  readonly known: readonly [string, string];
}

/**
 * Writes the draft of a cut template behind a place of the text. It says that it comes from a photograph, and what is
 * still to be measured stands in marked places, so that nothing is published of it before.
 *
 * @param after offset of a place that {@link readFigures} gave
 */
export function addOutline(
  source: SourceFile,
  { points, facts }: PanelReading,
  { src, panel, face, known }: OutlineWords,
  after: number,
): TextWritten {
  const { places, sound } = readFigures(source);
  if (!sound) return unsound;
  if (!places.some((place) => place.after === after)) return placeGone;
  const told = `Drafted from the photograph ${src}, by ${known[0]} and ${known[1]} on it, and not measured: ${facts.join('; ')}.`;
  const block = [
    `<!-- ${told.replaceAll('--', '– –').replaceAll('>', '›').replace(/\s+/g, ' ')} -->`,
    '',
    `:::cut-template[${fillIn} what is cut, once it is measured on the panel]{#${freeId(source)} panel=${panel} face=${face}}`,
    `::datum[${fillIn} the upright line through the zero point, as it is found on the panel]{axis=vertical at="0 mm"}`,
    `::datum[${fillIn} the level line through the zero point, as it is found on the panel]{axis=horizontal at="0 mm"}`,
    `::outline{points="${points}" unit=mm}`,
    ':::',
  ].join('\n');
  const text = withEdits(source, [behindPlace(source, after, block)]);
  const back = templatesIn(sourceFile(source.path, text));
  return back === templatesIn(source) + 1
    ? { ok: true, text }
    : { ok: false, problem: 'an outline cannot stand there; choose another place' };
}

/** A name that no line of the guide has. */
function freeId({ text }: SourceFile): string {
  for (let again = 1; ; again += 1) {
    const id = again === 1 ? 'drafted-outline' : `drafted-outline-${again}`;
    if (!new RegExp(`#${id}(?![\\w-])`).test(text)) return id;
  }
}

function templatesIn(source: SourceFile): number {
  const { document } = readMarkdown(source, directiveNames, () => undefined);
  return document.nodes.filter((node) => node.type === 'directive' && node.name === 'cut-template').length;
}
