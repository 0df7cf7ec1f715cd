import { readdirSync, readFileSync } from 'node:fs';
import { resolve } from 'node:path';
import { describe, expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../../src/shop/index.ts';
import { noStore } from '../../../src/store/store.ts';

/**
 * What the trade says every day, each line in the smallest guide that says it (`tests/cases/trade-says`, where they pass
 * without a finding), and here in each way that a fitter gets it wrong.
 */
const folder = resolve(import.meta.dirname, '../../cases/trade-says');
const shared = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((path) =>
  /^(?:[a-z]+\.yaml|platforms.*\.md)$/.test(path),
);
const text = (path: string) => readFileSync(resolve(folder, path), 'utf8');

/** The codes of what a guide is told once some of its words are others; each must stand in it. */
async function codes(
  name: string,
  edits: readonly (readonly [string, string])[],
): Promise<readonly string[]> {
  const guide = edits.reduce(
    (now, [from, to]) => {
      expect(now).toContain(from);
      return now.replace(from, to);
    },
    text(`${name}/guide.md`),
  );
  const files = Object.fromEntries(shared.map((path) => [path, text(path)]));
  const { findings } = await inspect(memoryFiles({ ...files, [`${name}/guide.md`]: guide }), noStore);
  return [...new Set(findings.map(({ code }) => code))];
}

type Slip = readonly [what: string, edits: readonly (readonly [string, string])[], code: string];

const slips: { readonly [name: string]: readonly Slip[] } = {
  'look-alikes': [['two labels are one', [['Spacer, 18 mm', 'Spacer, 12 mm']], 'label-repeated']],
  stack: [
    [
      'a spacer goes in after the nut is tight',
      [
        [' and :fit[spacer-18] behind', ''],
        [':tighten[nut].', ':tighten[nut]. :fit[spacer-18] behind.'],
      ],
      'stack-open',
    ],
    ['no sentence puts a spacer in', [[' and :fit[spacer-18] behind', '']], 'kit-left-in-box'],
    ['no sentence puts a washer in', [[':fit[washer], one at each end.', '']], 'kit-left-in-box'],
    ['a washer is too few', [['#washer count=4', '#washer count=3']], 'stack-count-differs'],
    ['a washer is too many', [['#washer count=4', '#washer count=5']], 'stack-count-differs'],
    ['a nut is too few', [['#nut count=2', '#nut count=1']], 'stack-count-differs'],
    ['a bolt is too short for its nut', [['length="50 mm"', 'length="38 mm"']], 'bolt-short'],
    [
      'the spacers are changed over',
      [
        [
          'length="45 mm" holds=bar stack="washer bar spacer-12',
          'length="36 mm" holds=bar stack="washer bar spacer-18',
        ],
      ],
      'bolt-short',
    ],
    [
      'a bolt does not go into its nut',
      [['thread=M8x1.25 grade=8.8 length="45 mm"', 'thread=M8x1 grade=8.8 length="45 mm"']],
      'joint-thread-clash',
    ],
    [
      'something lies on it that nobody declares',
      [['lug washer nut"}\n::kit[Rear', 'lugs washer nut"}\n::kit[Rear']],
      'item-undeclared',
    ],
  ],
  sequence: [
    ['a bolt that holds the same thing is left out', [[' axle-bolt"', '"']], 'sequence-incomplete'],
    ['a bolt is tightened twice', [['order="lower-bolt', 'order="upper-bolt lower-bolt']], 'sequence-unfit'],
    [
      'the order names what is no fastener',
      [['order="lower-bolt', 'order="bar lower-bolt']],
      'sequence-unfit',
    ],
    ['it is tightened before a bolt is started', [[' :start[axle-bolt].', '']], 'tightened-before-started'],
  ],
  threads: [
    ['no sentence puts the thread-lock on', [[' :apply[thread-lock]{amount="1 ml"}.', '']], 'coat-missing'],
    [
      'the thread-lock comes after the bolt',
      [
        [
          ' :apply[thread-lock]{amount="1 ml"}.\n:refit[mount-bolt].',
          '\n:refit[mount-bolt]. :apply[thread-lock]{amount="1 ml"}.',
        ],
      ],
      'coat-missing',
    ],
    [
      'what may never be loose together is',
      [
        [
          ':refit[mount-bolt]. Then :tighten[mount-bolt].',
          '\n\n::step[Leave it]{#leave time="1 min"}\n\n:refit[mount-bolt]. :tighten[mount-bolt].',
        ],
      ],
      'loose-together',
    ],
    ['the time of a re-check cannot be read', [['recheck="20 h"', 'recheck="soon"']], 'attribute-value'],
  ],
  'look-then-decide': [
    [
      'a step hangs on what is not looked at',
      [['Turn the bolt in the light and :inspect[thread].', 'Turn the :fastener[mount-bolt] in the light.']],
      'need-unmet',
    ],
    [
      'a step hangs on an outcome that there is not',
      [['thread is rusty', 'thread is oily']],
      'option-unknown',
    ],
    [
      'the only sentence hangs on an outcome',
      [['::step[Put the bolt back]{#bolt-in', '::step[Put the bolt back]{#bolt-in when="thread is clean"']],
      'part-left-off',
    ],
  ],
  cable: [
    [
      'a lug is too many',
      [['::kit[Ring lug, M6]{#lug}', '::kit[Ring lug, M6]{#lug count=2}']],
      'cable-ends-differ',
    ],
    ['a cable has three ends', [['ends="lug blade"', 'ends="lug blade lug"']], 'cable-ends-differ'],
    [
      'the tool that crimps is for thinner wire',
      [['crimps="0.5..6 mm²"', 'crimps="0.5..1.5 mm²"']],
      'cable-end-unfit',
    ],
    [
      'nothing says what closes the ends',
      [['ends="lug blade" with=crimper', 'ends="lug blade"']],
      'cable-end-unfit',
    ],
    [
      'no sentence closes an end',
      [[' and :fit[blade]{say=crimp with=crimper} on the other', '']],
      'kit-left-in-box',
    ],
  ],
  repeat: [
    ['the adjusting has no limit', [[' times=4 until=sag', ' until=sag']], 'rounds-open'],
    ['what ends the adjusting is not measured', [[', and :measure[sag]', ' and look']], 'rounds-open'],
    [
      'shims are chosen by a reading that is not taken',
      [[':measure[gap] with the :tool[feeler]. ', 'Use the :tool[feeler]. ']],
      'need-unmet',
    ],
    [
      'shims are chosen by what is not declared',
      [['chosen-by=gap', 'chosen-by=gap-width']],
      'item-undeclared',
    ],
    ['no sentence puts the shims in', [[':fit[shim] there, then', 'Then']], 'kit-left-in-box'],
    ['a step is done once, and says how often', [['times=3', 'times=1']], 'attribute-value'],
    ['a reading is taken again at no time', [['recheck="1000 km"', 'recheck="often"']], 'attribute-value'],
    ['what is thrown away is still in place', [[' :remove[old-chain].', '']], 'action-out-of-order'],
  ],
  boat: [
    ['a side is written in the word of the trade', [['side=left', 'side=port']], 'attribute-value'],
    [
      'a wish bears the name of what the boat has',
      [['wishes:\n  blue: Blue lamps', 'wishes:\n  cabin: Blue lamps\n  blue: Blue lamps']],
      'option-doubled',
    ],
  ],
  evidence: [
    [
      'a setting is not set',
      [[':set[coding] with the tester.', 'Take the :setting[coding] from the tester.']],
      'setting-left',
    ],
    ['a setting changes nothing', [['to="13-pin socket"', 'to="not fitted"']], 'setting-same'],
    [
      'a reading is not taken before what waits for it',
      [[':measure[charge] with the engine off.', 'Look at the battery.']],
      'need-unmet',
    ],
  ],
};

describe.each(Object.entries(slips))('what the trade says: %s', (name, ways) => {
  it.each(ways)('%s', async (_, edits, code) => {
    expect(await codes(name, edits)).toContain(code);
  });
});

it('part of a count is on one side: each side says how many, and each bolt takes its own', async () => {
  const sided: readonly (readonly [string, string])[] = [
    [
      '::kit[Washer]{#washer count=4 length="1.6 mm"}',
      '::kit[Washer, left]{#washer-left count=3 side=left length="1.6 mm"}\n::kit[Washer, right]{#washer-right side=right length="1.6 mm"}',
    ],
    ['::kit[Front bolt]{#front-bolt', '::kit[Front bolt]{#front-bolt side=left'],
    ['::kit[Rear bolt]{#rear-bolt', '::kit[Rear bolt]{#rear-bolt side=right'],
    [
      'stack="washer bar spacer-12 lug washer nut"',
      'stack="washer-left bar spacer-12 lug washer-left washer-left nut"',
    ],
    ['stack="washer bar spacer-18 lug washer nut"', 'stack="washer-right bar spacer-18 lug nut"'],
    [':fit[washer], one at each end.', ':fit[washer-left] and :fit[washer-right].'],
  ];
  expect(await codes('stack', sided)).toEqual([]);
  expect(await codes('stack', [...sided, ['#washer-left count=3', '#washer-left count=2']])).toEqual([
    'stack-count-differs',
  ]);
  expect(await codes('stack', [...sided, [' and :fit[washer-right]', '']])).toEqual(['kit-left-in-box']);
});

describe('a lot that is declared in parts', () => {
  const packed = (list: string): readonly (readonly [string, string])[] => [
    ['platform: case-van', `platform: case-van\ncontents:\n  spacer-12 spacer-18: ${list}`],
  ];
  it('stands under all their ids on the packing list, which counts them together', async () => {
    expect(await codes('look-alikes', packed('4'))).toEqual([]);
    expect(await codes('look-alikes', packed('3'))).toEqual(['contents-disagree']);
    expect(
      await codes(
        'look-alikes',
        packed('4').map(([from, to]) => [from, to.replace('-18:', '-19:')]),
      ),
    ).toEqual(['contents-disagree']);
  });
});

it('protection that is declared is named where it is worn', async () => {
  const worn = (text: string): readonly (readonly [string, string])[] => [
    ['::none{of=wear}', '::wear[Ear defenders]{#ear-defenders}'],
    [':fit[spacer-12] in front', `${text}:fit[spacer-12] in front`],
  ];
  expect(await codes('look-alikes', worn(''))).toEqual(['item-unused']);
  expect(await codes('look-alikes', worn('Wear :wear[ear-defenders]. '))).toEqual([]);
});
