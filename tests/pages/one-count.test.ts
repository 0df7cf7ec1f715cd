import { expect, it } from 'vitest';
import { bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';

const guide = `::tool[13 mm socket]{#socket-13 drive="hex 13"}
::tool[Torque wrench]{#torque-60 range="10..60 N·m"}
::kit[Ring]{#ring}
::kit[Ring bolt]{#ring-bolt count=14 spare=2 thread=M8x1.25 grade=8.8 drive="hex 13" torque="20 N·m" pattern=circle holds=ring recheck="100 km"}

::step[Hang the ring]{#hang}

:fit[ring] and :start[ring-bolt].

::step[Tighten the ring]{#tight}

:tighten[ring-bolt]{with="torque-60 socket-13"}.
`;

it('says one number of what has spares in text, drawing, log, sheets and findings, and the order as it is drawn', async () => {
  const found = await bench(exampleWorkspace(guide));
  expect(await found.build()).toMatchObject({ code: 0 });
  const html = (await found.page('guides/example/index.html')).replace(/<svg.*?<\/svg>/gs, '');
  const text = html.replace(/<[^>]+>/g, ' ').replace(/\s+/g, ' ');
  expect(text).toContain('start the 12 ring bolts');
  expect(text).toContain('Tighten the 12 ring bolts');
  expect(text).toContain('Ring bolts, 12');
  // The box and the count sheet alone speak of the two that stay in it.
  const told = [...text.matchAll(/(?<!\d)14(?!\d)[^.]{0,40}/g)].map(([words]) => words);
  expect(told.filter((words) => /ring bolt/i.test(words))).toEqual([]);
  expect(text).toContain('in opposite pairs');
  expect(text).not.toContain('round the circle');

  await found.change('example/guide.md', ':tighten[ring-bolt]{with="torque-60 socket-13"}', 'Look at it');
  const { out } = await found.check();
  expect(out).toContain('12 ring bolts');
  expect(out).not.toContain('14 ring bolts');
});
