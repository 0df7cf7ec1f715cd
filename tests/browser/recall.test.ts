import { mkdir } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { expect, it, vi } from 'vitest';
import { baybook, bench } from '../driver.ts';
import { long } from '../samples.ts';
import { demoSite } from '../site/demo-site.ts';
import { chromiumOfWorker, open } from './browser.ts';

vi.setConfig({ testTimeout: 240_000 });

const build = '#build=fog:yes,lamps:led';

it.runIf(long)(
  'a record kept by the page of a demo guide is found by a recall, which tells what has changed since',
  async () => {
    const { folder, change } = await bench(resolve(import.meta.dirname, '../../guides'));
    const kept = join(folder, 'records');
    await mkdir(kept);
    const { page, faults } = await open(
      await chromiumOfWorker(),
      await demoSite(),
      'guides/lamp-cradle/index.html',
      { acceptDownloads: true, hash: build },
    );
    await page.click('.vehicle-ask');
    await page.getByRole('button', { name: 'Begin a record' }).click();
    await page.getByLabel('Vehicle registration or VIN').first().fill('RB 12');
    await page.locator('#hang .bay-tick input').first().check();
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save as a file' }).click(),
    ]);
    await download.saveAs(join(kept, 'rb-12.json'));
    expect(faults).toEqual([]);
    await page.context().close();

    // What the page was made from is released as it stands, and then found to be wrong.
    const said = [
      '--date',
      '2026-10-12',
      '--verified',
      'M. Hart',
      '--build',
      'fog=yes,lamps=led',
      '--measured',
      'notch=J. Ode',
    ];
    expect(await baybook(folder, 'release', 'lamp-cradle', ...said)).toMatchObject({ code: 0, err: '' });
    const path = 'lamp-cradle/guide.md';
    await change(path, '\nrevision: 4\n', '\nrevision: 5\n');
    await change(path, 'torque="25 N·m" pattern=cross', 'torque="22 N·m" pattern=cross');
    await change(path, 'can blind an eye. Wear', 'can blind an eye and burn a hand. Wear');
    await change(path, '70,46 r8 -70,46 r8', '70,48 r8 -70,48 r8');
    await change(path, 'trace the outline with', 'draw the outline with');

    const released = await baybook(
      folder,
      'recall',
      'lamp-cradle',
      '--fingerprint',
      'ef'.repeat(6),
      'records',
    );
    expect(released.out).toContain('0 found in one record');
    const asked = ['recall', 'lamp-cradle', 'records', '--format', 'json', '--revision'];
    const { out, err, code } = await baybook(folder, ...asked, '4');
    expect([err, code]).toEqual(['', 0]);
    const { vehicles, changes } = JSON.parse(out);
    expect(vehicles).toMatchObject([{ file: 'records/rb-12.json' }]);
    expect(
      changes.map(
        ({ touches, of, id }: { touches: string; of: string; id: string }) => `${touches}: ${of} ${id}`,
      ),
    ).toEqual(['safety: step cut-notch', 'torque: item m8-nut', 'geometry: template notch']);
  },
);
