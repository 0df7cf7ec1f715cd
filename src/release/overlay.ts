import { escapeXml, number } from '../cut/files/path-data.ts';
import { inNamesOf } from './compare/same-names.ts';
import type { GuideRecord, RecordOutline, TemplateNode } from './record.ts';
import { isRaised } from './revision.ts';

/** A drawing of an old and a new line to cut, one over the other. */
interface Overlay {
  /** The template, in the newer record's ids. */
  readonly template: string;
  readonly title: string;
  /** Without a folder. */
  readonly name: string;
  /** An SVG file in real millimetres. */
  readonly svg: string;
}

/** Room around the lines for what is written, mm. */
const MARGIN = 12;

/** Letters, mm: read at arm's length (ISO 3098 has 3.5 mm among its heights). */
const LETTERS = 3.5;

/**
 * The templates of two records whose lines to cut differ, each builds' drawing over its old one at full size: the line
 * as it was broken and thin, the line as it is whole and wide. Both are laid on their datums.
 */
export function overlays(before: GuideRecord, now: GuideRecord): readonly Overlay[] {
  const { old } = inNamesOf(before, now);
  return now.templates.flatMap((template) => {
    const was = old.templates.find(({ id }) => id === template.id);
    if (!was || was.fingerprint === template.fingerprint) return [];
    return pairsOf(was, template).map(([one, other], index, all) => {
      const part = all.length > 1 ? `-drawing-${index + 1}` : '';
      const title = [template.name, other.builds].filter((text) => text !== '').join(', ');
      return {
        template: template.id,
        title,
        name: `${template.id}${part}-since-${fileWord(before.revision)}.svg`,
        svg: draw(one, other, [
          title,
          `wide: ${edition(now, before)}`,
          `broken: revision ${before.revision}`,
        ]),
      };
    });
  });
}

/** Drawings for the same builds; where the builds are others, in their order. */
function pairsOf(was: TemplateNode, is: TemplateNode): readonly (readonly [RecordOutline, RecordOutline])[] {
  return is.outlines.flatMap((other, index) => {
    const one = was.outlines.find(({ builds }) => builds === other.builds) ?? was.outlines[index];
    return one && JSON.stringify(one) !== JSON.stringify(other) ? [[one, other] as const] : [];
  });
}

/** A text that has not been raised yet bears the old number. */
function edition({ revision }: GuideRecord, before: GuideRecord): string {
  return isRaised(before.revision, revision) ? `revision ${revision}` : 'the text as it stands';
}

function fileWord(revision: string): string {
  return revision.replace(/[^a-zA-Z0-9.-]/g, '-');
}

function draw(one: RecordOutline, other: RecordOutline, words: readonly string[]): string {
  const left = Math.min(one.box.left, other.box.left) - MARGIN;
  const top = Math.min(one.box.top, other.box.top) - MARGIN;
  const right = Math.max(...[one, other].map(({ box }) => box.left + box.width)) + MARGIN;
  const bottom = Math.max(...[one, other].map(({ box }) => box.top + box.height)) + MARGIN;
  const foot = bottom + (words.length + 2) * LETTERS * 1.5;
  const width = Math.max(right - left, 100 + 2 * MARGIN);
  const cuts = (outline: RecordOutline) => outline.cuts.map(({ path }) => path).join('');
  const datums = other.datums.map(({ axis, at }) =>
    axis === 'vertical'
      ? `M${number(at)} ${number(top)}V${number(bottom)}`
      : `M${number(left)} ${number(at)}H${number(left + width)}`,
  );
  const lines = words.map(
    (text, index) =>
      `<text x="${number(left + 2)}" y="${number(bottom + (index + 1) * LETTERS * 1.5)}">${escapeXml(text)}</text>`,
  );
  const bar = `M${number(left + 2)} ${number(foot - 3)}h100m-100 -1.5v3m100 -3v3`;
  return `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" width="${number(width)}mm" height="${number(foot - top)}mm" viewBox="${[left, top, width, foot - top].map(number).join(' ')}" fill="none" stroke="black">
<title>${escapeXml(words.join('; '))}</title>
<rect x="${number(left)}" y="${number(top)}" width="${number(width)}" height="${number(foot - top)}" fill="white" stroke="none"/>
<path id="datums" d="${datums.join('')}" stroke-width="0.18" stroke-dasharray="8 1.5 1.5 1.5"/>
<path id="before" d="${cuts(one)}" stroke-width="0.25" stroke-dasharray="4 2"/>
<path id="now" d="${cuts(other)}" stroke-width="0.7"/>
<g font-family="DejaVu Sans, sans-serif" font-size="${LETTERS}" fill="black" stroke="none">${lines.join('')}<text x="${number(left + 104)}" y="${number(foot - 2)}">100 mm</text></g>
<path id="length" d="${bar}" stroke-width="0.35"/>
</svg>
`;
}
