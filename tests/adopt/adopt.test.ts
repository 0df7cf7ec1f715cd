import { cp, mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { parseFragment } from 'parse5';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { xmlParts } from '../../src/adopt/read/zip-parts.ts';
import { signalWords } from '../../src/trade/signal-words.ts';
import { type Answer, baybook } from '../driver.ts';
import { expected } from './expected.ts';

const old = join(import.meta.dirname, 'old');
const shop = join(import.meta.dirname, 'shop');
const names = Object.keys(expected);

/** Letters and digits alone: words are compared however they are set. */
const letters = (text: string) =>
  text
    .normalize('NFKC')
    .toLowerCase()
    .replace(/[^\p{L}\p{N}]+/gu, '');

describe('twenty old guides', () => {
  let folder = '';
  let made: Answer;
  /** Drafts by the name of the old file. */
  const drafts = new Map<string, string>();

  beforeAll(async () => {
    folder = await mkdtemp(join(tmpdir(), 'baybook-'));
    await cp(shop, join(folder, 'guides'), { recursive: true });
    made = await baybook(folder, 'adopt', ...names.map((name) => join(old, name)));
    const folders = [...made.out.matchAll(/^wrote guides\/([\w-]+)\/guide\.md$/gm)].map(([, id = '']) => id);
    for (const [index, name] of names.entries())
      drafts.set(name, await readFile(join(folder, 'guides', folders[index] ?? '', 'guide.md'), 'utf8'));
  });

  afterAll(() => rm(folder, { recursive: true, force: true }));

  it('come in with one command, each with its pictures', async () => {
    expect(made.err).toBe('');
    expect(made.code).toBe(0);
    expect(names).toHaveLength(20);
    expect((await readdir(old)).filter((name) => name.includes('.')).sort()).toEqual(names);
    const shown = [...drafts].flatMap(([name, text]) =>
      [...text.matchAll(/src=(\S+)/g)].map(([, path]) => `${name} ${path}`),
    );
    expect(shown).toEqual([
      '07-awning-rail.md pictures/rail.png',
      '08-cargo-lights.html pictures/edge.png',
      '09-deflectors.html pictures/picture.png',
      '09-deflectors.html pictures/edge.png',
      '15-water-tank.docx pictures/picture-1.png',
      '15-water-tank.docx pictures/picture-2.png',
    ]);
  });

  it('have at least 85 % of their steps, numbers, torques, safety messages and tools placed right', () => {
    const placed = { steps: 0, counts: 0, torques: 0, messages: 0, tools: 0 };
    const asked = { ...placed };
    const missed: string[] = [];
    for (const [name, want] of Object.entries(expected)) {
      const got = read(drafts.get(name) ?? '');
      for (const kind of Object.keys(placed) as (keyof typeof placed)[]) {
        const right = want[kind].filter((one) => got[kind].some((found) => isSame(found, one)));
        missed.push(
          ...want[kind].filter((one) => !right.includes(one)).map((one) => `${name} ${kind}: ${one}`),
        );
        placed[kind] += right.length;
        // A step too many is as wrong as one too few.
        asked[kind] += kind === 'steps' ? Math.max(want.steps.length, got.steps.length) : want[kind].length;
      }
    }
    const shares = Object.fromEntries(
      Object.entries(placed).map(([kind, right]) => [kind, right / asked[kind as keyof typeof asked]]),
    );
    for (const [kind, share] of Object.entries(shares))
      expect(
        share,
        `${kind}: ${JSON.stringify(placed)} of ${JSON.stringify(asked)}; missed: ${missed.join(' · ')}`,
      ).toBeGreaterThanOrEqual(0.85);
  });

  it('have no number or torque that the old words do not state', async () => {
    for (const name of names) {
      const told = wordsOf(await sourceText(name)).toLowerCase();
      const { counts, torques } = read(drafts.get(name) ?? '');
      for (const [thing, count] of counts)
        expect(isStated(told, count), `${name}: ${thing} ${count}`).toBe(true);
      for (const [thing, torque] of torques)
        expect(told, `${name}: ${thing}`).toContain(torque.split(' ')[0]);
    }
  });

  it('lose no sentence', async () => {
    const lost: string[] = [];
    let counted = 0;
    for (const name of names) {
      const draft = letters((drafts.get(name) ?? '').replace(/\\/g, ''));
      for (const sentence of sentencesOf(wordsOf(await sourceText(name)))) {
        counted += 1;
        if (!draft.includes(letters(sentence))) lost.push(`${name}: ${sentence}`);
      }
    }
    expect(lost).toEqual([]);
    expect(counted).toBeGreaterThan(400);
  });

  it('say in other words only what those words say', () => {
    const unsaid: string[] = [];
    let kept = 0;
    for (const [name, text] of drafts) {
      const printed = printer(text);
      const [, ...steps] = text.split(/^::step/m);
      for (const step of steps) {
        const [body = '', ...rest] = step.split(/^<!-- Old: /m);
        let before = printed(body);
        for (const piece of rest) {
          const [words = '', after = ''] = piece.split(' -->');
          kept += 1;
          const said = ` ${before.toLowerCase()} `;
          for (const word of words.toLowerCase().match(/[a-z]{4,}/g) ?? [])
            if (
              !said.includes(word.slice(0, 3)) &&
              !/^(?:four|five|seven|eight|nine|twelve|three|both|them|each)$/.test(word)
            )
              unsaid.push(`${name}: ${word} of “${words}”`);
          before += printed(after);
        }
      }
    }
    expect(unsaid).toEqual([]);
    expect(kept).toBeGreaterThan(50);
  });

  it('pass check but for what is to decide, and what the dry run then finds, each with its place and the old words', async () => {
    const told = JSON.parse((await baybook(folder, 'check', '--format', 'json')).out);
    const codes = new Map<string, number>();
    for (const { code } of told.findings) codes.set(code, (codes.get(code) ?? 0) + 1);
    expect([...codes.keys()].filter((code) => !explained.has(code))).toEqual([]);
    const places = told.findings.filter(({ code }: { readonly code: string }) => code === 'place-unfilled');
    expect(places.length).toBeGreaterThan(150);
    for (const { at } of places)
      expect(at).toMatchObject({ start: { line: expect.any(Number), column: expect.any(Number) } });
    const messages = places.map(({ message }: { readonly message: string }) => message);
    expect(messages).toContain(
      'this place is still to be filled: how many of the M8x30 bolt this is about: 8 are listed (line 17): “Slacken the four M8x30 bolts of the upper clamps.”',
    );
  });
});

/** What a draft may be told: each is a thing that its old guide left open, or said in a way that the rules do not take. */
const explained: ReadonlySet<string> = new Set([
  'place-unfilled',
  'none-missing',
  // It names no tool that fits, or another one.
  'tool-missing',
  'tool-misfit',
  'torque-wrench-missing',
  // It does not say how everything goes back, or where what is in the box goes.
  'kit-left-in-box',
  'part-left-off',
  'fastener-left-over',
  'connector-left-apart',
  // Its warnings and its sentences.
  'message-incomplete',
  'message-late',
  'sentence-long',
  'sentence-crowded',
  'sentence-not-imperative',
]);

interface Read {
  readonly steps: readonly string[];
  readonly counts: readonly (readonly [string, number])[];
  readonly torques: readonly (readonly [string, string])[];
  readonly messages: readonly (readonly [string, string])[];
  readonly tools: readonly string[];
}

/** What a draft places where, read from its text. */
function read(text: string): Read {
  const [, ...steps] = text.split(/^::step\[/m);
  const declared = [
    ...text.matchAll(/^::(kit|part|fastener|connector)(?:\[([^\]]*)\])?\{#([\w-]+)([^}]*)\}/gm),
  ];
  const things = declared.map(([, , label, id = '', rest = '']) => ({
    name: label ?? id.replaceAll('-', ' '),
    rest,
  }));
  return {
    steps: steps.map((step) => {
      const [, title = '', after = ''] = /^([^\]]*)\]\{[^}]*\}\n\n(.*)/s.exec(step) ?? [];
      const [, comment] = /^[^\n]*:[^\n]*\n\n<!-- Old: ([^\n]*) -->/.exec(after) ?? [];
      return `${title}\n${after.split('\n', 1)[0]}\n${comment ?? ''}`;
    }),
    counts: things.map(({ name, rest }) => [name, Number(/count=(\d+)/.exec(rest)?.[1] ?? 1)] as const),
    torques: things.flatMap(({ name, rest }) => {
      const torque = /torque="([^"]+)"/.exec(rest)?.[1];
      return torque === undefined ? [] : [[name, torque] as const];
    }),
    messages: [...text.matchAll(/^:::(danger|warning|caution|notice)\[([^\]]*)\]\n(.*)/gm)].map(
      ([, word = '', label = '', body = '']) => [word, label.startsWith('FILL IN') ? body : label] as const,
    ),
    tools: [...text.matchAll(/^::(?:tool|wear)\{#([\w-]+)\}/gm)].map(([, id = '']) => id),
  };
}

type One = string | readonly [string, string | number];

/** Whether what was found is what a careful person placed. */
function isSame(found: One, wanted: One): boolean {
  if (typeof found === 'string' && typeof wanted === 'string')
    return found.split('\n').some((line) => letters(line).startsWith(letters(wanted)));
  const [name, value] = found as readonly [string, string | number];
  const [wantedName, wantedValue] = wanted as readonly [string, string | number];
  // A signal word with its text; else a thing with its number or its torque.
  if (signalWords.some((word) => word === name))
    return name === wantedName && letters(String(value)).startsWith(letters(String(wantedValue)));
  return letters(name) === letters(wantedName) && value === wantedValue;
}

const numberWords = 'zero one two three four five six seven eight nine ten eleven twelve'.split(' ');

/** One needs no word: a thing that is named with its article is one. */
function isStated(text: string, count: number): boolean {
  const word = numberWords[count];
  return (
    count === 1 ||
    new RegExp(
      `(?<!\\d)${count}(?!\\d)${word ? `|\\b${word}\\b` : ''}${count === 2 ? '|\\bboth\\b' : ''}`,
    ).test(text)
  );
}

/** The text of an old file, its lines and cells apart, taken without any of the readers. */
async function sourceText(name: string): Promise<string> {
  const bytes = await readFile(join(old, name));
  if (name.endsWith('.docx')) {
    const parts = [...xmlParts(bytes)].filter(([path]) =>
      /^word\/(?:document|header|footer|footnotes|comments)/.test(path),
    );
    return parts
      .map(([, xml]) =>
        xml
          .replace(/<w:delText>.*?<\/w:delText>/g, '')
          .replace(/<\/w:p>/g, '\n')
          .replace(/<[^>]+>/g, ''),
      )
      .join('\n');
  }
  const text = name.startsWith('10') ? windows(bytes) : bytes.toString('utf8');
  if (!name.endsWith('.html'))
    return text
      .replace(/!?\[([^\]]*)\]\(([^)]*)\)/g, (all, words) =>
        all.startsWith('!') ? `\n${words}\n` : `${words}`,
      )
      .replace(/<[^>]+>/g, '')
      .replaceAll('|', '\n');
  return text
    .replace(/<(script|style)\b.*?<\/\1>/gs, '')
    .replace(/<(?:p|div|li|t[dhr]|h\d|br|title|table)\b[^>]*>/g, '\n$&')
    .replace(/<[^>]+>/g, '');
}

/** The signs of Windows-1252 that these guides use (WHATWG Encoding, index windows-1252). */
function windows(bytes: Buffer): string {
  const signs: { readonly [code: string]: string } = { '\x92': '’', '\x96': '–' };
  return bytes.toString('latin1').replace(/[\x92\x96]/g, (sign) => signs[sign] ?? sign);
}

/** Text with its references resolved, as a browser shows it. */
function wordsOf(text: string): string {
  const [node] = parseFragment(text.replaceAll('<', '&lt;')).childNodes;
  return node && 'value' in node ? node.value : '';
}

function sentencesOf(text: string): readonly string[] {
  const lines = text.replace(/\n\s+(?=[a-z])/g, ' ').split('\n');
  return lines
    .map((line) =>
      line.replace(/^[\s>*_#]*(?:Step \d+\s*[-:]|\(?(?:\d{1,2}|[a-z])[.)](?=\s)|[-*•·]\s)?/i, ''),
    )
    .flatMap((line) =>
      line.split(/(?<=[.!?])\s+|(?<=\b(?:WARNING|CAUTION|DANGER|NOTICE|NOTE|IMPORTANT)\b\W*)\s+/i),
    )
    .filter((sentence) => letters(sentence) !== '' && !/^\d+$/.test(letters(sentence)));
}

/** Prints a piece of a draft, roughly: what actions and mentions stand for, and nothing of comments and marked places. */
function printer(text: string): (piece: string) => string {
  const facts = new Map(
    [...text.matchAll(/^::\w+(?:\[([^\]]*)\])?\{#([\w-]+)([^}]*)\}/gm)].map(
      ([, label, id = '', rest = '']) => [
        id,
        `${label ?? id.replaceAll('-', ' ')} ${/side=each/.test(rest) ? 'each side' : ''} ${/torque="[^"]+"/.exec(rest)?.[0] ?? ''}`,
      ],
    ),
  );
  const verbs: { readonly [verb: string]: string } = { start: 'by hand', refit: 'refit' };
  return (piece) =>
    piece
      .replace(/^FILL IN.*$/gm, '')
      .replace(/^::reverse.*$/gm, 'refit the bumper cover in the reverse order of removal')
      .replace(/:([a-z-]+)\[([\w-]+)\](?:\{([^}]*)\})?/g, (_, verb, id, rest = '') => {
        const says = /(?:say|as)=(?:"([^"]*)"|([\w-]+))/.exec(rest);
        return `${says?.[1] ?? says?.[2] ?? verb} ${verbs[verb] ?? ''} ${facts.get(id) ?? id} ${rest}`;
      });
}
