import { resolve } from 'node:path';
import { beforeAll, expect, test } from 'vitest';
import { planTemplate } from '../../src/cut/draw-template.ts';
import { templateVariants } from '../../src/job/index.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { inspectGuide } from '../../src/shop/inspect/inspect-guide.ts';
import { openWorkspace, type Workspace } from '../../src/shop/open-workspace.ts';
import { repository } from '../driver.ts';
import { pictureStore } from '../picture-store.ts';
import { CONTEXT } from './fixtures.ts';

let workspace: Workspace;

beforeAll(async () => {
  workspace = await openWorkspace(diskFiles(resolve(repository, 'guides')), await pictureStore());
});

// The first sheet bears the proof square. An opening of 401 mm square is more than two sheets of A4 either way, so
// that a plain grid takes six of them; turned round its waste middle it takes four.
test.each([
  ['roof-vent', 'opening', [5]],
  ['flush-sensors', 'holes', [3, 3]],
  ['side-awning', 'holes', [7]],
  ['lamp-cradle', 'notch', [1]],
])('%s, %s: so many sheets of A4, the proof sheet among them', async (name, id, sheets) => {
  const { value } = await inspectGuide(`${name}/guide.md`, workspace);
  const template = value?.guide.templates.get(id);
  if (!value || !template) throw new Error(`${name} has no template ${id}`);
  const pages = templateVariants(template, value.guide, value.job).flatMap((variant) =>
    planTemplate(variant.template, { ...CONTEXT, papers: ['a4'] }).sides.map(({ plans }) => plans[0]?.pages),
  );
  expect(pages).toEqual(sheets);
});
