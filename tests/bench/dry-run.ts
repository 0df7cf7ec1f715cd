import { directiveNames, type ReadingContext, readGuide } from '../../src/guide/index.ts';
import { distinctOutcomes } from '../../src/job/builds/outcomes.ts';
import { dryRun } from '../../src/job/dry-run/index.ts';
import { stepsOf } from '../../src/job/index.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { readMarkdown } from '../../src/syntax/read.ts';
import { usualWords } from '../../src/trade/words.ts';

/**
 * How long the dry run of a guide of 60 steps on 64 builds takes, as a share of the time to parse the guide:
 * a fifth is the most that it may.
 *
 *   npx tsx tests/bench/dry-run.ts
 */
const context: ReadingContext = {
  crib: new Map(),
  supplies: new Map(),
  fastenerTypes: new Map(),
  platforms: new Map(),
  words: usualWords,
  procedures: new Map(),
  resolve: (_, to) => to,
  textOf: () => null,
};
const options = ['fog', 'sensors', 'washers', 'radar', 'tow', 'camera'];
const source = sourceFile('bench/guide.md', guideText(30));

const guide = readGuide(source, context, () => {});
if (!guide) throw new Error('the guide for the benchmark cannot be read');
const outcomes = distinctOutcomes(guide);
const { violations } = dryRun(guide, outcomes);

const parsing = fastest(() => readMarkdown(source, directiveNames, () => {}));
const playing = fastest(() => dryRun(guide, outcomes));
console.log(`${stepsOf(guide).length} steps, ${outcomes.groups.length} builds, ${violations.length} faults`);
console.log(`parse   ${parsing.toFixed(1)} ms`);
console.log(`dry run ${playing.toFixed(1)} ms, ${(playing / parsing).toFixed(2)} of it`);

/** The shortest of many runs, in milliseconds: the one that the machine disturbed least. */
function fastest(work: () => unknown): number {
  const times = Array.from({ length: 25 }, () => {
    const start = process.hrtime.bigint();
    work();
    return Number(process.hrtime.bigint() - start) / 1e6;
  });
  return Math.min(...times);
}

/** A strip-down of so many steps and its refit, with a plug of some option in each. */
function guideText(steps: number): string {
  const all = Array.from({ length: steps }, (_, index) => index + 1);
  const optionOf = (index: number) => options[index % options.length];
  const declared = all.map(
    (one) => `::part[Panel ${one}]{#panel-${one}${one === 1 ? '' : ` covers=panel-${one - 1}`}}
::fastener[Screw ${one}]{#screw-${one} drive=T20 count=3 side=each holds=panel-${one}}
::fastener[Bolt ${one}]{#bolt-${one} drive="hex 10" torque="8 N·m" count=2 holds=panel-${one}}
::connector[Plug ${one}]{#plug-${one} on=panel-${one} when=${optionOf(one)}}`,
  );
  const stripped = all.toReversed().map(
    (one) => `::step[Free panel ${one}]{#free-${one} people=2 time="3..6 min"}

:::caution[Sharp edge]
The edge of panel ${one} cuts a hand that slides along it. Wear gloves, and lift it by its frame.
:::

Open the flap on each side of the panel. :remove[screw-${one}] with the driver, the upper ones last.
:remove[bolt-${one}] with the small ratchet. :where[Press the latch and :disconnect[plug-${one}].]{when=${optionOf(one)}}
Then :remove[panel-${one}] and lay it on the trestles, outside up.

:::refit-note
Seat the lower lip first, then press along the edge until every clip has found its seat.
:::`,
  );
  return `---
title: Thirty panels
platform: bench
options:
${options.map((option) => `  ${option}: ${option}`).join('\n')}
---

## What comes off {#off}

${declared.join('\n')}

## Strip down {#strip-down}

${stripped.join('\n\n')}

## Refit {#refit}

::reverse{of=strip-down}
`;
}
