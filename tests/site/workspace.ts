import { mkdtemp, readdir, readFile, rm } from 'node:fs/promises';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { onTestFinished } from 'vitest';
import type { Guide } from '../../src/model/guide.ts';
import type { Job } from '../../src/model/job.ts';
import { memoryFiles } from '../../src/shop/files/memory-files.ts';
import type { Inspection } from '../../src/shop/inspect/inspection.ts';
import * as fixture from '../pages/fixture.ts';

/** A drawing, for every picture that the fixture shows. */
export const drawing =
  '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 640 400"><path d="M20 20H620V380H20Z" fill="none" stroke="#000"/></svg>';

/** The fixture's files; more can be added, or put in the place of one. */
export function files(more: { readonly [path: string]: string } = {}) {
  return memoryFiles({ 'lamp-cradle/pictures/arch.svg': drawing, ...more });
}

/** The fixture as a run has it after checking, without a finding. */
export function inspection(
  guide: Guide = fixture.guide,
  more: Partial<Inspection> = {},
  job: Job = fixture.job,
): Inspection {
  const figures = guide.sections
    .flatMap(({ intro, steps }) => [...intro, ...steps.flatMap((step) => step.blocks)])
    .filter((block) => block.type === 'figure');
  const pictures = figures.flatMap((figure) =>
    figure.src ? [{ path: figure.path, src: figure.src, alt: figure.alt, figure, at: figure.at }] : [],
  );
  const shown = { ...guide, pictures };
  return {
    shop: fixture.shop,
    guides: [{ guide: shown, job }],
    visits: [],
    findings: [],
    sources: new Map(),
    soundGuides: new Set([guide.id]),
    brokenForAll: [],
    guideCount: 1,
    templates: [],
    ...more,
  };
}

/** A folder for one test, nested and with spaces in its name as on a technician's stick. */
export async function outputFolder(): Promise<string> {
  const folder = await mkdtemp(join(tmpdir(), 'baybook site '));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  return join(folder, 'the stick', 'guides of ours');
}

/** Every file below a folder with its bytes, by path, sorted. */
export async function filesBelow(folder: string): Promise<ReadonlyMap<string, string>> {
  const entries = await readdir(folder, { recursive: true, withFileTypes: true }).catch(() => []);
  const paths = entries.filter((entry) => entry.isFile()).map((entry) => join(entry.parentPath, entry.name));
  const contents = await Promise.all(
    paths
      .sort()
      .map(async (path) => [path.slice(folder.length + 1), await readFile(path, 'latin1')] as const),
  );
  return new Map(contents);
}
