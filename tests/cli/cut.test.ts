import { execFileSync } from 'node:child_process';
import { readdir, readFile } from 'node:fs/promises';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { correctionCommand } from '../../src/trade/print-check.ts';
import { paint } from '../cut/ink.ts';
import { type Bench, baybook, bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const guide = `::tool[Jigsaw]{#jigsaw}
::part[Roof skin]{#roof}

:::cut-template[Vent opening]{#opening panel=roof face=outside}
::datum[Vehicle centreline]{axis=vertical at="0 mm"}
::datum[Rear edge of the roof]{axis=horizontal at="0 mm"}
::outline{points="-180,60 180,60 180,420 -180,420" unit=mm}
:::

:::cut-template[Cable hole]{#cable-a4 panel=roof face=outside side=each}
::datum[Vehicle centreline]{axis=vertical at="0 mm"}
::datum[Rear edge of the roof]{axis=horizontal at="0 mm"}
::outline{points="220,60 260,60 260,90 220,90" unit=mm}
:::

## Cut {#cut}

::step[Cut the roof]{#cut-roof time="8 min"}

:cut[opening]{with=jigsaw} and :cut[cable-a4]{with=jigsaw}.
`;

const sound = exampleWorkspace(guide);

const cut = ({ folder }: Bench, ...args: string[]) => baybook(folder, 'cut', ...args);

const written = (folder: string) =>
  readdir(folder, { recursive: true }).then(
    (names) => names.filter((name) => name.includes('.')).sort(),
    () => [],
  );

describe('cut', () => {
  it('writes every template of a guide for the papers of the shop, and says what they are', async () => {
    const one = await bench(sound);
    const { code, out, err } = await cut(one, 'example');
    expect({ code, err }).toEqual({ code: 0, err: '' });
    expect(out).toMatch(/^cut-templates\/example:\n {2}opening-a4\.pdf, \d+ sheets\n/);
    expect(out).toMatch(/\n {2}cable-a4-left-letter\.pdf, \d sheets?\n {2}cable-a4-left\.svg\n/);
    expect(out).toMatch(
      /\nPrint at 100 %, with no fitting, and measure the proof square before you cut\.\n$/,
    );
    expect(await written(join(one.folder, 'cut-templates'))).toEqual([
      'example/cable-a4-left-a4.pdf',
      'example/cable-a4-left-letter.pdf',
      'example/cable-a4-left.dxf',
      'example/cable-a4-left.svg',
      'example/cable-a4-right-a4.pdf',
      'example/cable-a4-right-letter.pdf',
      'example/cable-a4-right.dxf',
      'example/cable-a4-right.svg',
      'example/opening-a4.pdf',
      'example/opening-letter.pdf',
      'example/opening.dxf',
      'example/opening.svg',
    ]);
  });

  it('writes one template, on the papers that are named, into the folder that is named', async () => {
    const one = await bench(sound);
    const papers = 'single,A3,tabloid';
    const { code } = await cut(one, 'example', 'opening', '--paper', papers, '--out', 'for the plotter');
    expect(code).toBe(0);
    expect(await written(join(one.folder, 'for the plotter'))).toEqual([
      'example/opening-a3.pdf',
      'example/opening-single.pdf',
      'example/opening-tabloid.pdf',
      'example/opening.dxf',
      'example/opening.svg',
    ]);
  });

  it('gives the very files that the site has', async () => {
    const one = await bench(sound);
    await one.build();
    await cut(one, 'example');
    const site = await one.site();
    for (const name of await written(join(one.folder, 'cut-templates/example'))) {
      const file = await readFile(join(one.folder, 'cut-templates/example', name));
      expect(site.get(`guides/example/cut-templates/${name}`)?.equals(file), name).toBe(true);
    }
  });

  it('writes nothing of a guide with an error, and says which', async () => {
    const one = await bench(sound);
    await one.change('example/guide.md', 'with=jigsaw', 'with=jigsw');
    const { code, out } = await cut(one, 'example');
    expect(code).toBe(1);
    expect(out).toContain('error tool-undeclared');
    expect(out).toMatch(/\nnothing was written: a saw is not to follow "example" while it has errors\n$/);
    expect(await written(join(one.folder, 'cut-templates'))).toEqual([]);
  });

  it('writes nothing where a paper asks for more sheets than can be laid true', async () => {
    const one = await bench({ ...sound, 'shop.yaml': 'name: Example Fitting\npapers: [tabloid]\n' });
    await one.change(
      'example/guide.md',
      '-180,60 180,60 180,420 -180,420',
      '-1300,100 1300,100 1300,2140 -1300,2140',
    );
    const { code, out } = await cut(one, 'example', 'opening', '--paper', 'a4', '--out', 'small');
    expect(code).toBe(1);
    expect(out).toMatch(/error cut-sheets-too-many\n[\s\S]*\nnothing was written\n$/);
    expect(await written(join(one.folder, 'small'))).toEqual([]);
  });

  it('does not mind an error in another guide', async () => {
    const one = await bench({ ...sound, 'other/guide.md': 'No front matter.\n' });
    expect((await cut(one, 'example')).code).toBe(0);
  });

  it.each([
    [['exmaple'], 'there is no guide "exmaple"; did you mean "example"?'],
    [['roof-rack'], 'there is no guide "roof-rack"; there are example'],
    [['example', 'opning'], 'the guide "example" has no cut template "opning"; did you mean "opening"?'],
    [['example', '--paper', 'a4,lettre'], '--paper: "lettre" is no paper; did you mean letter?'],
    [['example', '--paper', ''], '--paper: "" is no paper; there are a4, letter, a3, tabloid, single'],
    [['example', '--out', 'guides/x'], '--out "guides/x" and the workspace lie inside one another'],
    [['example', '--measured', '99,6'], 'no correction for 99 × 6 mm: no known setting fits both sides'],
    [['example', '--measured', '99,6,100,2'], '--measured takes the two sides of the 100 mm square'],
    [['example', '--measured', 'wide,high'], 'as in 99.6,100.2'],
    [['example', '--measured', '0,100'], 'no correction for 0 × 100 mm: give both sides'],
    [['example', '--measured', '100.1,99.9'], '100.1 × 99.9 mm is true to size'],
    [['example', '--measured', '94,94'], '- the A4 file was fitted to Letter paper: print the Letter file'],
    [['example', '--measured', '67,67'], '- the template was printed from the web page: open the PDF file'],
    [['example', '--measured', '96.9,100'], 'a printer is never off by more than 3 %'],
    [['example', '--measured', '100,103.1'], 'a printer is never off by more than 3 %'],
    [[], "missing required argument 'guide'"],
  ])('answers 2 to %j, and writes nothing', async (args, message) => {
    const one = await bench(sound);
    const { code, out, err } = await cut(one, ...args);
    expect({ code, out }).toEqual({ code: 2, out: '' });
    expect(err).toContain(message);
    expect(await written(join(one.folder, 'cut-templates'))).toEqual([]);
  });
});

describe('the line that the print check gives', () => {
  it('is run as it is printed, stamps every sheet, and makes the square as large as the printer needs', async () => {
    const one = await bench(sound);
    const [across, up] = [99.6, 100.2];
    const [program, ...args] = correctionCommand('example', 'opening', across, up).split(' ');
    expect(program).toBe('baybook');
    const { code, out } = await baybook(one.folder, ...args, '--paper', 'a4');
    expect(code).toBe(0);
    expect(out).toContain('Corrected for one printer: across × 1.0040, up × 0.9980; every sheet says so.');
    expect(await written(join(one.folder, 'cut-templates'))).toEqual(['example/opening-a4-corrected.pdf']);

    const path = join(one.folder, 'cut-templates/example/opening-a4-corrected.pdf');
    const pages = execFileSync('pdftotext', [path, '-'], { encoding: 'utf8' }).split('\f').slice(0, -1);
    expect(pages.length).toBeGreaterThan(3);
    for (const page of pages) {
      expect(page).toContain('CORRECTED ×1.0040 across, ×0.9980 up');
    }

    // The square of the first sheet on paper that poppler paints at 600 dpi. On the uncorrected sheet it begins
    // 19 mm from the left and 53 mm from the top; the correction stretches about the middle of the page.
    const [x, y] = [100 / across, 100 / up];
    const fromLeft = (at: number) => 105 + (at - 105) * x;
    const fromBottom = (at: number) => 148.5 + (at - 148.5) * y;
    const ink = paint(await readFile(path), 1);
    const level = ink.across(fromBottom(244 - 30.5), fromLeft(18), fromLeft(120));
    const upright = ink.up(fromLeft(19 + 30.5), fromBottom(143), fromBottom(245));
    expect(Math.abs(span(level, fromLeft(19), fromLeft(119)) - 100 * x)).toBeLessThan(0.1);
    expect(Math.abs(span(upright, fromBottom(144), fromBottom(244)) - 100 * y)).toBeLessThan(0.1);
    // What that printer then makes of it.
    expect(span(level, fromLeft(19), fromLeft(119)) * (across / 100)).toBeCloseTo(100, 1);
  });
});

/** From the line nearest to one place to the line nearest to another, mm. */
function span(lines: readonly number[], from: number, to: number): number {
  const near = (place: number) => lines.toSorted((a, b) => Math.abs(a - place) - Math.abs(b - place))[0];
  return (near(to) ?? Number.NaN) - (near(from) ?? Number.NaN);
}
