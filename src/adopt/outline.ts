import type { SignalWord } from '../trade/signal-words.ts';
import { lettersOf, type OldBlock, type OldGuide, type OldPicture, type OldPlace } from './read/old-guide.ts';
import { SectionFiller } from './section-filler.ts';
import { tableRoles } from './table-roles.ts';
import {
  bareHeading,
  isInstruction,
  isSignal,
  knownHeading,
  markerOf,
  type SectionKind,
  sectionKind,
  withoutShouting,
} from './words.ts';

/** What stands in a section or a step, in order. */
export type OldPiece = { readonly place: OldPlace } & (
  | { readonly kind: 'text'; readonly text: string; readonly bullet: boolean }
  | { readonly kind: 'message'; readonly word: SignalWord; readonly text: string }
  | { readonly kind: 'note'; readonly text: string }
  /** A line of a list of things, with its count where a column tells it, and the words of the whole line. */
  | { readonly kind: 'entry'; readonly text: string; readonly count: string; readonly whole: string }
  /** What names the columns of a table. */
  | { readonly kind: 'columns'; readonly text: string }
  /** A torque or a time that a column of a table states for the step. */
  | { readonly kind: 'torque' | 'tool' | 'time'; readonly text: string }
  | { readonly kind: 'picture'; readonly picture: OldPicture; readonly caption: string }
  | { readonly kind: 'decide'; readonly what: string; readonly text: string }
);

/** A step: what the old guide headed it with, if anything, and what stands in it. */
export interface OldStep {
  readonly lead: string;
  readonly pieces: OldPiece[];
}

/** A section: what stands before its steps, and these. */
export interface OldSection {
  /** Empty for what stands before the first heading. */
  readonly title: string;
  readonly kind: SectionKind;
  readonly pieces: OldPiece[];
  readonly steps: OldStep[];
}

/** An old guide by its sections and steps. */
export interface Outline {
  readonly title: string;
  readonly sections: readonly OldSection[];
}

/** Finds the sections and steps of an old guide: by its headings and numbers, or else by what its sentences ask for. */
export function oldOutline({ title, blocks }: OldGuide): Outline {
  const clear = blocks.map(recognised);
  const named = titleIn(clear, title);
  const rest = clear.filter((block, index) => index !== named.index && !isRepeated(block, named.title));
  const chapters = chaptersOf(rest);
  const works = chapters.filter(({ kind, blocks: held }) => kind === 'work' && held.some(opensStep));
  return {
    title: withoutShouting(named.title),
    sections: chapters.map((chapter) => {
      // What stands before the first heading is work only where no later chapter is.
      const isWork =
        chapter.kind === 'work' && (chapter.title !== '' || works.every((one) => one === chapter));
      return sectionOf(chapter, isWork);
    }),
  };
}

/** A paragraph that is really a heading or an item of a list becomes one. */
function recognised(block: OldBlock): OldBlock {
  if (block.kind !== 'paragraph') return block;
  const { text, lead, place, inItem } = block;
  const allBold = lettersOf(lead) === lettersOf(text);
  const short = text.length <= 70 && !/[.,;!?]$/.test(text) && !isSignal(text);
  const loud = text === text.toUpperCase() && /\p{Lu}{3}.*\p{Lu}/u.test(text);
  if (short && !inItem && (allBold || loud || knownHeading(text))) return { kind: 'heading', text, place };
  const marker = markerOf(text);
  return marker ? { kind: 'item', text: marker.rest, level: 0, numbered: marker.numbered, place } : block;
}

/** The title: the first heading, or the first line where it is no sentence; else what the file calls itself. */
function titleIn(
  blocks: readonly OldBlock[],
  own: string,
): { readonly title: string; readonly index: number } {
  const index = blocks.findIndex(
    (block) => block.kind === 'heading' || block.kind === 'paragraph' || block.kind === 'item',
  );
  const first = blocks[index];
  const isTitle =
    (first?.kind === 'heading' && sectionKind(first.text) === 'work' && !knownHeading(first.text)) ||
    (first?.kind === 'paragraph' &&
      first.text.length <= 80 &&
      !/[.:;!?]$/.test(first.text) &&
      !isSignal(first.text));
  return isTitle && first ? { title: first.text, index } : { title: own, index: -1 };
}

function isRepeated(block: OldBlock, title: string): boolean {
  return block.kind === 'heading' && title !== '' && lettersOf(block.text) === lettersOf(title);
}

interface Chapter {
  readonly title: string;
  readonly kind: SectionKind;
  readonly blocks: OldBlock[];
}

function chaptersOf(blocks: readonly OldBlock[]): readonly Chapter[] {
  const chapters: Chapter[] = [{ title: '', kind: 'work', blocks: [] }];
  const open = (title: string, kind: SectionKind): Chapter => {
    const chapter: Chapter = { title, kind, blocks: [] };
    chapters.push(chapter);
    return chapter;
  };
  let chapter = chapters[0] as Chapter;
  for (const [index, block] of blocks.entries()) {
    if (block.kind === 'heading' && !markerOf(block.text)?.step && !isSignal(block.text)) {
      const title = withoutShouting(bareHeading(block.text));
      chapter = open(title, sectionKind(title));
    } else if (block.kind === 'row' && blocks[index - 1]?.kind !== 'row' && isPartsTable(block, blocks)) {
      // A table of parts stands by itself, whatever heading it was put under.
      if (chapter.kind !== 'kit') chapter = open('', 'kit');
      chapter.blocks.push(block);
    } else {
      const endsList =
        (chapter.title === '' && chapter.kind === 'kit' && block.kind !== 'row') ||
        (chapter.kind !== 'work' && block.kind === 'paragraph' && isSignal(block.text));
      if (endsList) chapter = open('', 'work');
      const list = inlineList(block);
      if (list) open(list.title, list.kind).blocks.push(...list.blocks);
      else chapter.blocks.push(block);
      if (list) chapter = open('', 'work');
    }
  }
  return chapters.filter(({ title, blocks: held }) => title !== '' || held.length > 0);
}

function isPartsTable(block: OldBlock & { readonly kind: 'row' }, blocks: readonly OldBlock[]): boolean {
  const rows = blocks.filter((one) => one.kind === 'row' && one.table === block.table) as (typeof block)[];
  const roles = tableRoles(rows.map(({ cells }) => cells));
  return roles.headed && roles.count >= 0 && roles.work < 0;
}

/** `Included: shelf (1), hinge (2)`: a list in one line with its own heading. */
function inlineList(block: OldBlock): Chapter | null {
  if (block.kind !== 'paragraph') return null;
  const [, head = '', list = ''] = /^([^:.]{3,40}):\s+(.+)$/s.exec(block.text) ?? [];
  const kind = head === '' || isSignal(head) ? 'work' : sectionKind(head);
  if (kind === 'work' || kind === 'prove') return null;
  return { title: bareHeading(head), kind, blocks: [{ ...block, text: list }] };
}

function opensStep(block: OldBlock): boolean {
  switch (block.kind) {
    case 'item':
      return block.level === 0 && (block.numbered || isInstruction(block.text));
    case 'paragraph':
      return !block.inItem && isInstruction(block.text);
    case 'heading':
      return markerOf(block.text)?.step === true;
    case 'row':
      return block.cells.some(isInstruction);
    default:
      return false;
  }
}

function sectionOf({ title, kind, blocks }: Chapter, isWork: boolean): OldSection {
  const section: OldSection = { title, kind, pieces: [], steps: [] };
  const filler = new SectionFiller(section, isWork, blocks);
  for (const block of blocks) filler.take(block);
  return section;
}
