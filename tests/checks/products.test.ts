import { describe, expect, it } from 'vitest';
import { computeJob } from '../../src/job/compute-job.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const list = 'primer: {name: Zinc primer, dries: 30 min}\nglue: {name: Glue, cures: 2 h}\n';

const body = (wait: string, needs = '') => `::supply{#primer quantity="30 ml"}
::supply{#glue quantity="30 ml"}
::part[Rail]{#rail}
::part[Step edge]{#edge}
::kit[Bracket]{#bracket}
::kit[Bracket bolt]{#bolt holds="bracket rail"}

## Work {#work}

::step[Prime the rail]{#prime time="5 min"${wait}}

:apply[primer]{amount="10 ml" on=rail}.

::step[Glue the edge]{#stick time="10 min" any-order wait="2 h"}

:apply[glue]{amount="10 ml" on=edge}.

::step[Hang the bracket]{#hang time="6 min"}

:fit[bracket] and :fit[bolt].

::step[Stand on the edge]{#stand time="1 min"${needs}}

Stand on the :part[edge].
`;

const front = '---\ntitle: Example guide\nplatform: example-van\n---\n\n';
const nones = ['wear', 'tools', 'conditions'].map((of) => `::none{of=${of}}\n`).join('');

async function look(text: string, supplies = list) {
  const files = { 'supplies.yaml': supplies, 'example/guide.md': `${front}${nones}\n${text}` };
  const { findings, guides } = await inspect(memoryFiles(exampleWorkspace(files)));
  return { found: findings.map(({ code, message }) => `${code}: ${message}`), guide: guides[0]?.guide };
}

describe('a product', () => {
  it('has its name and its times from supplies.yaml', async () => {
    const { found, guide } = await look(body(' wait="30 min"', ' needs=glue'));
    expect(found).toEqual([]);
    expect(guide?.items.get('primer')).toMatchObject({
      noun: { label: 'Zinc primer' },
      dries: { value: { base: 30 } },
      quantity: { value: { base: 0.03 } },
    });
  });

  it('is asked for by name where the list has none of that id', async () => {
    const { found } = await look(body(' wait="30 min"').replace('::supply{#primer', '::supply{#primar'));
    expect(found.join('\n')).toContain('supply-unlisted: "primar" is not in supplies.yaml');
  });

  it('is dry before anything is fastened to what it was put on', async () => {
    expect((await look(body(''))).found).toEqual([
      'supply-not-dry: the zinc primer dries for 30\u00a0min, and only 10\u00a0min pass for certain before this; write wait="30\u00a0min" on the step "Prime the rail", or put other work between',
    ]);
  });

  it('is dry before what covers it goes back', async () => {
    const closed = (wait: string) =>
      `::none{of=kit}\n::supply[Primer]{#paint quantity="10 ml" dries="30 min"}\n::part[Cover]{#cover covers=rail}\n::part[Rail]{#rail}\n\n## Work {#work}\n\n::step[Prime the rail]{#prime time="5 min"${wait}}\n\n:remove[cover]. :apply[paint]{amount="10 ml" on=rail}.\n\n::step[Close it]{#close}\n\n:refit[cover].`;
    expect((await look(closed(''))).found.join()).toContain(
      'supply-not-dry: the primer dries for 30\u00a0min',
    );
    expect((await look(closed(' wait="30 min"'))).found).toEqual([]);
  });

  it('is put on, and has cured, before what needs it', async () => {
    const early = body(' wait="30 min"', ' needs=glue').replace(' wait="2 h"', '');
    expect((await look(early)).found.join()).toContain('supply-not-dry: the glue cures for 2\u00a0h');
    const never = body(' wait="30 min"', ' needs=glue').replace(
      ':apply[glue]{amount="10 ml" on=edge}',
      'Press it',
    );
    expect((await look(never)).found.join()).toContain('need-unmet');
  });

  it('holds up in the schedule what it concerns, and nothing else', async () => {
    const { guide } = await look(body(' wait="30 min"', ' needs=glue'));
    if (!guide) throw new Error('no guide');
    const [schedule] = computeJob(guide).plans[0]?.schedules ?? [];
    const at = (id: string) => schedule?.tasks.find(({ step }) => step === id);
    // The primer dries while the edge is glued; the bracket waits for it, and the glue has its two hours.
    expect(Number(at('stick')?.start)).toBeLessThan(20);
    expect(Number(at('hang')?.start)).toBeGreaterThanOrEqual(Number(at('prime')?.finish) + 30);
    expect(Number(at('stand')?.start)).toBeGreaterThanOrEqual(Number(at('stick')?.finish) + 120);
  });

  it('with an error in its entry is told once, in the list', async () => {
    const { found } = await look(
      body(' wait="30 min"'),
      'primer: {name: Zinc primer, dries: soon}\nglue: {name: Glue}\n',
    );
    expect(found).toHaveLength(1);
    expect(found[0]).toContain('soon');
  });
});
