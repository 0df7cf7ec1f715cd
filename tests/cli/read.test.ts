import { resolve } from 'node:path';
import { expect, it } from 'vitest';
import { bench, repository } from '../driver.ts';

it('check --read prints each step of each build as the technician reads it', {
  timeout: 30_000,
}, async () => {
  const shop = await bench(resolve(repository, 'tests/cases/lamp-cradle-fixture'));
  const { code, out } = await shop.check('--read');
  expect(code).toBe(0);
  const text = out.replace(/\u00a0/g, ' ');
  // Two builds, told apart: with fog lamps the plugs come apart, without them nobody speaks of plugs.
  expect(text).toContain('Reach behind and disconnect both fog lamp plugs.');
  const [, withFog = '', without = ''] = text.split(/\nAuxiliary lamp cradle[^\n]*\n/);
  expect([withFog, without].filter((build) => build.includes('fog lamp plug'))).toHaveLength(1);
  expect(text).toContain(
    'Work the trim lever behind the edge. Remove the arch screw and remove the 3 liner screws.',
  );
  expect(text).toContain('WARNING: Flying chips. Plastic chips can injure an eye.');
  expect(text).toContain('and then tighten the 4 M8 flange nuts to 25 N·m (18.4 lbf·ft).');
  expect(text).toMatch(/Tools: .*rotary cutter/);
  // Sides, hands, the heads of sections and the proof are read too.
  expect(text).toContain('Free the arch edge (Left side, then right side)');
  expect(text).toContain('Draw the cover forward (2 people)');
  expect(text).toMatch(/== Prove it ==\n {3}Lamps\n/);
  expect(without).not.toMatch(/\S {2,}\S/);
  // A sentence begins with a capital, also where a phrase of other builds stands before it.
  await shop.change('lamp-cradle/guide.md', 'Ease it 100 mm forward. :where', ':where');
  await shop.change('lamp-cradle/guide.md', 'Then :remove[cover]', ':remove[cover]');
  expect((await shop.check('--read')).out).toMatch(/\n {3}Lift away the bumper cover\./);
});
