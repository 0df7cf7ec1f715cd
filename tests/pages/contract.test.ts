import { describe, expect, it } from 'vitest';
import { isMarkup } from '../../src/html/markup.ts';
import { prepareLayouts } from '../../src/pages/layouts/layouts.ts';
import { readTemplates } from '../../src/site/templates.ts';
import {
  cardsView,
  glossaryView,
  guideView,
  handbookView,
  indexView,
  platformView,
  recordsView,
  referenceView,
  rehearsalView,
} from './every-field.ts';

const { layouts } = await readTemplates({ paths: [], read: () => null });
const render = prepareLayouts(layouts);

function html(layout: string, view: object): string {
  const rendered = render(layout, view);
  if (!rendered.ok) throw new Error(rendered.problem);
  return rendered.html;
}

/** Every text, number and markup of a view, with its place in it. */
function leaves(value: unknown, path: string): readonly (readonly [path: string, words: string])[] {
  if (isMarkup(value)) return [[path, value.html]];
  if (typeof value === 'string' || typeof value === 'number') return [[path, String(value)]];
  if (typeof value !== 'object' || value === null) return [];
  return Object.entries(value).flatMap(([name, field]) =>
    leaves(field, Array.isArray(value) ? `${path}[]` : `${path}.${name}`),
  );
}

/** What a page does not print, and why. */
const unprinted: readonly (readonly [place: RegExp, reason: string])[] = [
  [/blocks?\[\]\.type$|(?:intro|opening)\[\]\.type$/, 'chooses the layout of a block'],
  [/(?:files|sheets|plans)\[\]\.only$/, 'the words beside it tell its builds'],
  [/sections\[\]\.only$/, 'a heading over steps alone goes with them, and each tells its builds'],
  [/sheets\.torques\[\]\.(?:id|thread|coat|setting|check)\b/, 'stands with the step, which the log names'],
  [
    /sheets\..*\.(?:step|back)\.(?:plans|only|title)$/,
    'a step is named by its number, and the row tells its builds',
  ],
  [
    /handOver\.(?:limits\[\]\.id|readings\[\]\.(?:check|sides)\b.*)$/,
    'a paper has no links and checks nothing',
  ],
  [/vehicle\.picture\.sources/, 'a drawing within a drawing has one file, for screens alone'],
  [/frame\.words\./, 'each layout takes from the table what it says; the test below asks for all of it'],
  [/\.item$/, 'names an item for other parts of the program, a row has an id of its own'],
];

const views = [
  ['guide.liquid', guideView()],
  ['index.liquid', indexView()],
  ['platform.liquid', platformView()],
  ['reference.liquid', referenceView()],
  ['glossary.liquid', glossaryView()],
  ['handbook.liquid', handbookView()],
  ['rehearsal.liquid', rehearsalView()],
  ['cards.liquid', cardsView()],
  ['records.liquid', recordsView()],
] as const;

describe.each(views)('%s', (layout, view) => {
  it('prints every field of its view', () => {
    const page = html(layout, view);
    const missing = leaves(view, 'view')
      .filter(([path, words]) => !page.includes(words) && !unprinted.some(([known]) => known.test(path)))
      .map(([path]) => path);
    expect([...new Set(missing)]).toEqual([]);
  });
});

it('says each of the printed words on some page', () => {
  const pages = views.map(([layout, view]) => html(layout, view)).join('\n');
  const unsaid = Object.entries(views[0][1].frame.words).filter(([, words]) => !pages.includes(words));
  expect(unsaid).toEqual([]);
});

it('names no vehicle, side or registration in a layout, since each trade has its own words for them', () => {
  const named = [...layouts].flatMap(([name, text]) => {
    const words = text
      .replace(/\{[{%][\s\S]*?[%}]\}|<[^>]*>/g, ' ')
      .match(/\b(?:vehicles?|registration|(?:left|right) side)\b/gi);
    return words ? [[name, ...words]] : [];
  });
  expect(named).toEqual([]);
});

it('keeps the anchor of a heading under which nothing stands', () => {
  const view = guideView();
  const empty = view.sections.map((section) => ({ ...section, empty: true }));
  expect(html('guide.liquid', { ...view, sections: empty })).toContain(`<div id="${empty[0]?.id}"></div>`);
});

it('refuses a kind of block that no layout knows, instead of leaving it out', () => {
  const view = guideView();
  const strange = {
    ...view,
    opening: [...view.opening, { changed: false, type: 'sketch', plans: null, only: null }],
  };
  expect(render('guide.liquid', strange)).toEqual({
    ok: false,
    problem: expect.stringMatching(
      /no layout is known for this kind of block: "sketch".*block\.liquid, line:\d+/,
    ),
  });
});
