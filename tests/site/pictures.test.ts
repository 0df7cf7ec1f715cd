import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { publishPicture } from '../../src/site/guides/pictures.ts';
import { noStore } from '../../src/store/store.ts';

const wish = { path: 'a/pictures/x.png', figure: null };

describe('a published picture', () => {
  it('has WebP for screens and one JPEG for paper, and every file is used', async () => {
    const photo = sharp({ create: { width: 1000, height: 500, channels: 3, background: '#804020' } });
    const published = await publishPicture(wish, await photo.png().toBuffer(), noStore);
    const paths = published?.files.map(({ path }) => path) ?? [];
    expect(paths.map((path) => path.replace(/^pictures\/[0-9a-f]+/, ''))).toEqual([
      '.webp',
      '.webp',
      '.webp',
      '.jpg',
    ]);
    const { src, width, height, sources } = published?.view ?? {};
    expect([src, width, height]).toEqual([paths[3], 1000, 500]);
    expect(sources).toEqual([
      { type: 'image/webp', srcset: `${paths[0]} 480w, ${paths[1]} 800w, ${paths[2]} 1000w` },
    ]);
  });

  it('is one file where it is a drawing, which needs no other on paper', async () => {
    const drawing = '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 30"><path d="M1 1h9"/></svg>';
    const published = await publishPicture({ ...wish, path: 'a/x.svg' }, Buffer.from(drawing), noStore);
    expect(published?.view).toMatchObject({ src: published?.files[0]?.path, sources: [] });
    expect(published?.files).toHaveLength(1);
  });

  it('is none where the file cannot be decoded', async () => {
    expect(await publishPicture(wish, Buffer.from('no picture'), noStore)).toBeNull();
  });
});
