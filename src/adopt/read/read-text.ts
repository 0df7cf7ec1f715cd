import { isSignal, knownHeading, markerOf } from '../words.ts';
import { type OldBlock, type OldGuide, plainSpaces } from './old-guide.ts';

/** A line as long as this was most likely broken for its length. */
const broken = 60;

/** Reads plain text by its lines: an underlined one is a heading, and a paragraph ends where its lines do. */
export function readPlainText(text: string): OldGuide {
  const lines = text.split(/\r\n|\n|\r/);
  const blocks: OldBlock[] = [];
  let words = '';
  let first = 0;
  const close = () => {
    if (words !== '')
      blocks.push({
        kind: 'paragraph',
        text: plainSpaces(words),
        lead: '',
        inItem: false,
        place: `line ${first + 1}`,
      });
    words = '';
  };
  for (const [index, line] of lines.entries()) {
    if (line.trim() === '') close();
    else if (isRule(line)) {
      const last = words === '' ? undefined : plainSpaces(words);
      words = '';
      if (last !== undefined && index - first === 1)
        blocks.push({ kind: 'heading', text: last, place: `line ${first + 1}` });
      else if (last !== undefined)
        blocks.push({ kind: 'paragraph', text: last, lead: '', inItem: false, place: `line ${first + 1}` });
    } else if (goesOn(words, lines[index - 1] ?? '', line)) words += ` ${line}`;
    else {
      close();
      words = line;
      first = index;
    }
  }
  close();
  return { title: '', blocks };
}

function isRule(line: string): boolean {
  return /^\s*([=\-~_*#])\1{2,}\s*$/.test(line);
}

/** Whether a line belongs to the paragraph that the line before it began or carried on. */
function goesOn(words: string, before: string, line: string): boolean {
  if (words === '' || markerOf(line) || isSignal(line) || knownHeading(line)) return false;
  const indented = /^\s*/.exec(line)?.[0].length ?? 0;
  const indentedBefore = /^\s*/.exec(before)?.[0].length ?? 0;
  if (/^\s*\p{Ll}/u.test(line) || indented > indentedBefore) return true;
  return before.trimEnd().length >= broken && !/[.:!?]\s*$/.test(before);
}
