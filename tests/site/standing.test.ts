import { join } from 'node:path';
import { expect, it } from 'vitest';
import { baybook, bench } from '../driver.ts';

const fixture = join(import.meta.dirname, '../cases/lamp-cradle-fixture');
const release = [
  'release',
  'lamp-cradle',
  ...['--date', '2026-10-12', '--verified', 'M. Hart', '--build', 'fog', '--measured', 'notch=J. Ode'],
];

it('says on the page, its print and its sheets how a guide stands to its release', async () => {
  const { folder, build, page, site, change } = await bench(fixture);
  const path = 'guides/lamp-cradle/index.html';
  await build();
  expect(await page(path)).not.toContain('class="standing');

  // The store's key sees the release: nothing else has changed.
  expect((await baybook(folder, ...release)).code).toBe(0);
  await build();
  const verified = await page(path);
  expect(verified).toContain(
    'Revision 3 was verified by M. Hart on a vehicle with front fog lamps; released 12\u00a0October 2026.',
  );
  expect(verified).not.toContain('Not verified');
  expect(verified).not.toContain('change-mark');
  expect(await page('index.html')).not.toContain('entry-unverified');

  await change('lamp-cradle/guide.md', 'torque="25 N·m"', 'torque="24 N·m"');
  await change('lamp-cradle/guide.md', 'Plastic chips can injure an eye.', 'Chips can injure an eye.');
  await change('lamp-cradle/guide.md', '62,38 r6 -62,38 r6', '62,39 r6 -62,39 r6');
  await change('shop.yaml', 'name:', 'unreleased: draft\nname:');
  await build();
  const edited = await page(path);
  expect(edited).toContain('Not verified on a vehicle since step 4 and 2 other things changed.');
  const short = 'Not verified since step 4 changed.';
  expect(edited).toContain(`<p class="bay-standing">${short}</p>`);
  expect(await page('index.html')).toContain(`<p class="entry-unverified"><strong>${short}</strong></p>`);
  expect(edited).toContain('<h2 id="since_release">Since revision 3</h2>');
  expect(edited).toContain('torque 24\u00a0N·m (17.7\u00a0lbf·ft), was 25\u00a0N·m (18.4\u00a0lbf·ft)');
  // One paragraph has changed, and one line of a torque.
  expect(edited.match(/class="change-mark"/g)).toHaveLength(1);
  expect(edited.match(/<div class="changed" data-torque="m8-nut"/g)).toHaveLength(1);
  expect(edited).toContain('<div class="draft" aria-hidden="true">DRAFT</div>');
  expect(edited).toContain('href="cut-templates/notch-since-3.svg"');
  expect([...(await site()).keys()]).toContain('guides/lamp-cradle/cut-templates/notch-since-3.svg');
  const alone = await page('guides/lamp-cradle/lamp-cradle.html');
  expect(alone).toContain('Not verified on a vehicle');
  expect(alone).not.toContain('notch-since-3.svg');
});
