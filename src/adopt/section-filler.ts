import type { SignalWord } from '../trade/signal-words.ts';
import type { OldPiece, OldSection } from './outline.ts';
import type { OldBlock, OldPlace } from './read/old-guide.ts';
import { type TableRoles, tableRoles } from './table-roles.ts';
import { isInstruction, markerOf, signalOf } from './words.ts';

/** Puts the blocks of a chapter where they belong: before its steps, or in one. */
export class SectionFiller {
  readonly #section: OldSection;
  readonly #isWork: boolean;
  readonly #blocks: readonly OldBlock[];
  /** Whether numbers, rows or headings say where steps begin; else the sentences do. */
  readonly #numbered: boolean;
  /** A signal word that stood alone: what follows is its message. */
  #waiting: SignalWord | 'note' | 'important' | null = null;

  constructor(section: OldSection, isWork: boolean, blocks: readonly OldBlock[]) {
    this.#section = section;
    this.#isWork = isWork;
    this.#blocks = blocks;
    this.#numbered = blocks.some(
      (block) =>
        (block.kind === 'item' && block.numbered && block.level === 0) ||
        (block.kind === 'heading' && markerOf(block.text)?.step) ||
        (block.kind === 'row' && this.#roles(block.table).work >= 0),
    );
  }

  take(block: OldBlock): void {
    const { place } = block;
    switch (block.kind) {
      case 'heading':
        this.#heading(block.text, place);
        break;
      case 'paragraph':
        this.#words({ ...block, begins: !this.#numbered && !block.inItem, bullet: false, numbered: false });
        break;
      case 'item': {
        const begins = block.level === 0 && (block.numbered || !this.#numbered);
        this.#words({ ...block, lead: '', begins, bullet: !block.numbered || block.level > 0 });
        break;
      }
      case 'row':
        this.#row(block.cells, block.table, place);
        break;
      case 'picture':
        this.#put({ kind: 'picture', picture: block.picture, caption: '', place });
        break;
      case 'aside': {
        const what = `whether it is still wanted: ${block.was} of the old guide`;
        this.#put({ kind: 'decide', what, text: block.text, place });
      }
    }
  }

  #roles(table: number) {
    const rows = this.#blocks.filter((one) => one.kind === 'row' && one.table === table);
    return tableRoles(rows.map((row) => (row.kind === 'row' ? row.cells : [])));
  }

  #heading(text: string, place: OldPlace): void {
    const signal = signalOf(text, text);
    if (signal) this.#signal(signal.word, signal.rest, place);
    else this.#section.steps.push({ lead: markerOf(text)?.rest ?? text, pieces: [] });
  }

  #put(piece: OldPiece): void {
    (this.#section.steps.at(-1)?.pieces ?? this.#section.pieces).push(piece);
  }

  #signal(word: SignalWord | 'note' | 'important', text: string, place: OldPlace): void {
    if (text.trim() === '') {
      this.#waiting = word;
      return;
    }
    this.#waiting = null;
    if (word === 'note') this.#put({ kind: 'note', text, place });
    else if (word !== 'important') this.#put({ kind: 'message', word, text, place });
    else {
      const what =
        'which signal word this is, danger, warning, caution or notice, or a note; the old guide called it important';
      this.#put({ kind: 'decide', what, text, place });
    }
  }

  #words({ text, lead, begins, bullet, numbered, place }: Words): void {
    const signal = signalOf(text, lead);
    const { steps, pieces } = this.#section;
    const around = steps.at(-1)?.pieces ?? pieces;
    const last = around.at(-1);
    const isCaption = /^(?:fig(?:ure)?\.?|photo|picture|image)\s*\d+\b/i.test(text);
    if (this.#waiting) this.#signal(this.#waiting, text, place);
    else if (signal && (signal.rest === '' || !numbered)) this.#signal(signal.word, signal.rest, place);
    else if (isCaption && last?.kind === 'picture' && last.caption === '')
      around.splice(-1, 1, { ...last, caption: text });
    else if (this.#section.kind !== 'work') this.#entries(text, place, bullet || numbered);
    else if (this.#isWork && begins && (numbered || isInstruction(text)))
      steps.push({ lead: '', pieces: withSignals(text, place) });
    else for (const piece of withSignals(text, place, bullet)) this.#put(piece);
  }

  #entries(text: string, place: OldPlace, whole: boolean): void {
    const put = (one: string) => this.#put({ kind: 'entry', text: one, count: '', whole: one, place });
    const parts = text.includes(';') ? text.split(/\s*;\s*/) : text.split(/,\s+/);
    const isList =
      text.includes(';') || (parts.length > 2 && parts.every((one) => one.split(' ').length <= 6));
    if (whole || !isList || this.#section.kind === 'prove') put(text);
    else for (const one of parts) if (one !== '') put(one.replace(/\.$/, ''));
  }

  #row(cells: readonly string[], table: number, place: OldPlace): void {
    const roles = this.#roles(table);
    const cell = (index: number) => cells[index] ?? '';
    const filled = cells.filter((one) => one !== '');
    const signal = signalOf(filled[0] ?? '', filled[0]);
    if (signal && !roles.headed) {
      this.#signal(signal.word, [signal.rest, ...filled.slice(1)].join(' ').trim(), place);
    } else if (roles.headed && cells === this.#firstRow(table)) {
      this.#put({ kind: 'columns', text: cells.join(' | '), place });
    } else if (this.#section.kind !== 'work' && roles.name >= 0) {
      const known = [roles.name, roles.count, roles.number];
      const rest = cells.filter((one, index) => one !== '' && !known.includes(index));
      const text = [cell(roles.name), ...rest].join(', ');
      this.#put({ kind: 'entry', text, count: cell(roles.count), whole: filled.join(' | '), place });
    } else if (roles.work < 0 || !this.#isWork) {
      this.#words({ text: filled.join(', '), ...plain, bullet: true, place });
    } else this.#stepRow(cells, roles, place);
  }

  #stepRow(cells: readonly string[], roles: TableRoles, place: OldPlace): void {
    const [begins = '', ...more] = (cells[roles.work] ?? '').split('\n');
    const lead = cells[roles.title] ?? '';
    this.#section.steps.push({ lead, pieces: withSignals(begins, place) });
    for (const text of more) for (const piece of withSignals(text, place)) this.#put(piece);
    for (const [index, text] of cells.entries()) {
      if (text === '' || [roles.work, roles.number, roles.title].includes(index)) continue;
      const kind = stated.find((one) => roles[one] === index);
      if (kind) this.#put({ kind, text, place });
      else this.#words({ text, ...plain, place });
    }
  }

  #firstRow(table: number): readonly string[] | undefined {
    const first = this.#blocks.find((one) => one.kind === 'row' && one.table === table);
    return first?.kind === 'row' ? first.cells : undefined;
  }
}

/** Words of the old guide, and whether a step may begin with them. */
interface Words {
  readonly text: string;
  readonly lead: string;
  readonly begins: boolean;
  readonly bullet: boolean;
  readonly numbered: boolean;
  readonly place: OldPlace;
}

const plain = { lead: '', begins: false, bullet: false, numbered: false } as const;

/** What a column states for the step of its row. */
const stated = ['torque', 'tool', 'time'] as const;

/** A text whose later sentences may be a safety message: "Place the rail. CAUTION: it is heavy. Keep clear." */
function withSignals(text: string, place: OldPlace, bullet = false): OldPiece[] {
  const [, before = text, after] =
    /^(.*?[.!?])\s+((?:DANGER|WARNING|CAUTION|NOTICE|NOTE)\b.*|(?:Danger|Warning|Caution|Notice|Note)\s*[:!].*)$/s.exec(
      text,
    ) ?? [];
  const signal = after === undefined ? null : signalOf(after);
  const words: OldPiece = { kind: 'text', text: signal ? before : text, bullet, place };
  if (!signal || signal.word === 'important') return [{ ...words, text }];
  return signal.word === 'note'
    ? [words, { kind: 'note', text: signal.rest, place }]
    : [words, { kind: 'message', word: signal.word, text: signal.rest, place }];
}
