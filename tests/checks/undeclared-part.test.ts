import { expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { readFonts } from '../../src/site/fonts.ts';
import { noStore } from '../../src/store/store.ts';
import { exampleWorkspace } from '../example-workspace.ts';

it('a part of the platform that a guide forgets to declare is suggested, not a near id of another kind', async () => {
  const files = exampleWorkspace({
    'platforms/example-van.md': '---\ntitle: Example van\n---\n\nA van.\n\n::part[Liner]{#liner}\n',
    'example/guide.md':
      '::fastener[Line clip]{#line}\n\n::step[Take it off]{#off}\n\n:remove[line] and :remove[liner]. Then :refit[line].\n',
  });
  const { findings } = await inspect(memoryFiles(files), noStore, await readFonts());
  const found = findings.find(({ code }) => code === 'item-undeclared');
  expect(found?.notes.map(({ message }) => message)).toContain(
    'the platform has this part: declare it with ::part{#liner}',
  );
  expect(found?.suggestion).toBeUndefined();
});
