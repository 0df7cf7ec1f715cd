import { readFileSync } from 'node:fs';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { blankPlaces } from '../../src/pictures/blank.ts';
import { noStore } from '../../src/store/store.ts';

const blank = (bytes: Uint8Array, places: readonly (readonly [number, number])[]) =>
  blankPlaces(
    bytes,
    places.map(([x, y]) => ({ x, y })),
    noStore,
  );

const drawing = (shapes: string, viewBox = '0 0 100 60') =>
  Buffer.from(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="${viewBox}">${shapes}</svg>`);

const demo = (path: string) => readFileSync(new URL(`../../guides/${path}`, import.meta.url));

describe('a mark on a drawing', () => {
  it('points at something on any shape, and within a white one that is filled', async () => {
    const shapes =
      '<rect width="100" height="60" fill="#fff"/><path d="M10 10h40v40h-40z" fill="#fff" stroke="#000"/>';
    expect(
      await blank(drawing(shapes), [
        [0.3, 0.5],
        [0.1, 0.5],
        [0.8, 0.5],
      ]),
    ).toEqual([false, false, true]);
  });

  it('points at nothing within an outline that is not filled', async () => {
    const ring = '<circle cx="50" cy="30" r="25" fill="none" stroke="#000"/>';
    expect(
      await blank(drawing(ring), [
        [0.5, 0.5],
        [0.75, 0.5],
      ]),
    ).toEqual([true, false]);
  });

  it('is judged wherever the drawing’s own measure begins', async () => {
    const shapes = '<rect x="-50" y="-30" width="100%" height="100%" fill="#eee"/><circle r="10"/>';
    expect(
      await blank(drawing(shapes, '-50 -30 100 60'), [
        [0.5, 0.5],
        [0.9, 0.9],
      ]),
    ).toEqual([false, true]);
  });

  it('is found blank where the demo once had two that pointed at paper, and not where they point now', async () => {
    const drill = demo('flush-sensors/pictures/drill.svg');
    expect(
      await blank(drill, [
        [0.78, 0.33],
        [0.71, 0.46],
      ]),
    ).toEqual([true, false]);
    const section = demo('roof-vent/pictures/section.svg');
    expect(
      await blank(section, [
        [0.6, 0.43],
        [0.43, 0.564],
      ]),
    ).toEqual([true, false]);
  });
});

describe('a mark on a photograph', () => {
  /** Paper with a dark bolt head on its left half. */
  const photograph = (width: number) =>
    sharp({ create: { width, height: width / 2, channels: 3, background: '#e9e6e0' } })
      .composite([
        { input: drawing('<circle cx="25" cy="25" r="6" fill="#444"/>', '0 0 100 50'), gravity: 'northwest' },
      ])
      .jpeg()
      .toBuffer();

  it('points at nothing where all is of one light', async () => {
    const bytes = await photograph(600);
    const [bolt, paper] = await blank(bytes, [
      [25 / 600, 25 / 300],
      [0.7, 0.5],
    ]);
    expect([bolt, paper]).toEqual([false, true]);
  });

  it('is not judged where the photograph is too small to tell', async () => {
    expect(await blank(await photograph(200), [[0.7, 0.5]])).toEqual([false]);
  });
});

it('finds nothing blank in a file that cannot be read, of which another rule tells', async () => {
  expect(await blank(Buffer.from('no picture'), [[0.5, 0.5]])).toEqual([false]);
});
