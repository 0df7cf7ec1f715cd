/**
 * Writes the drawings of the demo guides beside the guides that use them.
 * Run from anywhere: `npx tsx guides/drawings/draw.ts`. The drawings are kept in git, so the build needs no drawing.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { drawings } from './all.ts';

for (const [path, svg] of drawings) {
  const file = join(import.meta.dirname, '..', path);
  mkdirSync(dirname(file), { recursive: true });
  writeFileSync(file, svg);
}
