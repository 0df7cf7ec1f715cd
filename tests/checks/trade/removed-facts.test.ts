import { describe, expect, it } from 'vitest';
import { notChecked, rules } from '../../../src/checks/index.ts';
import type { RuleExample } from '../../../src/diagnostics/rule-card.ts';
import { inspect, memoryFiles } from '../../../src/shop/index.ts';
import { exampleWorkspace } from '../../example-workspace.ts';
import { long, sampleOf } from '../../samples.ts';

/*
 * A seeded fault, and each declared fact of its guide taken away in turn: what was told stays told, or stands under
 * "not checked", or another rule asks for the fact. Nothing falls silent. In each run every third fact is tried, in
 * the long run all of them.
 */

const look = '\n\n::step[Look around]{#look}\n\nLook for dents.';
const tools =
  '::tool[13 mm socket]{#socket drive="hex 13"}\n::tool[Torque wrench, 5–200 N·m]{#wrench range="5..200 N·m"}\n';
const turn =
  '\n\n::step[Turn the bolt]{#turn}\n\n:loosen[bolt]{with=socket} and :tighten[bolt]{with="wrench socket"}.';

const faults: readonly (readonly [code: string, body: string])[] = [
  [
    'torque-over-proof',
    `${tools}::fastener[Bolt]{#bolt thread=M8x1.25 grade=8.8 drive="hex 13" torque="90 N·m"}${turn}`,
  ],
  [
    'torque-over-proof',
    `${tools}::fastener[Bolt]{#bolt thread=M8x1.25 grade=10.9 drive="hex 13" torque="40 N·m" friction=waxed}${turn}`,
  ],
  [
    'torque-implausible',
    `${tools}::fastener[Bolt]{#bolt thread=M10x1.5 grade=8.8 drive="hex 13" torque="6 N·m"}${turn}`,
  ],
  [
    'torque-wrench-missing',
    `${tools}::fastener[Bolt]{#bolt thread=M8x1.25 grade=8.8 drive="hex 13" torque="20 N·m"}\n\n::step[Turn the bolt]{#turn}\n\n:loosen[bolt]{with=socket} and :tighten[bolt]{with=socket}.\n\n::step[Lay it back]{#back}\n\nLay the :tool[wrench] back.`,
  ],
  [
    'fuse-unsafe',
    `::circuit[Feed]{#feed load="5 A" length="1 m" wire="1 mm²" fuse="40 A" voltage="12 V"}${look}`,
  ],
  [
    'wire-overloaded',
    `::circuit[Feed]{#feed load="60 A" length="0.5 m" wire="4 mm²" fuse="80 A" voltage="12 V"}${look}`,
  ],
  [
    'voltage-drop-high',
    `::circuit[Feed]{#feed load="10 A" length="12 m" wire="2.5 mm²" fuse="15 A" voltage="12 V"}${look}`,
  ],
  ['rating-exceeded', `::rating[Rail]{#rail limit="60 kg"}\n::rating[Awning]{#awning claim="70 kg"}${look}`],
];

/** Facts that a fault needs for being one at all: without the torque there is none that could be too much. */
const essential: { readonly [code: string]: readonly string[] } = {
  'torque-over-proof': ['torque', 'friction'],
  'torque-implausible': ['torque'],
  'torque-wrench-missing': ['torque', 'range'],
  'rating-exceeded': ['claim'],
};

/** A guide with one fact of an item or a tool taken out. */
function without(body: string): readonly (readonly [fact: string, body: string])[] {
  const declared = [...body.matchAll(/ ([a-z]+)=(?:"[^"]*"|[^\s"}]+)(?=[^{}]*\})/g)];
  return declared.flatMap((match) => {
    const line = body.lastIndexOf('\n', match.index) + 1;
    if (!body.startsWith('::', line) || body.startsWith('::step', line)) return [];
    return [
      [match[1] ?? '', body.slice(0, match.index) + body.slice(match.index + match[0].length)] as const,
    ];
  });
}

async function judged(example: RuleExample) {
  const { findings, guides } = await inspect(memoryFiles(exampleWorkspace(example)));
  const [only] = guides;
  return { codes: findings.map(({ code }) => code), unchecked: only ? notChecked(only.guide) : [] };
}

const every = long ? 1 : 3;

describe('nothing falls silent when a fact is taken away', () => {
  it.each(faults)('%s is told to begin with', async (code, body) => {
    expect((await judged(body)).codes).toContain(code);
  });

  const tried = faults
    .flatMap(([code, body]) => without(body).map(([fact, rest]) => [code, fact, rest] as const))
    .filter(([code, fact]) => !essential[code]?.includes(fact))
    .filter((_, index) => index % every === 0);

  it.each(tried)('%s without %s', async (_, __, body) => {
    const { codes, unchecked } = await judged(body);
    expect(codes.length + unchecked.length).toBeGreaterThan(0);
  });
});

/**
 * What makes the fault of a rule one: a clip that holds nothing does not hold the part that is lifted, a screw of
 * which one is enough has no pattern, a cable of whose ends nothing is written has none to close. Without it nothing
 * is wrong, as far as anyone has written down.
 */
const isTheFault: { readonly [code: string]: readonly string[] } = {
  'bolt-short': ['stack'],
  'cable-end-unfit': ['ends'],
  'joint-thread-clash': ['stack'],
  'plural-doubled': ['count'],
  'pattern-impossible': ['pattern'],
  'torque-unstated': ['range'],
  'torque-wrench-missing': ['torque'],
  'type-drive-clash': ['type', 'drive'],
  'width-clash': ['thread'],
  'width-not-standard': ['thread', 'standard'],
  'action-impossible': ['when'],
  'reference-dropped': ['when'],
  'connector-on-nothing': ['on'],
  'fastener-holds-nothing': ['holds'],
  'loose-together': ['holds'],
  'one-time-not-replaced': ['reuse'],
  'one-time-refitted': ['reuse'],
  'part-never-lifted': ['holds'],
  'part-still-connected': ['on'],
  'part-still-covered': ['covers'],
  'part-still-fastened': ['holds'],
  'plug-unhandled': ['on'],
  'relation-cycle': ['covers'],
  'relation-wrong-kind': ['needs'],
  'spare-exceeds-count': ['spare'],
  'supply-never-applied': ['quantity'],
  'supply-overused': ['quantity'],
  'supply-unit-differs': ['quantity'],
  'picture-wrong-side': ['shows'],
  'relation-side-missing': ['side', 'on'],
  'message-one-way': ['clear'],
  'movement-unstated': ['work'],
  'cable-ends-differ': ['ends'],
  'open-time-over': ['holds'],
  'supply-not-dry': ['holds', 'dries'],
  'supply-yield-short': ['yields'],
  'side-contradicted': ['side'],
  'side-forgotten': ['side'],
};

describe('nothing falls silent in the bad example of a rule when a fact is taken away', () => {
  const seeded = rules.flatMap(({ card }) => {
    const files = Object.entries(exampleWorkspace(card.bad));
    return files.flatMap(([path, text]) =>
      path.endsWith('.md')
        ? without(text).map(([fact, rest]) => ({
            code: card.code,
            fact,
            files: { ...Object.fromEntries(files), [path]: rest },
          }))
        : [],
    );
  });
  const tried = seeded.filter(({ code, fact }) => !isTheFault[code]?.includes(fact));

  it('tries some two hundred facts', () => expect(tried.length).toBeGreaterThan(200));

  it.each(sampleOf(tried, 25))('$code without $fact', async ({ files }) => {
    const { codes, unchecked } = await judged(files);
    expect(codes.length + unchecked.length).toBeGreaterThan(0);
  });
});
