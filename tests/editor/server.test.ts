import { readdirSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { join } from 'node:path';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { TextDocument } from 'vscode-languageserver-textdocument';
import { editorDesk } from '../../src/editor/desk.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { withTexts } from '../../src/shop/files/with-texts.ts';
import { inspect } from '../../src/shop/inspect/inspect.ts';
import { memoryStore } from '../../src/store/store.ts';
import { baybook, repository } from '../driver.ts';
import { long, runs, sampleOf } from '../samples.ts';
import { type Talk, talk } from './talk.ts';

const cases = join(repository, 'tests/cases');
const fixture = join(cases, 'lamp-cradle-fixture');
const guide = 'lamp-cradle/guide.md';

interface Told {
  readonly findings: readonly {
    readonly code: string;
    readonly at: {
      readonly file: string;
      readonly start: { readonly line: number; readonly column: number } | null;
    };
  }[];
}

describe('findings', () => {
  const folders = readdirSync(cases, { withFileTypes: true }).filter((one) => one.isDirectory());

  it.each(sampleOf(folders, 6).map(({ name }) => name))('are those of check in the case %s', async (name) => {
    const { folder, shown, until } = await talk(join(cases, name));
    const told: Told = JSON.parse((await baybook(folder, 'check', '--format', 'json')).out);
    // A file as a whole is told at its beginning.
    const expected = told.findings.map(
      ({ code, at: { file, start } }) =>
        `${file.replace(/^guides\//, '')}:${start?.line ?? 1}:${start?.column ?? 1} ${code}`,
    );
    const lines = () =>
      [...shown].flatMap(([file, all]) =>
        all.map(({ range: { start }, code }) => `${file}:${start.line + 1}:${start.character + 1} ${code}`),
      );
    if (expected.length > 0) await until(() => lines().length >= expected.length);
    expect(lines().sort()).toEqual([...expected].sort());
  });
});

/** A text as an editor opens it. */
async function opened(desk: Talk, path: string): Promise<string> {
  const text = await readFile(join(desk.folder, 'guides', path), 'utf8');
  await desk.say('textDocument/didOpen', {
    textDocument: { uri: desk.uri(path), languageId: 'markdown', version: 1, text },
  });
  return text;
}

/** Where some words of a text stand, as the protocol counts. */
function positionOf(text: string, words: string, into = 0) {
  const offset = text.indexOf(words);
  if (offset < 0) throw new Error(`"${words}" does not stand in the text`);
  const before = text.slice(0, offset + into).split('\n');
  return { line: before.length - 1, character: before.at(-1)?.length ?? 0 };
}

describe('an editor', () => {
  it('is told of a fault as it is typed, mends it, and is told when it is gone', async () => {
    const desk = await talk(fixture);
    const text = await opened(desk, guide);
    const start = positionOf(text, ':start[m8-nut]', 7);
    const wrong = { start, end: { ...start, character: start.character + 6 } };
    const type = (version: number, newText: string) =>
      desk.say('textDocument/didChange', {
        textDocument: { uri: desk.uri(guide), version },
        contentChanges: [{ range: wrong, text: newText }],
      });
    await type(2, 'm8-nud');
    await desk.until((shown) => (shown.get(guide) ?? []).some(({ code }) => code === 'item-undeclared'));
    const [fault] = (desk.shown.get(guide) ?? []).filter(({ code }) => code === 'item-undeclared');
    expect(fault?.range).toEqual(wrong);
    expect(fault?.message).toContain('likely mend: write m8-nut');
    const [fix] = (await desk.ask('textDocument/codeAction', {
      textDocument: { uri: desk.uri(guide) },
      range: wrong,
      context: { diagnostics: [fault] },
    })) as { readonly title: string; readonly edit: unknown }[];
    expect(fix).toMatchObject({
      title: 'Write m8-nut',
      edit: { changes: { [desk.uri(guide)]: [{ range: wrong, newText: 'm8-nut' }] } },
    });
    await type(3, 'm8-nut');
    await desk.until((shown) => (shown.get(guide) ?? []).length === 0);
  });

  it('is offered what can stand at a place, with what it is', async () => {
    const desk = await talk(fixture);
    const text = await opened(desk, guide);
    const offers = async (typed: string) => {
      const { line } = positionOf(text, 'Ease it 100 mm forward.');
      const whole = `${typed}\n`;
      await desk.say('textDocument/didChange', {
        textDocument: { uri: desk.uri(guide), version: 2 },
        contentChanges: [{ text: text.replace('Ease it 100 mm forward.', whole) }],
      });
      const items = (await desk.ask('textDocument/completion', {
        textDocument: { uri: desk.uri(guide) },
        position: { line, character: typed.length },
      })) as { readonly label: string; readonly documentation: string }[];
      return new Map(items.map(({ label, documentation }) => [label, documentation]));
    };
    expect((await offers('::fas')).get('fastener')).toContain('Declares fasteners of the vehicle');
    expect([...(await offers('Then :remo')).keys()]).toEqual(['remove']);
    const removable = await offers('Then :remove[');
    expect(removable.get('liner-screw')).toBe('Fastener: Liner screw, 3 on each side; T15');
    expect(removable.has('fog-plug')).toBe(false);
    expect((await offers('::part[Edge]{#edge cov')).get('covers')).toContain('What cannot be reached');
    expect([...(await offers('::part[Edge]{#edge side=')).keys()]).toEqual(['each', 'left', 'right']);
    expect((await offers('Then :remove[cover]{when=')).get('fog')).toBe('Front fog lamps');
    expect((await offers('Then :remove[liner-screw]{with="bit')).has('bit-t15')).toBe(true);
    expect((await offers('At 10:30')).size).toBe(0);
  });

  it('is told what a name is and how it stands, where it is given, and where else it is', async () => {
    const desk = await talk(fixture);
    const text = await opened(desk, guide);
    const of = (words: string, into: number) => ({
      textDocument: { uri: desk.uri(guide) },
      position: positionOf(text, words, into),
    });
    await desk.until((shown) => shown.size >= 0);
    const hover = (await desk.ask('textDocument/hover', of(':disconnect[fog-plug]', 14))) as {
      readonly contents: { readonly value: string };
    };
    expect(hover.contents.value).toContain('Connector: Fog lamp plug');
    expect(hover.contents.value).toContain('When step 2, "Draw the cover forward", is done: apart.');
    const attribute = (await desk.ask('textDocument/hover', of('open-edge=bottom', 3))) as typeof hover;
    expect(attribute.contents.value).toContain('runs out over the edge');
    const definition = await desk.ask('textDocument/definition', of(':disconnect[fog-plug]', 14));
    expect(definition).toMatchObject([
      { uri: desk.uri(guide), range: { start: positionOf(text, '{#fog-plug', 2) } },
    ]);
    const crib = await desk.ask('textDocument/definition', of(':tool[trim-lever]', 8));
    expect(crib).toMatchObject([{ uri: desk.uri('tools.yaml') }]);
    const references = (await desk.ask('textDocument/references', {
      ...of('{#m8-nut', 3),
      context: { includeDeclaration: true },
    })) as unknown[];
    expect(references).toHaveLength(3);
  });

  it('renames a name wherever it stands, and refuses one that is taken or no id', async () => {
    const desk = await talk(fixture);
    const text = await opened(desk, guide);
    const rename = (words: string, into: number, newName: string) =>
      desk.ask('textDocument/rename', {
        textDocument: { uri: desk.uri(guide) },
        position: positionOf(text, words, into),
        newName,
      }) as Promise<{
        readonly changes: { readonly [uri: string]: readonly { readonly newText: string }[] };
      }>;
    const own = await rename(':start[m8-nut]', 9, 'flange-nut');
    expect(
      Object.fromEntries(Object.entries(own.changes).map(([uri, edits]) => [uri, edits.length])),
    ).toEqual({
      [desk.uri(guide)]: 3,
    });
    const shared = await rename(':tool[trim-lever]', 8, 'edge-lever');
    expect(Object.keys(shared.changes).sort()).toEqual([desk.uri(guide), desk.uri('tools.yaml')].sort());
    await expect(rename(':start[m8-nut]', 9, 'cover')).rejects.toThrow('has a name "cover" already');
    await expect(rename(':start[m8-nut]', 9, 'M8 nut')).rejects.toThrow('is no id');
  });

  it('renames an option, and an inspection, wherever a condition asks about it', async () => {
    const van = (id: string) =>
      `---\ntitle: ${id}\noptions:\n  fog: Front fog lamps\n  lamps: {one-of: {led: LED, halogen: Halogen}}\nimpossible: ["fog and lamps is halogen"]\n---\n\nA van.\n`;
    const nones = ['wear', 'tools', 'supplies', 'kit', 'conditions']
      .map((of) => `::none{of=${of}}\n`)
      .join('');
    const lamp = (platform: string) =>
      `---\ntitle: Lamp\nplatform: ${platform}\noptions:\n  tow: Tow bar\n---\n\n## Work {#work}\n\n${nones}::part[Grille]{#grille when="fog and not (lamps is halogen or tow)"}\n::inspection[Rust]{#rust outcomes="none deep"}\n\n::procedure{of=look-first #first options="bar=tow"}\n\n::step[Look]{#look}\n\n:where[Look behind the :part[grille].]{when="fog and lamps is led and not tow"} :inspect[rust].\n\n::step[Ask]{#ask when="rust is deep" stop}\n\nAsk the owner.\n`;
    const desk = await talk({
      'shop.yaml': 'name: Example Fitting\n',
      'tools.yaml':
        'socket-13: {name: 13 mm socket, drive: hex 13}\nspanner-13: {name: 13 mm spanner, drive: hex 13, or: socket-13}\n',
      'fasteners.yaml': 'clip: {name: Clip}\n',
      'platforms/van.md': van('Van'),
      'platforms/other.md': van('Other'),
      'procedures/look-first.md':
        '---\ntitle: Look first\noptions:\n  bar: Tow bar\n---\n\n::step[Look under it]{#under}\n\nLook under the van. :where[Look under the bar.]{when=bar}\n',
      'visits/both.md': '---\ntitle: Both\nplatform: van\nbuild: fog, no tow\nguides: lamp\n---\n',
      'lamp/guide.md': lamp('van'),
      'second/guide.md': lamp('other'),
    });
    const sound = (await desk.check()).out;
    expect(sound).toContain('no errors');
    type Edits = readonly {
      readonly range: {
        readonly start: { readonly line: number; readonly character: number };
        readonly end: { readonly line: number; readonly character: number };
      };
      readonly newText: string;
    }[];
    const rename = async (path: string, words: string, into: number, newName: string) => {
      const text = await readFile(join(desk.folder, 'guides', path), 'utf8');
      const params = {
        textDocument: { uri: desk.uri(path) },
        position: positionOf(text, words, into),
        newName,
      };
      const { changes } = (await desk.ask('textDocument/rename', params)) as {
        readonly changes: { readonly [uri: string]: Edits };
      };
      const root = desk.uri('');
      for (const [uri, edits] of Object.entries(changes)) {
        const own = uri.slice(root.length);
        const document = TextDocument.create(
          uri,
          'markdown',
          1,
          await readFile(join(desk.folder, 'guides', own), 'utf8'),
        );
        await desk.write(own, TextDocument.applyEdits(document, [...edits]));
      }
      await desk.say('workspace/didChangeWatchedFiles', { changes: [] });
      // What is renamed everywhere reads as before; one place that is missed would be a finding.
      expect((await desk.check()).out, newName).toBe(sound);
      return Object.keys(changes)
        .map((uri) => uri.slice(root.length))
        .sort();
    };
    expect(await rename('lamp/guide.md', 'when="fog', 6, 'mist')).toEqual([
      'lamp/guide.md',
      'platforms/van.md',
      'visits/both.md',
    ]);
    expect(await rename('platforms/van.md', 'and lamps', 4, 'headlamps')).toEqual([
      'lamp/guide.md',
      'platforms/van.md',
    ]);
    expect(await rename('lamp/guide.md', '  tow:', 2, 'hitch')).toEqual(['lamp/guide.md', 'visits/both.md']);
    expect(await rename('procedures/look-first.md', 'when=bar', 5, 'beam')).toEqual([
      'lamp/guide.md',
      'procedures/look-first.md',
      'second/guide.md',
    ]);
    expect(await rename('lamp/guide.md', '{#rust', 2, 'corrosion')).toEqual(['lamp/guide.md']);
    expect(await rename('tools.yaml', 'socket-13:', 2, 'socket-13mm')).toEqual(['tools.yaml']);
    expect(await readFile(join(desk.folder, 'guides/tools.yaml'), 'utf8')).toContain('or: socket-13mm}');
    const text = await readFile(join(desk.folder, 'guides/lamp/guide.md'), 'utf8');
    const place = {
      textDocument: { uri: desk.uri('lamp/guide.md') },
      position: positionOf(text, 'when="mist', 7),
    };
    expect(await desk.ask('textDocument/definition', place)).toMatchObject([
      { uri: desk.uri('platforms/van.md') },
    ]);
  }, 60_000);

  it('is given the outline by section and step, and what can be folded', async () => {
    const desk = await talk(fixture);
    await opened(desk, guide);
    const about = { textDocument: { uri: desk.uri(guide) } };
    const outline = (await desk.ask('textDocument/documentSymbol', about)) as {
      readonly name: string;
      readonly children: readonly { readonly name: string }[];
    }[];
    expect(outline.map(({ name, children }) => [name, ...children.map((one) => one.name)])).toContainEqual([
      'Strip down',
      'Free the arch edge',
      'Draw the cover forward',
    ]);
    const folds = (await desk.ask('textDocument/foldingRange', about)) as {
      readonly startLine: number;
      readonly endLine: number;
    }[];
    expect(folds.length).toBeGreaterThan(10);
    expect(folds.every(({ startLine, endLine }) => endLine > startLine)).toBe(true);
  });

  it('is answered about documents that are broken, huge or of another place', async () => {
    const desk = await talk(fixture);
    const texts: { readonly [path: string]: string } = {
      [guide]: `\uFEFF---\ntitle: [\n---\n::step[{#\n:::\u0000\r:a[b]{c="d\n${'> '.repeat(200)}\n`,
      'huge/guide.md': ':remove[x]{with=y} '.repeat(30_000),
      'notes.txt': 'no guide',
      '../elsewhere.md': '::step[Out]{#out}',
    };
    for (const [path, text] of Object.entries(texts)) {
      const uri = desk.uri(path);
      await desk.say('textDocument/didOpen', {
        textDocument: { uri, languageId: 'markdown', version: 1, text },
      });
      const place = { textDocument: { uri }, position: { line: 3, character: 5 } };
      for (const method of ['completion', 'hover', 'definition', 'documentSymbol', 'foldingRange'])
        expect(await desk.ask(`textDocument/${method}`, place), `${path} ${method}`).not.toBe(undefined);
    }
    await desk.until((shown) => (shown.get(guide) ?? []).length > 0);
  });
});

it(
  'finds after random edits, taken in as they come, what it finds from scratch',
  async () => {
    const files = diskFiles(fixture);
    const first = new TextDecoder().decode(files.read(guide) ?? new Uint8Array());
    const work = { files, store: memoryStore(), openCrew: async () => null };
    const pieces = [
      'a',
      '\n',
      '\n\n',
      ':',
      '::',
      ':::\n',
      '{',
      '}',
      '#m8-nut',
      '[cover]',
      ' when=fog',
      '"',
      '\r\n',
      'é😀',
      '::step[X]{#x}\n',
    ];
    const edit = fc.tuple(fc.nat(1_000_000), fc.nat(12), fc.constantFrom(...pieces));
    await fc.assert(
      fc.asyncProperty(fc.array(edit, { minLength: 1, maxLength: 20 }), async (edits) => {
        const desk = editorDesk(work, 'test');
        const document = TextDocument.create('file:///guide.md', 'markdown', 1, first);
        let text = first;
        desk.typed(new Map([[guide, text]]));
        await desk.findings();
        for (const [place, length, piece] of edits) {
          const start = document.offsetAt(document.positionAt(place % (text.length + 1)));
          const end = document.offsetAt(document.positionAt(Math.min(text.length, start + length)));
          const range = { start: document.positionAt(start), end: document.positionAt(end) };
          TextDocument.update(document, [{ range, text: piece }], document.version + 1);
          text = text.slice(0, start) + piece + text.slice(end);
          expect(document.getText()).toBe(text);
          desk.typed(new Map([[guide, text]]));
        }
        const scratch = await inspect(withTexts(files, new Map([[guide, text]])));
        expect(await desk.findings()).toEqual(scratch.findings);
      }),
      runs(2, 1000),
    );
    // 10,000 edits, and a thousand guides inspected twice, take their time on a busy machine.
  },
  long ? 3_600_000 : undefined,
);
