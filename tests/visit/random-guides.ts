import { Dice } from '../job/oracle/jobs.ts';

/** A procedure that guides may share: what it is called, and its text. */
interface Shared {
  readonly id: string;
  readonly text: string;
}

const procedure = (title: string, body: string) => `---\ntitle: ${title}\n---\n\n${body}\n`;

/** Procedures that stand on each other in this order, as an author would place them. */
const procedures: readonly Shared[] = [
  {
    id: 'isolate',
    text: procedure(
      'Isolate the battery',
      '::condition[Battery isolated]{#battery-off set="unbolt the negative lead" clear="bolt it down"}\n\n::step[Isolate the battery]{#isolate time="3/4/8 min"}\n\n:::warning[Short circuit]\nA spanner across the battery burns skin. Keep it to the negative post.\n:::\n\n:set[battery-off].',
    ),
  },
  {
    id: 'lid-off',
    text: procedure(
      'Take off the lid',
      '::part[Lid]{#lid covers=panel}\n::part{#panel}\n::fastener[Lid clip]{#lid-clip type=push-clip count=4 holds=lid}\n\n::step[Take off the lid]{#lid-off time="2/3/6 min"}\n\n:remove[lid-clip] and :remove[lid].',
    ),
  },
  {
    id: 'panel-down',
    text: procedure(
      'Fold the panel down',
      '::part{#panel}\n::connector[Panel plug]{#panel-plug on=panel when=fog}\n::fastener[Panel clip]{#panel-clip type=push-clip count=6 side=each holds=panel}\n\n::step[Draw the clips]{#clips side=each time="2..4 min"}\n\n:remove[panel-clip].\n\n::step[Fold the panel down]{#panel-down people=2 time="3/5/9 min"}\n\n:::caution[Sharp edge]\nThe edge cuts a hand. Wear gloves.\n:::\n\n:where[:disconnect[panel-plug].]{when=fog}\n:move-aside[panel].',
    ),
  },
];

/** What a guide does between strip-down and refit: the declarations, and the steps. */
type Work = (dice: Dice) => {
  readonly declared: string;
  readonly steps: string;
  readonly needsDown?: boolean;
};

const minutes = (dice: Dice) => `${2 + dice.below(6)}..${9 + dice.below(12)} min`;

const works: readonly Work[] = [
  (dice) => ({
    declared: '::tool{#drill}\n::part[Beam]{#beam}\n',
    steps: `:::cut-template[Holes]{#holes panel=beam face=outside}\n::datum[Middle]{axis=vertical at="0 mm"}\n::datum[Edge]{axis=horizontal at="0 mm"}\n::hole[Hole]{#hole centre="0,0" diameter="9 mm" unit=mm}\n:::\n\n::step[Try it]{#trial time="${minutes(dice)}"}\n\nHold it up.\n\n::step[Drill]{#drill-it time="${minutes(dice)}"}\n\n:::warning[Flying swarf]\nChips blind an eye. Wear :wear[eye-protection].\n:::\n\n:drill[hole]{with=drill trial=trial}.\n`,
  }),
  (dice) => ({
    declared:
      '::kit[Bar]{#bar}\n::supply{#sealant quantity="20 ml"}\n::condition[Bead cured]{#cured stays set="let it cure"}\n',
    steps: `::step[Bed the bar]{#bed time="${minutes(dice)}"}\n\n:apply[sealant]{amount="15 ml" on=bar}. :fit[bar].\n\n::step[Let it cure]{#cure time="1 min" wait="${2 + dice.below(5)} h"}\n\n:set[cured].\n\n::step[Hang the load on it]{#load time="${minutes(dice)}" needs="cured sealant"}\n\nHang the load on the bar.\n`,
  }),
  (dice) => ({
    declared:
      '::tool{#torque}\n::tool{#socket-13}\n::kit[Bracket]{#bracket}\n::kit[Bracket nut]{#nut count=4 thread=M8x1.25 grade=8 drive="hex 13" torque="20 N·m" holds=bracket}\n',
    steps: `::step[Hang the bracket]{#hang people=2 time="${minutes(dice)}"}\n\n:fit[bracket] and :start[nut].\n\n::step[Tighten it]{#tighten time="${minutes(dice)}"${dice.chance(50) ? ' any-order' : ''} after=hang}\n\n:tighten[nut]{with="torque socket-13"}.\n`,
  }),
  (dice) => ({
    declared: '::kit[Feed loom]{#feed}\n::connector[Feed plug]{#feed-plug on=feed}\n',
    steps: `::step[Lay the feed]{#lay time="${minutes(dice)}" any-order}\n\n:fit[feed]{say=lay}. :connect[feed-plug].\n`,
    needsDown: true,
  }),
  (dice) => ({
    declared: '::supply[Marking tape]{#tape quantity="1 m" temporary}\n',
    steps: `::step[Mark it]{#mark time="${minutes(dice)}" wait="${10 + dice.below(40)} min"}\n\n:apply[tape]{amount="0.5 m"}, and look at it from afar. Then :take-off[tape].\n`,
  }),
];

const lists = { wear: 'wear', tools: 'tool', supplies: 'supply', kit: 'kit', conditions: 'condition' };

/** What a guide says it does without: each list of which nothing is declared. */
function nones(declared: string): string {
  const without = Object.entries(lists).filter(
    ([, leaf]) => !new RegExp(`^::${leaf}\\b`, 'm').test(declared),
  );
  return without.map(([of]) => `::none{of=${of}}\n`).join('');
}

/** A guide that a careful author could have written: strip-down by procedures, its own work, and all undone in reverse. */
function guideOf(name: string, dice: Dice): string {
  const placed = procedures.filter(() => dice.chance(70));
  const chosen = works.filter(() => dice.chance(45)).map((work) => work(dice));
  const own = chosen.filter(({ needsDown }) => !needsDown || placed.some(({ id }) => id === 'panel-down'));
  const declared = `::wear{#eye-protection}\n${own.map((one) => one.declared).join('')}`;
  const extra = `::step[Look at the ${name}]{#look time="${minutes(dice)}"}\n\nLook at it with :wear[eye-protection] on.\n`;
  return [
    `---\ntitle: ${name[0]?.toUpperCase()}${name.slice(1)}, on the van\nplatform: example-van\n---\n`,
    `## What you need {#need}\n\n${declared}${nones(declared + placed.map(({ text }) => text).join(''))}`,
    `## Strip down {#strip-down}\n\n${placed.map(({ id }) => `::procedure{of=${id} #${id}-placed}`).join('\n\n')}\n`,
    `## Work {#work}\n\n:::notice[The ${name} scratches]\nThe ${name} scratches paint. Lay a cloth under it.\n:::\n\n${own.map(({ steps }) => steps).join('\n')}\n${extra}`,
    `## Refit {#refit}\n\n${placed
      .map(({ id }) => `::reverse{of=${id}-placed}`)
      .reverse()
      .join('\n\n')}\n`,
    `## Prove it {#prove}\n\n:::prove[The ${name}]\n- It holds\n:::\n`,
  ].join('\n');
}

/** The files of a workspace with some guides that share procedures, all of one seed. */
export function randomWorkspace(seed: number, names: readonly string[]): { readonly [path: string]: string } {
  const dice = new Dice(seed);
  return {
    'shop.yaml': 'name: Example Fitting\ncrew: 2\n',
    'tools.yaml':
      'drill: {name: 9 mm drill, diameter: 9 mm}\neye-protection: {name: Eye protection, wear: yes}\ntorque: {name: Torque wrench, range: 5..60 N·m}\nsocket-13: {name: 13 mm socket, drive: hex 13}\n',
    'fasteners.yaml': 'push-clip: {name: Push clip}\n',
    'supplies.yaml': 'sealant: {name: Sealant, cures: 2 h, open-time: 90 min}\n',
    'platforms/example-van.md':
      '---\ntitle: Example van\noptions:\n  fog: Front fog lamps\n---\n\nA van.\n\n::part[Panel]{#panel}\n',
    ...Object.fromEntries(procedures.map(({ id, text }) => [`procedures/${id}.md`, text])),
    ...Object.fromEntries(names.map((name) => [`${name}/guide.md`, guideOf(name, dice)])),
  };
}
