import { idLike } from '../directives/attributes/id-text.ts';
import { capitalised } from '../job/words/noun.ts';
import { fillIn } from '../shop/marked-places.ts';
import type { DraftThing } from './inventory.ts';
import type { OldPiece, OldSection, OldStep } from './outline.ts';
import type { PictureFolder } from './picture-folder.ts';
import { torquesIn, waitIn } from './quantities.ts';
import { attribute, escaped, escapedLine, inMarkedPlace, keptWords, toDecide } from './read/markdown-text.ts';
import type { OldPlace } from './read/old-guide.ts';
import { actionText, type Desk, draftSentence, type StepAtWork } from './sentence.ts';
import { framed, openers, sentencesIn } from './words.ts';

/** Writes the sections of a draft, in the order of the work: each leaves the things of the draft as its words do. */
export class SectionWriter {
  /** What stands before the first section. */
  readonly intro: string[] = [];
  readonly #desk: Desk;
  readonly #pictures: PictureFolder;
  readonly #ids = new Set(['need', 'off']);
  /** Ids of the sections in which something was taken off, with it. */
  readonly #takenOff = new Map<string, readonly DraftThing[]>();

  constructor(desk: Desk, pictures: PictureFolder) {
    this.#desk = desk;
    this.#pictures = pictures;
  }

  /** A section, with what of it stands before its steps. */
  section({ title, kind, pieces, steps }: OldSection, text: readonly OldPiece[]): readonly string[] {
    if (title === '' && steps.length === 0 && kind === 'work') {
      this.intro.push(...this.#pieces(pieces, null));
      return [];
    }
    if (kind === 'prove') return this.#proof(title, pieces);
    if (title === '' && text.length === 0 && steps.length === 0) return [];
    const named = title === '' ? 'The work' : title;
    // A list is declared where the format has it, and its heading is kept there.
    if (kind !== 'work' && text.length === 0 && steps.length === 0) return [];
    const id = this.#id(named);
    const heading = ['', `## ${escaped(named)} {#${id}}`, ''];
    const before = this.#desk.inventory.things.filter(({ state }) => state === 'off');
    const lines = [...this.#pieces(text, null), ...steps.flatMap((step) => this.#step(step, id))];
    const taken = this.#desk.inventory.things.filter(
      (thing) => thing.state === 'off' && !before.includes(thing),
    );
    if (taken.length > 0) this.#takenOff.set(id, taken);
    return [...heading, ...lines];
  }

  #id(words: string, longest = 30): string {
    const whole = idLike(words.replace(/\b(?:the|an?)\b/gi, '')) ?? 'section';
    const likely = whole.length <= longest ? whole : whole.slice(0, longest + 1).replace(/-[^-]*$/, '');
    let id = likely;
    for (let next = 2; this.#ids.has(id); next += 1) id = `${likely}-${next}`;
    this.#ids.add(id);
    return id;
  }

  #proof(title: string, pieces: readonly OldPiece[]): readonly string[] {
    const lines = pieces.flatMap((piece) => (isProof(piece) ? [`- ${escapedLine(piece.text)}`] : []));
    const rest = pieces.filter((piece) => !isProof(piece));
    const proof = lines.length > 0 ? [`:::prove[${escaped(title)}]`, ...lines, ':::', ''] : [];
    return ['', `## ${escaped(title)} {#${this.#id(title)}}`, '', ...proof, ...this.#pieces(rest, null)];
  }

  #step({ lead, pieces }: OldStep, section: string): readonly string[] {
    const texts = pieces.flatMap((piece) => (piece.kind === 'text' ? [piece.text] : []));
    const back = this.#reverse(lead, texts, section);
    if (back)
      return [
        back,
        '',
        keptWords(texts.join(' ')),
        '',
        ...this.#pieces(
          pieces.filter(({ kind }) => kind !== 'text'),
          null,
        ),
      ];
    const title = lead === '' ? titleOf(texts[0] ?? '') : lead.replace(/[.:]$/, '');
    const waits = texts.flatMap((text) => sentencesIn(text).flatMap((sentence) => waitIn(sentence) ?? []));
    const [wait, ...others] = waits;
    const [asked] = pieces.flatMap((piece) => (piece.kind === 'torque' ? torquesIn(piece.text) : []));
    const step: StepAtWork = { last: null, fasteners: new Set(), torque: asked?.torque ?? null };
    const body = this.#pieces(pieces, step);
    const attributes = [
      `#${this.#id(title)}`,
      ...(wait !== undefined && others.length === 0 ? [attribute('wait', wait)] : []),
    ];
    return [
      `::step[${title === '' ? `${fillIn} what is done` : escaped(title)}]{${attributes.join(' ')}}`,
      '',
      ...body,
    ];
  }

  /** `::reverse` for a step that only says so, where one earlier section is all that it can mean. */
  #reverse(lead: string, texts: readonly string[], section: string): string | null {
    const [only, ...others] = texts;
    if (only === undefined || others.length > 0 || lead !== '' || sentencesIn(only).length > 1) return null;
    if (!inReverse.test(only)) return null;
    const earlier = [...this.#takenOff.keys()].filter((id) => id !== section);
    const [of] = earlier;
    if (of === undefined || earlier.length > 1) return null;
    for (const thing of this.#takenOff.get(of) ?? []) thing.state = 'in place';
    for (const thing of this.#desk.inventory.things) if (thing.state === 'apart') thing.state = 'in place';
    return `::reverse{of=${of}}`;
  }

  #pieces(pieces: readonly OldPiece[], step: StepAtWork | null): readonly string[] {
    return pieces.flatMap((piece) => [...this.#piece(piece, step), '']);
  }

  #piece(piece: OldPiece, step: StepAtWork | null): readonly string[] {
    switch (piece.kind) {
      case 'text':
        return this.#text(piece.text, piece.bullet, piece.place, step);
      case 'message':
        return this.#message(piece.word, piece.text);
      case 'note':
        return [':::note', escapedLine(capitalised(piece.text)), ':::'];
      case 'entry':
      case 'columns':
        return [keptWords(piece.kind === 'entry' ? piece.whole : piece.text)];
      case 'torque':
        return this.#torque(piece.text, piece.place, step);
      case 'time':
        return [
          toDecide(
            'which time this is: hands-on, with time=, or a wait, with wait=',
            piece.text,
            piece.place,
          ),
        ];
      case 'tool':
        return this.#tools(piece.text, piece.place);
      case 'picture':
        return this.#picture(piece);
      case 'decide':
        return [toDecide(piece.what, piece.text, piece.place)];
    }
  }

  #text(text: string, bullet: boolean, place: OldPlace, step: StepAtWork | null): readonly string[] {
    const mark = bullet ? '- ' : '';
    if (!step) return [mark + escapedLine(text)];
    const drafted = sentencesIn(text).map((sentence) => {
      const { doubts, ...rest } = draftSentence(sentence, step, this.#desk);
      const back = inReverse.test(sentence)
        ? ['which section is done in reverse, in a line like ::reverse']
        : [];
      return { sentence, ...rest, doubts: [...doubts, ...back] };
    });
    const lines = [mark + atLineStart(drafted.map((one) => one.text).join(' '))];
    const old = drafted.filter(({ changed }) => changed).map(({ sentence }) => sentence);
    const doubts = drafted.flatMap((one) => one.doubts.map((what) => toDecide(what, one.sentence, place)));
    return [
      ...lines,
      ...(old.length > 0 ? ['', keptWords(old.join(' '))] : []),
      ...doubts.flatMap((line) => ['', line]),
    ];
  }

  /** The first sentence names the hazard where it is short and more follows; else its author does. */
  #message(word: string, text: string): readonly string[] {
    const [first = '', ...rest] = sentencesIn(text);
    for (const { tool } of this.#desk.findTools(text, false)) this.#desk.inventory.own(tool);
    const names = rest.length > 0 && first.split(' ').length <= 5;
    const hazard = names ? escaped(first.replace(/[.!]$/, '')) : `${fillIn} the hazard in a few words`;
    return [`:::${word}[${hazard}]`, escapedLine(capitalised(names ? rest.join(' ') : text)), ':::'];
  }

  /** A torque that a column states: tightened at the end of the step where one fastener stands ready for it. */
  #torque(text: string, place: OldPlace, step: StepAtWork | null): readonly string[] {
    if (step && step.torque === null && torquesIn(text)[0]?.torque) return [keptWords(text)];
    const turned = [...(step?.fasteners ?? [])];
    const [only] = turned;
    const torque = step?.torque;
    if (!torque || !only || turned.length > 1 || (only.attributes.get('torque') ?? torque) !== torque)
      return [toDecide('what is tightened to this', text, place)];
    only.attributes.set('torque', torque);
    if (only.state !== 'started' && only.state !== 'loosened')
      return [
        toDecide(`where the ${only.noun} is put in, with :start or :fit, and then :tighten`, text, place),
      ];
    only.state = 'tight';
    return [
      `${actionText('tighten', only, { kind: 'tighten', says: '' }, this.#desk.inventory)}.`,
      '',
      keptWords(text),
    ];
  }

  #tools(text: string, place: OldPlace): readonly string[] {
    const found = this.#desk.findTools(text, true);
    if (found.length === 0) return [toDecide('which tool of the crib this is', text, place)];
    const named = found.map(({ tool }) => `:${tool.kind}[${this.#desk.inventory.own(tool).id}]`);
    return [`Use: ${named.join(', ')}.`, '', keptWords(text)];
  }

  #picture({ picture, caption, place }: OldPiece & { readonly kind: 'picture' }): readonly string[] {
    const taken = this.#pictures.take(picture);
    const words = [caption, picture.alt].filter((one) => one !== '').join(' – ');
    if ('why' in taken)
      return [toDecide(`whether a picture is needed here; it was ${taken.why}`, words, place)];
    const shown = caption || picture.alt || `${fillIn} what it shows`;
    const alt =
      picture.alt === '' ? `${fillIn} what it shows, for whoever cannot see it` : inMarkedPlace(picture.alt);
    return [`:::figure[${escaped(shown)}]{src=${taken.path} alt="${alt}"}`, ':::'];
  }
}

const inReverse =
  /\b(?:in (?:the )?reverse order|reverse of (?:the )?(?:removal|dismantling|disassembly))\b/i;

/** What begins a line must not be read as a mark; an action may. */
function atLineStart(text: string): string {
  return text.replace(/^([-+=])/, '\\$1').replace(/^(\d{1,9})([.)])(?=\s|$)/, '$1\\$2');
}

/** The longest title that stays one line beside its number. */
const longestTitle = 60;

/** The title of a step from its first sentence: up to where its first clause ends. */
function titleOf(text: string): string {
  const begins = (sentencesIn(text)[0] ?? '').replace(openers, '');
  const first = capitalised(framed.exec(begins)?.[1] ?? begins);
  const [stated] = torquesIn(first);
  const upToTorque = stated ? first.slice(0, stated.from).replace(/\s*(?:\(|\b(?:to|at))?\s*$/, '') : first;
  const clause = upToTorque.split(/[,;:(]\s?|\s+(?:and|then|so that|until|using)\s+/)[0] ?? '';
  const whole = (clause.split(' ').length > 1 ? clause : upToTorque).replace(/[.!?]+$/, '').trim();
  if (whole.length <= longestTitle) return whole;
  const cut = whole.slice(0, longestTitle + 1);
  return (
    /^(.{20,}) (?:from|of|on|in|at|to|with|for|into|onto|along|behind|under|over)\s/.exec(cut)?.[1] ??
    cut.replace(/\s+\S*$/, '')
  );
}

function isProof(piece: OldPiece): piece is OldPiece & { readonly kind: 'entry' | 'text' } {
  return piece.kind === 'entry' || piece.kind === 'text';
}
