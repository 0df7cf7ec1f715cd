/**
 * Writes the photograph-like pictures of the demo guides beside the guides that use them.
 * Run from anywhere: `npx tsx guides/drawings/take.ts`. They are kept in git, so the build needs none of it.
 */
import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { photographs, taken } from './photographs.ts';

for (const photograph of photographs)
  writeFileSync(join(import.meta.dirname, '..', photograph.file), await taken(photograph));
