import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { gripOf, isFixing } from '../../job/index.ts';
import type { Fastener, KitItem } from '../../model/item.ts';
import { significant } from '../../units/format.ts';
import type { Rule } from '../rule.ts';
import { barStep, clampedBar } from './example.ts';

const done = barStep('fit[bar]', 'fit[spacer]', 'fit[bolt]', 'start[nut]', 'tighten[nut]');
const bolted = (length: number) =>
  clampedBar(
    `length="${length} mm"`,
    '::kit[M8 nut]{#nut count=2 thread=M8x1.25 grade=8 drive="hex 13" torque="20 N·m" with="torque-60 socket-13"}\n',
  )
    .replace('"bar spacer frame"', '"bar spacer nut"')
    .replace('::part[Frame]{#frame}\n', '')
    .replace('{#bar}', '{#bar length="6 mm"}')
    .replace('grade=8.8 drive="hex 13" torque="20 N·m" ', 'grade=8.8 ')
    .replace('with="torque-60 socket-13" length', 'length') + done;

const card: RuleCard = {
  code: 'bolt-short',
  severity: 'error',
  title: 'A bolt is too short for what lies on it',
  why: 'A bolt that does not reach through its nut holds by half a thread and strips it. A nut is about 0.8 diameters high (ISO 4032); what the bolt sticks out beyond the clamped parts must be at least that.',
  bad: bolted(20),
  good: bolted(30),
};

/** Height of a regular nut in diameters of its thread: ISO 4032 (style 1), M6 to M16, rounded down. */
const NUT = 0.8;

/** Where all lengths are stated, the bolt reaches through what it clamps and through its nut. */
export const boltShort: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const bolt of guide.items.values()) {
      if (!isFixing(bolt)) continue;
      const found = gripOf(bolt, guide);
      if (!found || !bolt.length) continue;
      const { grip, length, nut } = found;
      const wanted = nut ? nutHeight(nut, bolt) : 0;
      const left = length - grip;
      if (left > 0 && left >= wanted - 0.05) continue;
      const short =
        left <= 0
          ? `and the bolt is ${significant(length)} mm long`
          : `which leaves ${significant(left)} mm of ${significant(length)} mm for a nut of ${significant(wanted)} mm`;
      const message = `what lies on the ${bolt.noun.singular} is ${significant(grip)} mm long, ${short}`;
      const notes = bolt.stack.flatMap(({ value }) => {
        const piece = guide.items.get(value);
        return piece && 'length' in piece && piece.length
          ? [{ message: `the ${piece.noun.singular} is stated here`, at: piece.length.at }]
          : [];
      });
      report(finding(card, bolt.length.at, message, { notes }));
    }
  },
};

function nutHeight(nut: Fastener | KitItem, bolt: Fastener | KitItem): number {
  if (nut.length) return nut.length.value.base;
  const thread = nut.thread ?? bolt.thread;
  return thread ? NUT * thread.value.diameter : 0;
}
