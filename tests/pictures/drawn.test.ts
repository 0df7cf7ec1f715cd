import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import sharp from 'sharp';
import { describe, expect, it } from 'vitest';
import { drawings } from '../../guides/drawings/all.ts';
import { photographs, taken } from '../../guides/drawings/photographs.ts';
import { repository } from '../driver.ts';
import { sampleOf } from '../samples.ts';

const guides = join(repository, 'guides');

/** Pictures that are kept below `guides/`, by how their names end. */
const kept = (ending: string) =>
  readdirSync(guides, { recursive: true, encoding: 'utf8' }).filter(
    (path) => /(^|\/)pictures\//.test(path) && path.endsWith(ending),
  );

describe('what the scripts of the demo draw', () => {
  it('is each drawing that is kept, byte for byte, and no other', () => {
    expect(kept('.svg').toSorted()).toEqual([...drawings.keys()].toSorted());
    const changed = [...drawings].filter(([path, svg]) => readFileSync(join(guides, path), 'utf8') !== svg);
    expect(changed.map(([path]) => path)).toEqual([]);
  });

  it('is each rendering that is kept, and no other', async () => {
    expect(kept('.jpg').toSorted()).toEqual(photographs.map(({ file }) => file).toSorted());
    for (const photograph of sampleOf(photographs, 1)) {
      const [file, made] = [readFileSync(join(guides, photograph.file)), await taken(photograph)];
      // Another processor may round a pixel otherwise; on the same one they are the same bytes.
      if (!file.equals(made)) expect(await unlike(file, made), photograph.file).toBeLessThan(0.0005);
    }
  });
});

/** The share of samples by which two pictures are seen to differ; all of them where they stand otherwise. */
async function unlike(one: Buffer, other: Buffer): Promise<number> {
  const [a, b] = await Promise.all(
    [one, other].map(async (bytes) => ({
      orientation: (await sharp(bytes).metadata()).orientation,
      ...(await sharp(bytes).raw().toBuffer({ resolveWithObject: true })),
    })),
  );
  if (
    !a ||
    !b ||
    a.orientation !== b.orientation ||
    a.info.width !== b.info.width ||
    a.data.length !== b.data.length
  )
    return 1;
  return (
    a.data.reduce((sum, value, i) => sum + (Math.abs(value - (b.data[i] ?? 0)) > 12 ? 1 : 0), 0) /
    a.data.length
  );
}
