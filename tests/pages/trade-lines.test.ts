import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { diskFiles, inspect } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { guideHtml } from './render.ts';

/** The step of a guide in `tests/cases/trade-says`, as the page prints it. */
async function stepOf(name: string, step: string): Promise<string> {
  const files = await diskFiles(resolve(import.meta.dirname, '../cases/trade-says'));
  const { guides, shop } = await inspect(files, noStore);
  const found = guides.find(({ guide }) => guide.id === name);
  if (!found) throw new Error(`there is no guide ${name}`);
  const html = guideHtml(found.guide, found.job, shop);
  const from = html.slice(html.indexOf(`<article class="step" id="${step}"`));
  return from.slice(0, from.indexOf('</article>'));
}

const words = (html: string) =>
  html
    .replace(/<[^>]+>/g, ' ')
    .replace(/\s+/g, ' ')
    .trim();

describe('a step that puts bolts in', () => {
  it('draws each in section, letters what lies on it from the head, and holds its grip against its length', async () => {
    const step = await stepOf('stack', 'hang');
    const labels = [...step.matchAll(/aria-label="(Section[^"]+)"/g)].map(([, label]) => label);
    expect(labels).toEqual([
      'Section through the bolt, from its head: A, B, C, D, E, B, F',
      'Section through the bolt, from its head: G, B, C, H, E, B, F',
    ]);
    const keys = [...step.matchAll(/<ul class="stack-key">(.*?)<\/ul>/gs)].map(([, key = '']) => words(key));
    expect(keys).toEqual([
      'A Front bolt B Washer C Bar D Spacer, 12 mm E Frame lug B Washer F M8 nut',
      'G Rear bolt B Washer C Bar H Spacer, 18 mm E Frame lug B Washer F M8 nut',
    ]);
    // 1.6 + 5 + 12 + 8 + 1.6 mm, and 6 mm more with the long spacer.
    const grips = [...step.matchAll(/Between head and nut: ([\d.]+)\s*mm .*? The bolt: (\d+)\s*mm /g)];
    expect(grips.map(([, grip, bolt]) => [grip, bolt])).toEqual([
      ['28.2', '45'],
      ['34.2', '50'],
    ]);
  });

  it('lists position by position where its bolts differ', async () => {
    const step = await stepOf('stack', 'hang');
    const table = /<table class="positions as-lines">(.*?)<\/table>/s.exec(step)?.[1] ?? '';
    expect([...table.matchAll(/<tr[^>]*>(.*?)<\/tr>/gs)].map(([, row = '']) => words(row))).toEqual([
      'Bolt 1 2 3 4 5 6',
      'Front bolt B Washer C Bar D Spacer, 12 mm E Frame lug B Washer F M8 nut',
      'Rear bolt B Washer C Bar H Spacer, 18 mm E Frame lug B Washer F M8 nut',
    ]);
  });
});

it('a cable is told where it is cut and closed, and nowhere else', async () => {
  const line =
    'Cable Compressor feed: 1.5 m (4.92 ft) of 2.5 mm² one way, red insulation, fuse 15 A (blue), ends: ring lug and blade terminal, crimped with the crimp tool';
  const told = words(await stepOf('cable', 'make')).replace(/\u00a0/g, ' ');
  expect(told).toContain(line);
  expect(words(await stepOf('cable', 'mount'))).not.toContain('insulation');
});
