import { describe, expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { noStore } from '../../src/store/store.ts';
import { told } from '../checks/told.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const toe = '::measure[Toe at the front]{#toe expect="1..2 mm"}\n';
const shim = '::kit[Shim]{#shim count=5 chosen-by=gap}\n::measure[Gap at the mount]{#gap expect="0..5 mm"}\n';

async function planOf(text: string) {
  const { guides } = await inspect(memoryFiles(exampleWorkspace(text)), noStore);
  const plan = guides[0]?.job.plans[0];
  if (!plan) throw new Error('no plan');
  return plan;
}

describe('a step that is done several times', () => {
  it('takes as long, and uses as much', async () => {
    const bleed =
      '::supply[Brake fluid]{#fluid quantity="400 ml"}\n\n::step[Bleed the line]{#bleed times=3 time="2/3/5 min"}\n\n:apply[fluid]{amount="100 ml"}.\n';
    expect(await told(bleed)).toEqual([]);
    const { time, gather } = await planOf(bleed);
    expect(time.job).toEqual({ least: 6, likely: 9, most: 15 });
    // 300 ml, in cubic millimetres or whatever volumes are kept in: three times one.
    const once = await planOf(bleed.replace(' times=3', ''));
    expect(gather.supplies[0]?.used).toBeCloseTo(3 * (once.gather.supplies[0]?.used ?? Number.NaN), 9);
  });

  it('is one that can be done again', async () => {
    const off =
      '::part[Cover]{#cover}\n\n::step[Lift it]{#lift times=2}\n\n:remove[cover].\n\n::step[Refit it]{#back}\n\n:refit[cover].\n';
    expect(await told(off)).toEqual(['action-repeated: :remove[cover]']);
    expect(await told(off.replace(' times=2', ''))).toEqual([]);
  });

  it('does the same thing twice on a side, not only once on each', async () => {
    const tape =
      '::supply[Masking tape]{#tape quantity="2 m" temporary}\n\n::step[Mask it]{#mask}\n\n:apply[tape].\n\n::step[Take it off]{#off side=each times=2}\n\n:take-off[tape].\n';
    expect((await told(tape)).map((line) => line.split(':')[0])).toEqual(['undone-without-doing']);
    expect(await told(tape.replace(' times=2', ''))).toEqual([]);
  });

  it('runs out of what it uses each time', async () => {
    const bleed =
      '::supply[Brake fluid]{#fluid quantity="200 ml"}\n\n::step[Bleed the line]{#bleed times=3}\n\n:apply[fluid]{amount="100 ml"}.\n';
    expect((await told(bleed)).map((line) => line.split(':')[0])).toEqual(['supply-overused']);
  });
});

describe('a step that is repeated until a reading is right', () => {
  const set = (attributes: string, act = ':measure[toe]') =>
    `${toe}\n::step[Set the toe]{#set-toe time="4 min" ${attributes}}\n\nTurn the rod by an eighth. ${act}.\n`;

  it('takes one round at least and all of them at most', async () => {
    expect(await told(set('until=toe times=3'))).toEqual([]);
    expect((await planOf(set('until=toe times=3'))).time.job).toEqual({ least: 4, likely: 8, most: 12 });
  });

  it.each([
    ['has a limit', set('until=toe')],
    [
      'takes the reading',
      set('until=toe times=3', 'Look at the :measure[toe]{as=toe}').replace(
        /:measure\[toe\]\{as=toe\}/,
        'toe',
      ),
    ],
    ['knows what is right', set('until=toe times=3').replace(' expect="1..2 mm"', '')],
    ['is ended by a reading', `${set('until=part times=3')}\n`.replace(toe, `${toe}::part[Cover]{#part}\n`)],
  ])('%s', async (_, text) => {
    expect((await told(text)).filter((line) => line.startsWith('rounds-open'))).toHaveLength(1);
  });

  it('is ended by a reading that there is', async () => {
    expect((await told(set('until=tow times=3'))).map((line) => line.split(':')[0])).toEqual([
      'item-undeclared',
    ]);
  });
});

describe('what is chosen by a reading', () => {
  const step = (act: string) => `${shim}\n::step[Shim the mount]{#mount}\n\n${act}.\n`;

  it('is left over by right where the reading asks for less', async () => {
    expect(await told(step(':measure[gap], then :fit[shim]'))).toEqual([]);
  });

  it('waits for the reading', async () => {
    expect(await told(step(':fit[shim], then :measure[gap]'))).toEqual(['need-unmet: :fit[shim]']);
  });

  it('is fitted by some step', async () => {
    expect((await told(step(':measure[gap]'))).map((line) => line.split(':')[0])).toContain(
      'kit-left-in-box',
    );
  });

  it('may hang on what an inspection finds', async () => {
    const seen = `${shim.replace('chosen-by=gap', 'chosen-by=play').replace(/::measure.*\n/, '::inspection[Play of the mount]{#play outcomes="none some"}\n')}
::step[Shim the mount]{#mount}\n\n:inspect[play]. :where[:fit[shim].]{when="play is some"}\n`;
    expect(await told(seen)).toEqual([]);
    expect((await told(seen.replace(' chosen-by=play', ''))).map((line) => line.split(':')[0])).toEqual([
      'kit-left-in-box',
    ]);
  });
});
