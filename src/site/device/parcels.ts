import type { MadeGuide, SizedFile } from '../guides/made.ts';
import { weightWords } from '../guides/single-file.ts';
import type { Parcel } from '../site-build.ts';

/** Bytes of a guide's photographs, drawings and templates above which a device keeps them only when asked to. */
export const KEPT_UNASKED = 5_000_000;

/**
 * What is not kept on every device that visits a site, by the folder of its guide: each guide in one file, and the
 * photographs, drawings and templates of one where they are heavy. What another page shows is kept for that page.
 *
 * @param needed paths that pages of no guide show
 * @param most bytes of a guide's photographs, drawings and templates that are kept unasked
 */
export function parcelsOf(
  made: readonly MadeGuide[],
  needed: Iterable<string>,
  most: number,
): ReadonlyMap<string, Parcel> {
  const isHeavy = ({ heavy }: MadeGuide) => total(heavy) > most;
  const light = made.filter((one) => !isHeavy(one));
  const kept = new Set([...needed, ...light.flatMap(({ heavy }) => heavy.map(({ path }) => path))]);
  return new Map(
    made.map((one) => {
      const own = isHeavy(one) ? one.heavy.filter(({ path }) => !kept.has(path)) : [];
      const files = [...own, one.alone];
      const folder = one.alone.path.slice(0, one.alone.path.lastIndexOf('/') + 1);
      return [
        folder,
        {
          weight: weightWords(total(files)),
          isHeavy: own.length > 0,
          paths: files.map(({ path }) => path),
        },
      ];
    }),
  );
}

function total(files: readonly SizedFile[]): number {
  return files.reduce((sum, { size }) => sum + size, 0);
}
