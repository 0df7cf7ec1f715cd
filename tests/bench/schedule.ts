import { type ReadingContext, readGuide } from '../../src/guide/index.ts';
import { distinctOutcomes } from '../../src/job/builds/outcomes.ts';
import { stepsOf } from '../../src/job/index.ts';
import { precedenceOf } from '../../src/job/precedence.ts';
import { schedulesOf } from '../../src/job/schedule/index.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { usualWords } from '../../src/trade/words.ts';

/**
 * How long the schedules of a guide of 60 steps take (for one technician and for two), as a share of the time
 * to read the guide: a fifth is the most that they may.
 *
 *   npx tsx tests/bench/schedule.ts
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
const text = guideText(60);
const read = () => readGuide(sourceFile('bench/guide.md', text), context, () => {});

const guide = read();
if (!guide) throw new Error('the guide for the benchmark cannot be read');
const steps = stepsOf(guide);
const done = guide.sections.flatMap((section) =>
  section.steps.map((step) => ({ section: section.id, step })),
);
const [build = {}] = distinctOutcomes(guide).groups[0] ?? [];
const schedule = () => schedulesOf(guide, build, done, 2, precedenceOf(guide, build, done));

const reading = fastest(read);
const scheduling = fastest(schedule);
console.log(`${steps.length} steps, ${(text.length / 1000).toFixed(0)} kB of text`);
console.log(`read      ${reading.toFixed(1)} ms`);
console.log(`scheduled ${scheduling.toFixed(1)} ms, ${(scheduling / reading).toFixed(2)} of it`);
console.log(
  `proved    ${schedule()
    .map(({ crew, proved }) => `crew of ${crew}: ${proved}`)
    .join(', ')}`,
);

/** The shortest of many runs, in milliseconds: the one that the machine disturbed least. */
function fastest(work: () => unknown): number {
  const times = Array.from({ length: 15 }, () => {
    const start = process.hrtime.bigint();
    work();
    return Number(process.hrtime.bigint() - start) / 1e6;
  });
  return Math.min(...times);
}

/** A guide as a shop would write it: a third of the steps on each side, some in any order, some with a wait. */
function guideText(count: number): string {
  const parts = Array.from({ length: count }, (_, index) => index + 1);
  return [
    '---\ntitle: Long job\nplatform: bench-van\n---\n',
    '## What comes off {#off}\n',
    ...parts.map(
      (part) =>
        `::part[Panel ${part}]{#panel-${part}}\n::fastener[Screw ${part}]{#screw-${part} count=4 side=each holds=panel-${part}}`,
    ),
    ...parts.map(
      (part) =>
        `${section(part)}\n::step[Panel ${part}]{#step-${part} ${attributes(part)}}\n\n:::caution[Sharp edge]\nThe lip of panel ${part} can cut a finger. Feel along the fold first.\n:::\n\nReach behind the edge and :remove[screw-${part}].\nThen :remove[panel-${part}] and lay it on a clean cloth, outside up.\n\n- Keep the screws in a bag.\n- Look at the seal for cracks.\n`,
    ),
  ].join('\n');
}

function section(part: number): string {
  return part % 15 === 1 ? `\n## Part ${part} of the job {#section-${part}}\n` : '';
}

function attributes(part: number): string {
  return [
    `time="${(part % 5) + 2}..${(part % 7) + 9} min"`,
    ...(part % 3 === 0 ? ['side=each'] : []),
    ...(part % 4 === 0 ? ['people=2'] : []),
    ...(part % 10 === 5 ? ['any-order'] : []),
    ...(part % 10 === 4 ? ['wait="20 min"'] : []),
  ].join(' ');
}
