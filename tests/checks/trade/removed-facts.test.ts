import { describe, expect, it } from 'vitest';
import { notChecked } from '../../../src/checks/index.ts';
import { inspect, memoryFiles } from '../../../src/shop/index.ts';
import { exampleWorkspace } from '../../example-workspace.ts';

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

async function judged(body: string) {
  const { findings, guides } = await inspect(memoryFiles(exampleWorkspace(body)));
  const [only] = guides;
  return { codes: findings.map(({ code }) => code), unchecked: only ? notChecked(only.guide) : [] };
}

const every = process.env.LONG ? 1 : 3;

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
