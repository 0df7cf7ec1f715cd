import { describe, expect, it } from 'vitest';
import { actionsOf } from '../../src/job/actions/walk.ts';
import { readBody, soundGuide, stepsIn, told } from './read.ts';

const bolts = `::part{#cover}
::fastener[Upper bolt]{#upper-bolt count=2 torque="20 N·m, 45 N·m" holds=cover}
::fastener[Lower bolt]{#lower-bolt count=2 torque="20 N·m, 45 N·m" holds=cover}
::sequence[Cover bolts]{#cover-bolts order="lower-bolt upper-bolt"}
`;

describe('a sequence', () => {
  it('is one sentence, and an action on each of its fasteners', () => {
    const guide = soundGuide(
      `${bolts}\n## Work {#work}\n\n::step[Loosen it]{#loosen}\n\n:loosen[cover-bolts].\n\n::step[Tighten it]{#tighten}\n\n:tighten[cover-bolts].\n`,
    );
    const [, tighten] = stepsIn(guide);
    if (!tighten) throw new Error('a step is missing');
    expect(told(guide, tighten)).toBe('Tighten the cover bolts in sequence.');
    expect(actionsOf(tighten).map(({ node }) => node.target.value)).toEqual(['lower-bolt', 'upper-bolt']);
  });

  it('keeps its order where it is reversed', () => {
    const guide = soundGuide(
      `${bolts}\n## Off {#off}\n\n::step[Loosen it]{#loosen}\n\n:loosen[cover-bolts].\n\n## On {#on}\n\n::reverse{of=off}\n`,
    );
    const derived = stepsIn(guide).at(-1);
    if (!derived) throw new Error('a step is missing');
    expect(told(guide, derived)).toMatch(/^Tighten the cover bolts in sequence\.\s*$/);
    expect(actionsOf(derived).map(({ node }) => `${node.verb} ${node.target.value}`)).toEqual([
      'tighten lower-bolt',
      'tighten upper-bolt',
    ]);
  });

  it('takes the names of a procedure that is placed under a prefix', () => {
    const { guide, findings } = readBody(`## Strip {#strip}\n\n::procedure{of=loose prefix=left}\n`, {
      loose: `${bolts}\n::step[Loosen it]{#loosen}\n\n:loosen[cover-bolts].\n`,
    });
    expect(findings).toEqual([]);
    expect(guide?.sequences.get('left-cover-bolts')?.order.map(({ value }) => value)).toEqual([
      'left-lower-bolt',
      'left-upper-bolt',
    ]);
  });
});
