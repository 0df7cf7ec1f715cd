import { describe, expect, it } from 'vitest';
import { numberSteps } from '../../src/pages/frame/context.ts';
import { prepareLayouts } from '../../src/pages/layouts/layouts.ts';
import { fastenerTypePage } from '../../src/pages/reference/fastener-type-page.ts';
import { glossaryPage } from '../../src/pages/reference/glossary-page.ts';
import { summaryOf } from '../../src/pages/reference/guide-summary.ts';
import { indexPage } from '../../src/pages/reference/index-page.ts';
import { toolPage } from '../../src/pages/reference/tool-page.ts';
import { readTemplates } from '../../src/site/templates.ts';
import { htmlFaults } from '../html-faults.ts';
import { crib, fastenerTypes, guide } from '../site/reference-shop.ts';
import * as fixture from './fixture.ts';
import { page } from './render.ts';

const shop = { ...fixture.shop, crib, fastenerTypes };
const guides = [summaryOf(guide, fixture.job, shop, [], null)];
const context = page('../../', shop);

const { layouts } = await readTemplates({ paths: [], read: () => null });
const render = prepareLayouts(layouts);

function html(layout: string, view: object): string {
  const rendered = render(layout, view);
  if (!rendered.ok) throw new Error(rendered.problem);
  return rendered.html;
}

function tool(id: string) {
  const item = crib.get(id);
  if (!item) throw new Error(`the crib has no ${id}`);
  return toolPage(item, guides, context);
}

function fastenerType(id: string) {
  const type = fastenerTypes.get(id);
  if (!type) throw new Error(`the shop knows no ${id}`);
  return fastenerTypePage(type, guides, context);
}

const facts = (view: { readonly facts: readonly { readonly label: string; readonly text: string }[] }) =>
  view.facts.map(({ label, text }) => `${label}: ${text}`);

describe('a picture of its own', () => {
  const at = { file: 'tools.yaml', start: 0, end: 0 };
  const pictureOf = (name: string) => ({
    path: 'pictures/one.svg',
    src: { value: 'pictures/one.svg', at },
    alt: { value: name, at },
    figure: null,
    at,
  });
  const ownPictures = new Map([
    ['tool socket-13', pictureOf('13 mm socket')],
    ['fastener panel-screw', pictureOf('Panel screw')],
  ]);
  const pictured = page('../../', { ...shop, ownPictures });

  it('stands on the page of a tool and of a kind of fastener, told by the name', () => {
    const item = crib.get('socket-13');
    const type = [...fastenerTypes.values()][0];
    if (!item || !type) throw new Error('the shop has neither');
    const typed = page('../../', {
      ...shop,
      ownPictures: new Map([[`fastener ${type.id}`, pictureOf(type.noun.label)]]),
    });
    expect(html('reference.liquid', toolPage(item, guides, pictured))).toMatch(
      /class="own-picture plate">[\s\S]*<img src="[^"]*one\.svg" alt="13 mm socket" width="640"/,
    );
    const view = fastenerTypePage(type, guides, typed);
    expect(view.picture?.alt).toBe(type.noun.label);
    expect(view.drawing).toBeNull();
  });

  it('is not made up from the drive where there is none', () => {
    expect(tool('socket-13').picture).toBeNull();
    expect(tool('socket-13').drawing).toBeNull();
    expect(html('reference.liquid', tool('socket-13'))).not.toContain('own-picture');
  });
});

describe('the page of a tool', () => {
  it('says its drive, range and other names', () => {
    expect(facts(tool('socket-13'))).toEqual(['Drive: 13\u00a0mm hexagon']);
    expect(facts(tool('torque-60'))).toEqual([
      'Range: 10–60\u00a0N·m (7.38–44.3\u00a0lbf·ft)',
      'Also called: click wrench',
    ]);
    expect(tool('bit-t25').facts).toContainEqual(
      expect.objectContaining({ text: 'T20 bit', href: '../../tools/bit-t20/index.html' }),
    );
  });

  it('leads to the steps that use it, with the numbers of the guide’s page', () => {
    const [use] = tool('socket-13').uses;
    const number = numberSteps(guide, fixture.job).get('hang')?.number;
    expect(number).toBe(5);
    expect(use?.places).toEqual([
      { text: 'Hang the cradle', href: '../../guides/lamp-cradle/index.html#hang', number },
    ]);
    expect(use?.platform).toBe('Larkspur Dray, panel van');
  });

  it('leads to the step whose message asks for protective equipment', () => {
    expect(tool('eye-protection').kicker).toBe('To wear');
    expect(tool('eye-protection').uses[0]?.places.map(({ text }) => text)).toEqual(['Cut the notch']);
  });

  it('lists the first 200 guides that use it, and says how many more there are', () => {
    const item = crib.get('socket-13');
    const user = guides.find(({ tools }) => tools['socket-13']);
    if (!item || !user) throw new Error('no guide uses the socket');
    const many = Array.from({ length: 203 }, (_, index) => ({ ...user, id: `one-${index}` }));
    const view = toolPage(item, many, context);
    expect([view.uses.length, view.unlisted]).toEqual([200, 3]);
    expect(html('reference.liquid', view)).toContain('And 3 more, which the search finds.');
    expect(html('reference.liquid', tool('socket-13'))).not.toContain('which the search finds');
  });

  it('says where no guide uses it', () => {
    expect(tool('bit-t25').uses).toEqual([]);
    expect(html('reference.liquid', tool('bit-t25'))).toContain('No guide of this shop uses it yet.');
  });
});

describe('the page of a kind of fastener', () => {
  it('says how it lets go, whether it goes back, and which of the guide it is', () => {
    const view = fastenerType('hex-head-screw');
    expect(view.lead).toBe('Turn out by hand tool.');
    expect(facts(view)).toContain('Goes back: yes, if it is whole');
    expect(view.uses[0]?.items).toEqual(['Arch screw, 7\u00a0mm hexagon: 2 (1 each side)']);
    expect(view.uses[0]?.places.map(({ text }) => text)).toEqual(['Free the arch edge']);
    expect(facts(fastenerType('panel-screw'))).toContain('Goes back: no: used once, fit a new one');
  });

  it('names its shape only where the name or the drive tells: a T25 sits in heads of many shapes', () => {
    expect(facts(fastenerType('hex-head-screw'))).toContain('Kind: Hexagon head');
    expect(facts(fastenerType('panel-screw')).filter((line) => line.startsWith('Kind'))).toEqual([]);
  });
});

describe('the glossary', () => {
  const view = glossaryPage(guides, page('../', shop));
  const term = (id: string) => view.groups.flatMap(({ terms }) => terms).find((one) => one.id === id);

  it('shows each term with what the shop has of it, and the guides that meet it', () => {
    expect(term('hexagon')?.related.map(({ text }) => text)).toEqual(['Hexagon-head screw', '13 mm socket']);
    expect(term('hexagon')?.uses[0]?.items).toHaveLength(2);
    expect(term('flange-nut')?.uses[0]?.places.map(({ text }) => text)).toEqual(['Hang the cradle']);
    expect(term('spline')?.uses).toEqual([]);
  });

  it('leads from a signal word to its messages: to the section of one that guards a section', () => {
    expect(term('warning')?.uses[0]?.places.map(({ text }) => text)).toEqual(['Cut the notch']);
    expect(term('notice')?.uses[0]?.places).toEqual([
      { text: 'Strip down', href: '../guides/lamp-cradle/index.html#strip-down', number: null },
    ]);
  });
});

describe('the first page', () => {
  it('lists everything without its script, sizes in the order of their numbers', () => {
    const { lists } = indexPage(guides, [], page('', shop));
    expect(lists.map(({ title }) => title)).toEqual([
      'Tools',
      'To wear',
      'Fasteners',
      'Glossary',
      'Records',
      'Handbook',
    ]);
    expect(lists[0]?.links.map(({ text }) => text)).toEqual([
      'T20 bit',
      'T25 bit',
      '13 mm socket',
      'Torque wrench, 10–60 N·m',
      'Trim lever',
    ]);
  });
});

describe('every page of these', () => {
  it.each([
    ['a tool', html('reference.liquid', tool('torque-60'))],
    ['to wear', html('reference.liquid', tool('eye-protection'))],
    ['a fastener', html('reference.liquid', fastenerType('hex-head-screw'))],
    ['the glossary', html('glossary.liquid', glossaryPage(guides, page('../', shop)))],
    ['the first page', html('index.liquid', indexPage(guides, [], page('', shop)))],
  ])('is valid HTML (html-validate, recommended and a11y): %s', async (_, text) => {
    expect(await htmlFaults(text)).toEqual([]);
  });

  it('prints a hostile name as text', () => {
    const item = crib.get('bit-t25');
    if (!item) throw new Error('the crib has no bit');
    const name = '<script>alert(1)</script>';
    const hostile = { ...item, noun: { ...item.noun, label: name }, synonyms: [name] };
    const text = html('reference.liquid', toolPage(hostile, guides, context));
    expect(text).not.toContain('<script>');
    expect(text).toContain('&lt;script&gt;');
  });
});
