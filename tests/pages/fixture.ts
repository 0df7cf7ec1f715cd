import { computeJob } from '../../src/job/compute-job.ts';
import type { Block, Figure, SafetyMessage } from '../../src/model/block.ts';
import type { CutTemplate } from '../../src/model/cut-template.ts';
import type { Guide, Section, Step } from '../../src/model/guide.ts';
import type { Item } from '../../src/model/item.ts';
import type { Job } from '../../src/model/job.ts';
import type { Prose, ProseElement } from '../../src/model/prose.ts';
import type { Platform, Shop } from '../../src/model/shop.ts';
import type { Span } from '../../src/source/span.ts';
import { parseDrive } from '../../src/trade/drives.ts';
import type { SignalWord } from '../../src/trade/signal-words.ts';
import { parseThread } from '../../src/trade/thread.ts';
import { usualWords } from '../../src/trade/words.ts';
import { parseRange } from '../../src/units/parse.ts';
import { base } from '../../src/units/quantity.ts';
import * as make from '../job/builder.ts';

/**
 * A short lamp-cradle guide as a model made by hand: one of each thing that a page prints.
 */

const file = 'lamp-cradle/guide.md';
let offset = 0;

/** A place of its own, in the order of the calls. */
const here = (): Span => ({ file, start: ++offset, end: offset });

const say = make.text;

/** A paragraph. */
export const paragraph = (...children: Prose): Block => make.prose(...children);

const element = (tagName: string, children: Prose): ProseElement<never> =>
  ({ type: 'element', tagName, properties: {}, children, at: here() }) as ProseElement<never>;

const when = (text: string) => ({ value: make.when(text), at: here() });

const where = (condition: string, ...children: Prose): Prose[number] => ({
  type: 'where',
  when: when(condition),
  children,
  at: here(),
});

const message = (word: SignalWord, hazard: string, ...body: Prose): SafetyMessage => ({
  type: 'message',
  word,
  hazard: [say(hazard)],
  body: [element('p', body)],
  when: null,
  at: here(),
});

const figure = (path: string, caption: string, alt: string, more: Partial<Figure> = {}): Figure => ({
  type: 'figure',
  caption: [say(caption)],
  src: { value: `pictures/${path}`, at: here() },
  path: `lamp-cradle/pictures/${path}`,
  alt: { value: alt, at: here() },
  shows: null,
  crop: null,
  blur: [],
  zoom: null,
  marks: [],
  body: [],
  when: null,
  at: here(),
  ...more,
});

function drive(text: string) {
  const parsed = parseDrive(text);
  if (!parsed.ok) throw new Error(parsed.message);
  return { value: parsed.drive, at: here() };
}

function thread(text: string) {
  const parsed = parseThread(text);
  if (!parsed.ok) throw new Error(parsed.message);
  return { value: parsed.thread, at: here() };
}

function range(text: string) {
  const parsed = parseRange(text, 'length');
  if (!parsed.ok) throw new Error(parsed.message);
  return { value: parsed.range, at: here() };
}

const placed = (item: Item): Item => ({ ...item, at: here(), idAt: here() });

const needHeading = here();
const needItems: Item[] = [
  make.wear('eye-protection', { label: 'Eye protection' }),
  make.tool('trim-lever', { label: 'Trim lever' }),
  make.tool('socket-7', { label: '7 mm socket', or: 'nut-driver-7' }),
  make.tool('nut-driver-7', { label: '7 mm nut driver' }),
  make.tool('socket-13', { label: '13 mm socket' }),
  make.tool('torque-60', { label: 'Torque wrench, 10–60 N·m' }),
  make.tool('rotary-cutter', { label: 'Rotary cutter, 6 mm burr' }),
  make.supply('tape', { label: 'Masking tape, 25 mm', quantity: '2 m', temporary: true }),
  make.kit('cradle', { label: 'Cradle' }),
  {
    ...make.kit('m8-nut', { label: 'M8 flange nut', count: 4, torque: '25 N·m' }),
    drive: drive('hex 13'),
    thread: thread('M8x1.25'),
    grade: { value: '8', at: here() },
    pattern: { value: 'cross', at: here() },
  } as Item,
  {
    ...make.measure('clearance', { label: 'Ground clearance under the cradle' }),
    expect: range('180..240 mm'),
  } as Item,
].map(placed);

const offHeading = here();
const offItems: Item[] = [
  make.part('cover', { label: 'Bumper cover' }),
  {
    ...make.fastener('arch-screw', { label: 'Arch screw', side: 'each', holds: 'cover' }),
    drive: drive('hex 7'),
  } as Item,
  make.connector('fog-plug', { label: 'Fog lamp plug', side: 'each', on: 'cover', when: 'fog' }),
].map(placed);

/** The template of the notch. */
const notch: CutTemplate = {
  id: 'notch',
  title: 'Lower grille notch',
  panel: { value: 'cover', at: here() },
  face: 'outside',
  side: null,
  datums: [
    { label: 'Vehicle centreline', axis: 'vertical', position: base<'length'>(0), when: null, at: here() },
    {
      label: 'Lower edge of the cover',
      axis: 'horizontal',
      position: base<'length'>(0),
      when: null,
      at: here(),
    },
  ],
  outlines: [],
  arcs: [],
  holes: [],
  slots: [],
  patterns: [],
  keepOuts: [],
  panelOutlines: [],
  tolerance: null,
  web: null,
  setBack: null,
  curveRadius: null,
  curveAxis: 'vertical',
  join: 'round',
  cutterRadius: null,
  cutterDiameter: null,
  variant: null,
  at: here(),
};

const step = (id: string, title: string, blocks: readonly Block[], more: Partial<Step> = {}): Step => ({
  ...make.stepOf({ id, title, do: [] }),
  blocks,
  at: here(),
  ...more,
});

const section = (
  id: string,
  title: string,
  at: Span,
  steps: readonly Step[],
  intro: readonly Block[] = [],
): Section => ({
  id,
  title: [say(title)],
  titleText: title,
  depth: 2,
  intro,
  steps,
  idAt: at,
  at,
});

const each = { value: 'each', at: here() } as const;
const time = (least: number, likely: number, most: number) => ({
  value: make.estimate(least, likely, most),
  at: here(),
});

const cold = message(
  'notice',
  'Cold trim cracks',
  say('Below about 10 °C the edge splits when levered. Warm it first.'),
);
const wide = message(
  'caution',
  'Wide panel',
  say('A cover held by one person bends and can fall on a foot. Lift it with a helper.'),
);
const chips = message(
  'warning',
  'Flying chips',
  say('Plastic chips can injure an eye. Wear '),
  make.mention('wear', 'eye-protection'),
  say(', and feel behind the panel for wires and hoses first.'),
);

const arch = step(
  'arch',
  'Free the arch edge',
  [
    paragraph(
      say('Work the '),
      make.mention('tool', 'trim-lever'),
      say(' behind the edge. '),
      make.action('remove', 'arch-screw', { with: 'socket-7' }),
      say('.'),
    ),
    figure('arch.svg', 'Where the lever goes in', 'Rear edge of the arch trim, seen from below', {
      shows: { value: 'left', at: here() },
      marks: [
        {
          letter: 'A',
          point: { x: 0.34, y: 0.44 },
          also: [],
          text: [say('lever tip, behind the lip')],
          at: here(),
        },
        {
          letter: 'B',
          point: { x: 0.25, y: 0.31 },
          also: [],
          text: [make.mention('fastener', 'arch-screw')],
          at: here(),
        },
      ],
    }),
    {
      type: 'why',
      title: null,
      body: [element('p', [say('The screw points straight up and is the one that gets forgotten.')])],
      when: null,
      at: here(),
    },
  ],
  { side: each, time: time(3, 4, 6) },
);

const coverOff = step(
  'cover-off',
  'Draw the cover forward',
  [
    wide,
    paragraph(
      say('Ease it 100 mm forward. '),
      where('fog', say('Reach behind and '), make.action('disconnect', 'fog-plug'), say('.')),
      say(' Then '),
      make.action('remove', 'cover', { say: 'lift away' }),
      say('.'),
    ),
  ],
  { people: 2, time: time(4, 6, 8) },
);

const fogAim = step(
  'fog-aim',
  'Note where the fog lamps point',
  [paragraph(say('Mark the beam on the wall.'))],
  {
    when: when('fog'),
    time: time(2, 2, 2),
  },
);

const cutNotch = step(
  'cut-notch',
  'Cut the notch',
  [
    chips,
    paragraph(
      make.action('apply', 'tape', { amount: '0.6 m' }),
      say('. Lay the '),
      make.mention('cut-template', 'notch'),
      say(' template on the datums, then '),
      make.action('cut', 'notch', { with: 'rotary-cutter' }),
      say('.'),
    ),
  ],
  { time: time(8, 10, 15), wait: { value: base<'time'>(30), at: here() } },
);

const hang = step(
  'hang',
  'Hang the cradle',
  [
    paragraph(
      make.action('fit', 'cradle'),
      say(', '),
      make.action('start', 'm8-nut'),
      say(' and then '),
      make.action('tighten', 'm8-nut', { with: 'torque-60 socket-13' }),
      say('. See '),
      make.mention('step', 'cut-notch'),
      say(' for the notch.'),
    ),
  ],
  { people: 2, time: time(6, 8, 10), signOff: true },
);

const prove: Block = {
  type: 'prove',
  needs: [],
  time: null,
  title: [say('Lamps')],
  body: [
    element('ul', [
      element('li', [where('fog', say('Fog lamps light, both sides'))]),
      element('li', [say('Headlamps aim as before, see '), make.mention('step', 'hang')]),
      element('li', [make.action('measure', 'clearance')]),
    ]),
  ],
  when: null,
  at: here(),
};

const owner: Block = {
  type: 'owner',
  title: null,
  body: [element('p', [say('The lowest point in front is now the cradle.')])],
  when: null,
  at: here(),
};

const options = make.options({
  fog: 'Front fog lamps',
  lamps: { halogen: 'Halogen headlamps', led: 'LED headlamps' },
});

/** The guide. */
export const guide: Guide = {
  id: 'lamp-cradle',
  file,
  title: { value: 'Auxiliary lamp cradle, behind the front bumper cover', at: here() },
  platform: { value: 'larkspur-dray', at: here() },
  partNumber: { value: 'QL-220', at: here() },
  revision: { value: '3', at: here() },
  updated: { value: '2026-10-02', at: here() },
  meantFor: null,
  notFor: null,
  doneBy: null,
  takenOff: null,
  changes: null,
  words: usualWords,
  zones: new Map(),
  builds: { options, listed: null, impossible: [] },
  items: new Map([...needItems, ...offItems].map((item) => [item.id, item])),
  templates: new Map([['notch', notch]]),
  sequences: new Map(),
  nones: [{ of: 'conditions', at: here() }],
  contents: null,
  sections: [
    section('need', 'What you need', needHeading, []),
    section('off', 'What comes off', offHeading, []),
    section('strip-down', 'Strip down', here(), [arch, coverOff, fogAim], [cold]),
    section(
      'cut',
      'Cut',
      here(),
      [cutNotch],
      [{ type: 'template', template: { value: 'notch', at: here() }, when: null, at: here() }],
    ),
    section('fit', 'Fit', here(), [hang]),
    section('prove', 'Prove it', here(), [], [prove, owner]),
  ],
  opening: [paragraph(say('Two driving lamps hang in a steel cradle on the bumper beam.'))],
  footnotes: [],
  links: [],
  pictures: [],
  anchors: new Set([
    'need',
    'off',
    'strip-down',
    'cut',
    'fit',
    'prove',
    'arch',
    'cover-off',
    'cut-notch',
    'hang',
    'notch',
  ]),
  visit: null,
};

/** Its job: fog lamps change it, the headlamps do not. */
export const job: Job = computeJob(guide);

const platform: Platform = {
  id: 'larkspur-dray',
  file: 'platforms/larkspur-dray.md',
  title: { value: 'Larkspur Dray, panel van', at: here() },
  builds: { options: options.slice(1), listed: null, impossible: [] },
  words: usualWords,
  parts: new Map(),
  conditions: new Map(),
  ratings: new Map(),
  zones: new Map(),
  drawing: null,
  links: [],
  pictures: [],
  sections: [
    {
      id: null,
      title: [],
      titleText: '',
      blocks: [paragraph(say('The Dray is an invented panel van.'))],
      parts: [],
      conditions: [],
      ratings: [],
    },
    {
      id: 'know',
      title: [say('What to know before you start')],
      titleText: 'What to know before you start',
      blocks: [paragraph(say('The battery is on the left.'))],
      parts: [],
      conditions: [],
      ratings: [],
    },
  ],
};

/** The shop. */
export const shop: Shop = {
  settings: {
    name: 'Quarrel Lane Fitting',
    logo: null,
    accent: '#0b6e5f',
    address: null,
    contact: null,
    units: 'metric',
    papers: ['a4', 'letter'],
    crew: 2,
    unreleased: 'plain',
    signalWords: 'ansi',
    words: usualWords,
    plainLanguage: { off: new Set() },
    at: here(),
  },
  crib: new Map(),
  supplies: new Map(),
  fastenerTypes: new Map(),
  ownPictures: new Map(),
  platforms: new Map([[platform.id, platform]]),
  files: new Map(),
};

/** The guide with another title, for tests of escaping. */
export function titled(title: string): Guide {
  return { ...guide, title: { value: title, at: here() } };
}
