import { readdirSync, readFileSync } from 'node:fs';
import { readFile } from 'node:fs/promises';
import { request } from 'node:http';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import type { BenchView } from '../../src/preview/bench/bench.ts';
import { cleanName } from '../../src/preview/bench/clean-name.ts';
import type { BenchFigure } from '../../src/preview/bench/figure-text.ts';
import { readPanel } from '../../src/preview/bench/panel-points.ts';
import { readFigures } from '../../src/preview/bench/read-figures.ts';
import { addFigure, changeFigure } from '../../src/preview/bench/write-figure.ts';
import { addOutline } from '../../src/preview/bench/write-outline.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { bench, repository } from '../driver.ts';
import { sampleOf } from '../samples.ts';
import { openPreview } from './open-preview.ts';

const head =
  '---\ntitle: Lamp\nplatform: van\n---\n\n## Fit {#fit}\n\n::step[Hang it]{#hang}\n\nHang the lamp.\n';
const figure: BenchFigure = {
  src: 'pictures/lamp.jpg',
  caption: 'Lamp on its bracket',
  alt: 'A lamp, seen from "below" & behind',
  shows: 'left',
  crop: '10%,10%,90%,90%',
  blur: '',
  zoom: '',
  marks: [
    { letter: 'A', at: '31.4%,44%', text: ':kit[lamp]' },
    { letter: 'B', at: '60%,20%', text: 'bracket' },
  ],
};
const written = `:::figure[Lamp on its bracket]{src=pictures/lamp.jpg alt="A lamp, seen from &quot;below&quot; &amp; behind" shows=left crop="10%,10%,90%,90%"}
- :mark[A]{at="31.4%,44%"} :kit[lamp]
- :mark[B]{at="60%,20%"} bracket
:::`;

const source = (text: string) => sourceFile('lamp/guide.md', text);
const textOf = (result: ReturnType<typeof addFigure>) =>
  result.ok ? result.text : `refused: ${result.problem}`;
/** The text with its first figure changed. */
const changed = (text: string, change: Partial<BenchFigure>) => {
  const [first] = readFigures(source(text)).figures;
  if (!first) throw new Error('the text has no figure');
  return textOf(changeFigure(source(text), { ...first, ...change }, 0));
};
const last = (text: string) => readFigures(source(text)).places.at(-1)?.after ?? 0;

describe('a figure that the bench writes', () => {
  it('stands behind its sentence, with an empty line on each side', () => {
    expect(textOf(addFigure(source(head), figure, last(head)))).toBe(`${head.trimEnd()}\n\n${written}\n`);
    const more = `${head}\n## Prove {#prove}\n\nLook at it.\n`;
    expect(textOf(addFigure(source(more), figure, last(more)))).toBe(
      more.replace('lamp.\n', `lamp.\n\n${written}\n`),
    );
    const tight = `${head}::step[Next]{#next}\n\nGo on.\n`;
    const place = readFigures(source(tight)).places.find(({ words }) => words === 'Hang the lamp.');
    expect(textOf(addFigure(source(tight), figure, place?.after ?? 0))).toBe(
      tight.replace('lamp.\n', `lamp.\n\n${written}\n\n`),
    );
  });

  it('is told apart from one that shows the own picture of a thing', () => {
    const text = `${head}\n${written}\n\n:::figure[Lamp, plugged]{of=lamp}\n:::\n`;
    expect(readFigures(source(text)).figures.map(({ src, of, step }) => [src, of, step])).toEqual([
      ['pictures/lamp.jpg', '', 'Hang it'],
      ['', 'lamp', 'Hang it'],
    ]);
  });

  it('keeps the line ends of the file', () => {
    const dos = head.replaceAll('\n', '\r\n');
    const text = textOf(addFigure(source(dos), figure, last(dos)));
    expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/);
    expect(text.replaceAll('\r\n', '\n')).toBe(`${head.trimEnd()}\n\n${written}\n`);
  });

  it('reads back as it was written, and written again changes no byte', () => {
    const text = textOf(addFigure(source(head), figure, last(head)));
    const [{ directive: _, step: __, of: ___, ...back } = figure as never] = readFigures(
      source(text),
    ).figures;
    expect({
      ...back,
      marks: back.marks.map(({ letter, at, text: words }) => ({ letter, at, text: words })),
    }).toEqual(figure);
    expect(changed(text, {})).toBe(text);
  });

  it('is changed no further than asked', () => {
    const text = `${head}\n${written.replace('shows=left', "shows='left'  when=fog")}\n`;
    const edit = (change: Partial<BenchFigure>, from: string, to: string) =>
      expect(changed(text, change)).toBe(text.replace(from, to));
    edit({ caption: 'Lamp' }, '[Lamp on its bracket]', '[Lamp]');
    edit({ shows: 'right' }, "shows='left'", 'shows=right');
    edit({ shows: '' }, " shows='left'", '');
    edit({ crop: '' }, ' crop="10%,10%,90%,90%"', '');
    edit({ blur: '1%,2%,3%,4%' }, '90%"}', '90%" blur="1%,2%,3%,4%"}');
    edit({ alt: 'A lamp' }, '"A lamp, seen from &quot;below&quot; &amp; behind"', '"A lamp"');
    const [a, b] = figure.marks;
    if (!a || !b) throw new Error('the figure has two marks');
    edit({ marks: [{ ...a, at: '31%,45%' }, b] }, '31.4%,44%', '31%,45%');
    edit({ marks: [a, { ...b, text: 'rail' }] }, 'bracket\n:::', 'rail\n:::');
    edit({ marks: [a] }, '- :mark[B]{at="60%,20%"} bracket\n', '');
    edit(
      { marks: [a, b, { letter: 'C', at: '1%,2%', text: 'nut' }] },
      'bracket\n:::',
      'bracket\n- :mark[C]{at="1%,2%"} nut\n:::',
    );
  });

  it('gets its first mark above what else it says', () => {
    const plain = `${head}\n:::figure[Lamp]{src=pictures/lamp.jpg alt="A lamp"}\nSeen from below.\n:::\n`;
    const text = changed(plain, { marks: [{ letter: 'A', at: '1%,2%', text: 'nut' }] });
    expect(text).toBe(plain.replace('lamp"}\n', 'lamp"}\n- :mark[A]{at="1%,2%"} nut\n\n'));
  });

  it('is refused where its words would be read as something else', () => {
    const refuse = (change: Partial<BenchFigure>) =>
      expect(textOf(addFigure(source(head), { ...figure, ...change }, last(head)))).toMatch(/^refused: /);
    refuse({ caption: 'Lamp] and {bracket' });
    refuse({ caption: 'Lamp\n\n::step[Next]{#next}' });
    refuse({ marks: [{ letter: 'A', at: '1%,2%', text: 'nut\n:::\n\n## Next {#next}' }] });
    refuse({ marks: [{ letter: 'A]', at: '1%,2%', text: 'nut' }] });
    expect(textOf(addFigure(source(head), figure, 3))).toBe(
      'refused: the guide has changed; choose the place again',
    );
    const broken = `${head}\n:::note\nNever closed.\n`;
    expect(textOf(addFigure(source(broken), figure, head.length - 1))).toMatch(
      /^refused: the text of the guide/,
    );
  });
});

/** A panel at 2 pixels to a millimetre, 300 mm across and 200 mm up, and a rectangle of 62 × 38 mm on it. */
const pressed = {
  known: [
    { from: { x: 100, y: 500 }, to: { x: 700, y: 500 }, typed: '300 mm' },
    { from: { x: 100, y: 500 }, to: { x: 100, y: 100 }, typed: '20 cm' },
  ],
  corners: [
    { x: 200, y: 400 },
    { x: 324, y: 400 },
    { x: 324, y: 324 },
    { x: 200, y: 324 },
  ],
  zero: 0,
  within: 1,
} as const;

describe('an outline that is pressed on a photograph', () => {
  it('is read in millimetres, with what it was measured by and how far off it can be', () => {
    const read = readPanel(pressed);
    expect(read.ok && read.value.points).toBe('0,0 62,0 62,38 0,38');
    expect(read.ok && read.value.facts.map((fact) => fact.replace(/[\d.]+ mm/g, '… mm'))).toEqual([
      'scale: 2.00 pixels to a millimetre across, 2.00 upwards; they differ by 0.0 %',
      'the right angle between the two lengths is 90.0° in the picture',
      'a press that is one pixel of the screen beside its point makes up to … mm at a corner',
      'the skew of the camera is taken out where the two lengths lie; where it is another, up to … mm more',
      'so a corner can be … mm off, and a bent lens or a curved panel adds to that: measure on the panel before anything is cut',
    ]);
    // Each end of a way can be a pixel off, which is half a millimetre at each: a millimetre across and one up, and more.
    const [, least] = /up to ([\d.]+) mm at a corner/.exec(read.ok ? read.value.facts.join() : '') ?? [];
    expect(Number(least)).toBeGreaterThan(Math.SQRT2);
    expect(Number(least)).toBeLessThan(2.5);
    const other = readPanel({ ...pressed, zero: 2, corners: pressed.corners.slice(0, 3) });
    expect(other.ok && other.value.points).toBe('-62,-38 0,-38 0,0');
    expect(readPanel({ ...pressed, corners: [] })).toMatchObject({ ok: true, value: { points: '' } });
  });

  it('is refused where the two lengths cannot be read, or tell too little', () => {
    const [one, other] = pressed.known;
    const problem = (typed: string) => {
      const read = readPanel({ ...pressed, known: [{ ...one, typed }, other] });
      return read.ok ? '' : read.problem;
    };
    expect(problem('300')).toBe(
      'the first known length: "300" has no unit; a length was expected, for example "25 mm"',
    );
    expect(problem('0 mm')).toBe('a known length is longer than nothing');
    const flat = readPanel({ ...pressed, known: [one, { ...other, to: { x: 300, y: 480 } }] });
    expect(flat.ok ? '' : flat.problem).toContain('not nearly square');
  });

  it('stands in the guide as a draft that nobody can publish before it is measured', async () => {
    const path = 'tests/cases/lamp-cradle-fixture';
    const made = await bench(join(repository, path));
    const text = readFileSync(join(repository, path, 'lamp-cradle/guide.md'), 'utf8');
    const read = readPanel(pressed);
    const words = {
      src: 'pictures/arch--1.jpg',
      panel: 'cover',
      face: 'outside',
      known: ['300 mm', '20 cm'],
    } as const;
    if (!read.ok) throw new Error(read.problem);
    const place = readFigures(source(text)).places.find(({ step }) => step === 'Try the cradle');
    const written = textOf(addOutline(source(text), read.value, words, place?.after ?? 0));
    expect(written).toContain(
      '<!-- Drafted from the photograph pictures/arch– –1.jpg, by 300 mm and 20 cm on it, and not measured: scale: 2.00 pixels',
    );
    expect(written).toContain('{#drafted-outline panel=cover face=outside}');
    expect(written).toContain('::outline{points="0,0 62,0 62,38 0,38" unit=mm}');
    await made.write('lamp-cradle/guide.md', written);
    const { out } = await made.check();
    expect([...out.matchAll(/^\S+ error ([a-z-]+)$/gm)].map(([, code]) => code)).toEqual([
      'cut-never-made',
      'place-unfilled',
      'place-unfilled',
      'place-unfilled',
    ]);
    expect(out).toContain('this place is still to be filled: what is cut, once it is measured on the panel');
    const again = textOf(addOutline(source(written), read.value, words, place?.after ?? 0));
    expect(again).toContain('{#drafted-outline-2 panel=cover face=outside}');
    expect(textOf(addOutline(source(text), read.value, words, 3))).toBe(
      'refused: the guide has changed; choose the place again',
    );
  });
});

it('every figure of the demo, read and written again, changes no byte', () => {
  const guides = readdirSync(join(repository, 'guides'), { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .flatMap(({ name }) => {
      const path = join(repository, 'guides', name, 'guide.md');
      return readdirSync(join(repository, 'guides', name)).includes('guide.md')
        ? [readFileSync(path, 'utf8')]
        : [];
    });
  let figures = 0;
  for (const text of sampleOf(guides, 1)) {
    const read = readFigures(source(text)).figures;
    figures += read.length;
    for (const [index, one] of read.entries())
      expect(textOf(changeFigure(source(text), one, index))).toBe(text);
  }
  expect(figures).toBeGreaterThan(2);
});

it('names are those that a guide keeps', () => {
  expect(
    ['IMG_2041.JPG', 'Vörne Ecke (1).jpeg', '../../etc/passwd.png', 'C:\\shots\\a.webp', '…….svg'].map(
      cleanName,
    ),
  ).toEqual(['img-2041.jpg', 'vorne-ecke-1.jpg', 'passwd.png', 'a.webp', 'picture.svg']);
  expect(['notes.md', 'movie.mp4', 'shot', 'shot.heic'].map(cleanName)).toEqual([null, null, null, null]);
});

describe('the bench of a preview', () => {
  const photograph = (colour: string) =>
    sharp({ create: { width: 300, height: 200, channels: 3, background: colour } })
      .jpeg()
      .toBuffer();

  function send(port: number, path: string, body: string | Buffer, origin: string | null) {
    return new Promise<{ readonly status: number; readonly body: string }>((answered, failed) => {
      const headers = { host: `localhost:${port}`, ...(origin === null ? {} : { origin }) };
      const asking = request({ host: '127.0.0.1', port, path, method: 'POST', headers }, (response) => {
        const parts: Buffer[] = [];
        response.on('data', (part) => parts.push(part));
        response.on('end', () =>
          answered({ status: response.statusCode ?? 0, body: Buffer.concat(parts).toString() }),
        );
      });
      asking.on('error', failed);
      asking.end(body);
    });
  }

  it('keeps copies, writes in one change that it takes back, and lets no other site and no other folder in', async () => {
    const { preview, folder, ask, change } = await openPreview();
    const home = `http://localhost:${preview.port}`;
    const bench = (what: string) => `/~preview/bench/${what}guide=lamp-cradle`;
    const tell = (what: string, body: string | Buffer) => send(preview.port, bench(what), body, home);
    const path = join(folder, 'guides/lamp-cradle/guide.md');
    const guide = () => readFile(path, 'utf8');
    const before = await guide();

    for (const origin of [null, 'http://evil.example', 'http://localhost:1'])
      expect((await send(preview.port, bench('undo?'), '', origin)).status).toBe(403);
    expect((await send(preview.port, '/guides/lamp-cradle/index.html', '', home)).status).toBe(405);
    for (const name of ['..', '.', 'platforms', '..%2Flamp-cradle', ''])
      expect((await ask(`/~preview/bench/view?guide=${name}`)).status).toBe(404);
    expect((await ask(`${bench('picture?')}&src=guide.md`)).status).toBe(404);
    expect((await ask(`${bench('picture?')}&src=../../../../etc/passwd.jpg`)).status).toBe(404);

    const red = await photograph('red');
    const kept = async (name: string, bytes: Buffer) =>
      (await tell(`keep?src=${encodeURIComponent(name)}&`, bytes)).body;
    expect(await kept('IMG 7.JPG', red)).toBe('"pictures/img-7.jpg"');
    expect(await kept('IMG 7.JPG', red)).toBe('"pictures/img-7.jpg"');
    expect(await kept('IMG 7.JPG', await photograph('blue'))).toBe('"pictures/img-7-2.jpg"');
    expect(await readFile(join(folder, 'guides/lamp-cradle/pictures/img-7.jpg'))).toEqual(red);
    expect(await kept('IMG 8.JPG', Buffer.from('no picture'))).toContain('is not a picture');
    expect((await tell('turn?src=pictures/img-7.jpg&', '')).status).toBe(200);
    const turned = await sharp(
      await readFile(join(folder, 'guides/lamp-cradle/pictures/img-7.jpg')),
    ).metadata();
    expect([turned.width, turned.height]).toEqual([200, 300]);

    const view: BenchView = JSON.parse((await ask(bench('view?'))).body);
    expect(view.pictures.map(({ src, problem }) => src + problem)).toEqual([
      'pictures/arch.jpg',
      'pictures/img-7-2.jpg',
      'pictures/img-7.jpg',
    ]);
    const own = {
      ...figure,
      src: 'pictures/img-7.jpg',
      marks: [{ letter: 'A', at: '10%,10%', text: ':kit[cradle]' }],
    };
    const order = { edition: view.edition, figure: own, over: null, after: view.places.at(-1)?.after };
    expect(
      (await tell('write?', JSON.stringify({ ...order, figure: { ...own, crop: '9' } }))).body,
    ).toContain('four percentages');
    for (const [lacking, told] of [
      [{ caption: ' ' }, 'the caption is still empty'],
      [{ alt: '' }, 'nothing says yet what the picture shows'],
      [{ marks: [{ letter: 'A', at: '10%,10%', text: '' }] }, 'mark A does not say yet what it shows'],
    ] as const) {
      const half = { ...order, figure: { ...own, ...lacking } };
      expect((await tell('write?', JSON.stringify(half))).body).toContain(told);
    }
    expect((await tell('write?', JSON.stringify({ ...order, edition: 'old' }))).body).toContain(
      'saved elsewhere',
    );
    expect((await tell('write?', '{"edition":7}')).status).toBe(409);
    expect(await guide()).toBe(before);
    const answer = await tell('write?', JSON.stringify(order));
    expect(JSON.parse(answer.body).undo).toBe(true);
    expect(await guide()).toContain('{src=pictures/img-7.jpg alt=');
    expect((await tell('undo?', '')).status).toBe(200);
    expect(await guide()).toBe(before);
    // An outline that was pressed on a photograph is written in the same way.
    const outline = { src: 'pictures/img-7.jpg', pressed, panel: 'cover', face: 'outside' };
    const draft = (change: object) =>
      tell('outline?', JSON.stringify({ edition: view.edition, after: order.after, ...outline, ...change }));
    expect(JSON.parse((await tell('measure?', JSON.stringify(pressed))).body).points).toBe(
      '0,0 62,0 62,38 0,38',
    );
    expect((await draft({ panel: 'no-part' })).body).toContain('choose the part that is cut');
    expect((await draft({ edition: 'old' })).body).toContain('saved elsewhere');
    expect((await draft({ pressed: { ...pressed, corners: [] } })).body).toContain('three corners');
    expect(await guide()).toBe(before);
    expect((await draft({})).status).toBe(200);
    expect(await guide()).toContain('Drafted from the photograph pictures/img-7.jpg');
    expect((await tell('undo?', '')).status).toBe(200);
    expect(await guide()).toBe(before);
    // What was saved elsewhere since is not lost by taking back.
    await tell('write?', JSON.stringify(order));
    await change('lamp-cradle/guide.md', 'Hang the cradle', 'Hang the cradle square');
    expect((await tell('undo?', '')).body).toContain('saved elsewhere');
    expect(await guide()).toContain('Hang the cradle square');
  });
});
