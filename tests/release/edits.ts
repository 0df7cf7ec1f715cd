import { readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { readGuide } from '../../src/guide/index.ts';
import { computeJob } from '../../src/job/index.ts';
import type { GuideRecord } from '../../src/release/record.ts';
import { recordOf } from '../../src/release/record-of.ts';
import { diskFiles } from '../../src/shop/files/disk-files.ts';
import { readText } from '../../src/shop/files/text-files.ts';
import { withTexts } from '../../src/shop/files/with-texts.ts';
import { guideContext } from '../../src/shop/guide-context.ts';
import { inspectGuide } from '../../src/shop/inspect/inspect-guide.ts';
import { openWorkspace, type Workspace } from '../../src/shop/open-workspace.ts';

import { long } from '../samples.ts';

const demo = resolve(import.meta.dirname, '../../guides');

/** An edit of a text: what stands there, and what takes its place; what is looked for must be there. */
export type Edit = readonly [from: string | RegExp, to: string];

/** What a careful person would list of some edits, written before they were ever compared. */
export interface EditOfHistory {
  readonly name: string;
  readonly edits: readonly Edit[];
  /** A line for each change of the work: thing, what of it, what it bears on. */
  readonly work: readonly string[];
  /** What is only worded otherwise. */
  readonly words: readonly string[];
  /** Ids that are others now. */
  readonly renamed?: readonly string[];
}

const topClips = /::step\[Lift the top clips\][\s\S]*?(?=::step\[Draw the cover forward\])/;
const guideText = readFileSync(resolve(demo, 'lamp-cradle/guide.md'), 'utf8');
const topText = topClips.exec(guideText)?.[0] ?? '';

/** Ten edits of the lamp cradle, one upon the other. */
export const history: readonly EditOfHistory[] = [
  {
    name: 'a torque',
    edits: [[/(M8 flange nut\].*)torque="25 N·m"/, '$1torque="24 N·m"']],
    work: ['M8 flange nut: torque (torque)'],
    words: [],
  },
  {
    name: 'a sentence and a title in other words',
    edits: [
      ['Lift both ends until the cradle is level', 'Raise both ends until the cradle sits level'],
      ['::step[Hang the cradle on the beam]', '::step[Put the cradle on the beam]'],
    ],
    work: [],
    words: ['Put the cradle on the beam: title (words)', 'Put the cradle on the beam: prose (words)'],
  },
  {
    name: 'a step that is done earlier',
    edits: [
      [topClips, ''],
      ['::step[Raise the front]', `${topText}::step[Raise the front]`],
    ],
    work: [
      'Lift the top clips: moved (work)',
      'Press in the top clips: moved (work), with Lift the top clips',
    ],
    words: [],
  },
  {
    name: 'a safety message that is new',
    edits: [
      [
        ':remove[top-clip]{with=clip-lifter}',
        ':::caution[Pins that jump]\nA pin that jumps out can hurt an eye. Wear :wear[eye-protection].\n:::\n\n:remove[top-clip]{with=clip-lifter}',
      ],
    ],
    work: [
      'Lift the top clips: caution added (safety)',
      'Press in the top clips: caution added (safety), with Lift the top clips',
    ],
    words: [],
  },
  {
    name: 'a time and a wait',
    edits: [
      [
        '::step[Lay the loom]{#wiring time="8/10/18 min"',
        '::step[Lay the loom]{#wiring time="10/12/20 min" wait="5 min"',
      ],
    ],
    work: ['Lay the loom: time (time)', 'Lay the loom: wait (time)'],
    words: [],
  },
  {
    name: 'a hole of a template',
    edits: [['centre="84,30"', 'centre="84,31"']],
    work: ['Lower notch: hole (geometry)'],
    words: [],
  },
  {
    name: 'another id, another label',
    edits: [
      [/\bliner-screw\b/g, 'arch-liner-screw'],
      ['::part[Bumper cover]', '::part[Front bumper cover]'],
    ],
    work: [],
    words: [
      'Front bumper cover: called (words)',
      'Front bumper cover: called in a sentence (words)',
      'Refit the front bumper cover: title (words)',
    ],
    renamed: ['arch-liner-screw'],
  },
  {
    name: 'washers that are new in the box',
    edits: [
      ['  m8-nut: 4\n', '  m8-nut: 4\n  m8-washer: 4\n'],
      ['::kit[Lamp loom]{#loom', '::kit[M8 washer]{#m8-washer count=4}\n::kit[Lamp loom]{#loom'],
      ['over the four studs and :start[m8-nut]', 'over the four studs, :fit[m8-washer] and :start[m8-nut]'],
    ],
    work: [
      'Auxiliary lamp cradle, behind the front bumper cover: packing list (work)',
      'M8 washer: added (work)',
      'Put the cradle on the beam: prose (work)',
    ],
    words: [],
  },
  {
    name: 'a step that is new, and a number in a sentence',
    edits: [
      [
        '::step[Try the cradle and the cover]',
        '::step[Look over the beam]{#look-over time="2 min"}\n\nLook for dents round the four studs.\n\n::step[Try the cradle and the cover]',
      ],
      ['one turn every 150 mm', 'one turn every 100 mm'],
    ],
    work: ['Look over the beam: added (work)', 'Lay the loom: prose (work)'],
    words: [],
  },
  {
    name: 'a step that is taken out, more tape, and a warning in other words',
    edits: [
      [/::step\[Look over the beam\][\s\S]*?(?=::step)/, ''],
      ['{#tape quantity="2 m" temporary}', '{#tape quantity="2.5 m" temporary}'],
      ['Hot plastic chips can blind an eye.', 'Hot chips of plastic can blind an eye.'],
    ],
    work: [
      'Masking tape, 25 mm: quantity (work)',
      'Look over the beam: taken out (work)',
      'Cut the notch and drill the bezel holes: warning (safety)',
    ],
    words: [],
  },
];

/** The demo's lamp cradle as it is, and after each edit of its history. */
export async function states(): Promise<readonly GuideRecord[]> {
  let text = guideText;
  const records = [await recordOfText(text)];
  for (const { edits, name } of history) {
    for (const [from, to] of edits) {
      const edited = text.replace(from, to);
      if (edited === text) throw new Error(`${name}: ${from} does not stand in the guide any more`);
      text = edited;
    }
    records.push(await recordOfText(text));
  }
  return records;
}

async function recordOfText(text: string): Promise<GuideRecord> {
  const path = 'lamp-cradle/guide.md';
  return demoRecord(path, new Map([[path, text]]));
}

let opened: Promise<Workspace> | null = null;

/** The record of a guide of the demo, with some texts in the place of its own. */
export async function demoRecord(
  path: string,
  texts: ReadonlyMap<string, string> = new Map(),
): Promise<GuideRecord> {
  opened ??= openWorkspace(diskFiles(demo));
  const workspace = await opened;
  const { shop, procedures } = workspace;
  const files = withTexts(workspace.files, texts);
  // Every rule is run over each state only in the long run.
  if (long) {
    const { findings } = await inspectGuide(path, workspace, { shop, procedures, files });
    const errors = findings.filter(({ severity }) => severity === 'error');
    if (errors.length > 0) throw new Error(`${path}: ${errors.map(({ message }) => message).join('; ')}`);
  }
  const source = readText(files, path);
  const guide = source && readGuide(source, guideContext(shop, procedures, files), () => undefined);
  if (!guide) throw new Error(`${path} cannot be read`);
  return recordOf(guide, computeJob(guide));
}
