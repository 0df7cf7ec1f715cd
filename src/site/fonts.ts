import { readFile } from 'node:fs/promises';
import { createRequire } from 'node:module';
import type { Fonts } from '../cut/drawing/metrics.ts';
import { once } from '../job/once.ts';

/**
 * The fonts that lettering on templates is set in, as shipped with Baybook: no system font can change a sheet. They are
 * read once, so that all work of one process measures with the same tables.
 */
export const readFonts = once(async (): Promise<Fonts> => {
  const { resolve } = createRequire(import.meta.url);
  const font = (name: string) => readFile(resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`));
  return { regular: await font('DejaVuSans'), bold: await font('DejaVuSans-Bold') };
});
