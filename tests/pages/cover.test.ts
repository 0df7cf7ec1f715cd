import { createRequire } from 'node:module';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { qrCode } from '../../src/drawings/qr-code.ts';
import { pageAddress } from '../../src/pages/frame/context.ts';
import { guidePage } from '../../src/pages/guide/guide-page.ts';
import { buildFragment } from '../../src/pages/overview/cover.ts';
import type { PickTable } from '../../src/pages/overview/pick-data.ts';
import { codeDrawing } from '../../templates/scripts/guide/code.ts';
import { svgText } from '../drawings/draw.ts';
import * as fixture from './fixture.ts';
import { guideHtml, page } from './render.ts';

// A CommonJS module whose types say that its function is the default export of an ES module.
const jsQR: typeof import('jsqr').default = createRequire(import.meta.url)('jsqr');

const address = 'https://guides.example/lane/';

function withAddress(text: string | null) {
  return { ...fixture.shop, settings: { ...fixture.shop.settings, address: text } };
}

/** What a reader of another make sees in a drawing, at some pixels to the module. */
async function scanned(svg: string): Promise<string | undefined> {
  const { data, info } = await sharp(Buffer.from(svg))
    .resize(400)
    .flatten({ background: '#888888' })
    .ensureAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true });
  return jsQR(new Uint8ClampedArray(data), info.width, info.height)?.data;
}

/** The codes that a page shows, with what each has behind the address of the page: its own, and those that its script draws. */
function codes(html: string): readonly { readonly fragment: string | null; readonly svg: string }[] {
  const own = /<div class="code">\s*<svg (class="qr-code".*?<\/svg>)/s.exec(html)?.[1];
  const table = /id="pick_table">(.*?)<\/script>/s.exec(html)?.[1] ?? '{}';
  const { codes: drawn } = JSON.parse(table) as PickTable;
  return [
    ...(own ? [{ fragment: null, svg: `<svg xmlns="http://www.w3.org/2000/svg" ${own}` }] : []),
    ...drawn.map(([fragment, modules]) => {
      const { size, path } = codeDrawing(modules);
      const ground = `<rect width="${size}" height="${size}" fill="#fff"/>`;
      const ink = `<path d="${path}" stroke="#000"/>`;
      return {
        fragment,
        svg: `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${size} ${size}">${ground}${ink}</svg>`,
      };
    }),
  ];
}

describe('a QR code', () => {
  it('is read by jsQR as what it was made of, also where it is long or has no plain letters', async () => {
    for (const text of [address, `${address}?q=Prüfung ✓`, 'x'.repeat(300)]) {
      expect(await scanned(svgText(qrCode(text, 'code')))).toBe(text);
    }
  });

  it('is one path, so that no hair line shows between its modules', () => {
    expect(svgText(qrCode(address, 'code')).match(/<path/g)).toHaveLength(1);
  });
});

describe('the cover of a print', () => {
  it('leads to the guide, and for each build to that build', async () => {
    const found = codes(guideHtml(fixture.guide, fixture.job, withAddress(address)));
    const read = await Promise.all(found.map(async ({ fragment, svg }) => [fragment, await scanned(svg)]));
    const page = 'https://guides.example/lane/guides/lamp-cradle/index.html';
    expect(read).toEqual([
      [null, page],
      ['', page],
      ['#build=fog:yes', `${page}#build=fog:yes`],
      ['#build=fog:no', `${page}#build=fog:no`],
    ]);
  });

  it('names a build by its deciding options, in their order', () => {
    const build = { tow: true, fog: false, lamps: 'led' };
    expect(buildFragment(build, ['fog', 'lamps', 'tow'])).toBe('#build=fog:no,lamps:led,tow:yes');
  });

  it('has one code where the guide reads alike for every build', () => {
    const [plan] = fixture.job.plans;
    if (!plan) throw new Error('the fixture has no plan');
    const same = { ...fixture.job, decidingOptions: [], plans: [plan] };
    expect(codes(guideHtml(fixture.guide, same, withAddress(address)))).toHaveLength(1);
  });

  it('names guide, revision and fingerprint in words where the shop has no address', () => {
    const html = guideHtml(fixture.guide, fixture.job, withAddress(null));
    const cover = html.slice(html.indexOf('<section class="cover"'), html.indexOf('id="at_a_glance"'));
    expect(codes(html)).toEqual([]);
    for (const words of ['Auxiliary lamp cradle', 'revision 3', 'fingerprint ']) {
      expect(cover).toContain(words);
    }
  });

  it('lists the sheets of a template on each paper, each drawing for its builds alone', () => {
    const file = (sheets: string | null, plans: string | null) => ({
      name: 'any words',
      sheets,
      detail: '2 sheets',
      href: 'x.pdf',
      plans,
      only: null,
    });
    const files = [file('A4, with fog lamps', '0'), file('A4', null), file(null, null)];
    const context = page();
    const shelf = { ...context.shelf, template: () => ({ drawings: [], files, printCheck: null }) };
    const { cover } = guidePage(fixture.guide, fixture.job, { ...context, shelf });
    expect(cover.templates.map(({ sheets }) => sheets)).toEqual([
      [
        { text: 'A4, with fog lamps: 2 sheets', plans: '0', only: null },
        { text: 'A4: 2 sheets', plans: null, only: null },
      ],
    ]);
  });

  it('leaves room for the vehicle and the technician', () => {
    const html = guideHtml();
    for (const words of [
      'Vehicle registration or VIN',
      'Odometer, or hours run',
      'Job number',
      'Customer',
      'Technician',
    ]) {
      expect(html).toMatch(new RegExp(`${words}</th><td class="write"(?: data-fact-of="\\w+")?></td>`));
    }
  });

  it('takes an address with or without its last slash', () => {
    const page = 'https://guides.example/lane/guides/vent/index.html';
    expect(pageAddress('https://guides.example/lane', { id: 'vent' })).toBe(page);
    expect(pageAddress(address, { id: 'vent' })).toBe(page);
    expect(pageAddress(null, { id: 'vent' })).toBeNull();
  });
});
