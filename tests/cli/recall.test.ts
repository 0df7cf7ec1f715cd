import { mkdir, readFile, writeFile } from 'node:fs/promises';
import { join } from 'node:path';
import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { recallSchemaJson } from '../../src/release/recall-json.ts';
import type { VehicleRecord } from '../../src/vehicle/record.ts';
import { type Bench, baybook, bench } from '../driver.ts';
import { exampleWorkspace } from '../example-workspace.ts';
import { vehicleRecord } from '../vehicle/records.ts';

const guide = (revision: string, torque: string, more = '') => `---
title: Example guide
platform: example-van
revision: ${revision}
---

::none{of=wear}
::none{of=supplies}
::none{of=conditions}
::tool[Torque wrench]{#wrench range="5..60 N·m"}
::tool[13 mm socket]{#socket-13 drive="hex 13"}
::kit[Bracket]{#bracket}
::kit[M8 nut]{#m8-nut count=4 thread=M8x1.25 grade=8 drive="hex 13" torque="${torque}" holds=bracket}

## Fit {#fit}

::step[Hang the bracket]{#hang time="5 min"}
${more}
:fit[bracket] and :start[m8-nut].

::step[Tighten it]{#tight time="6 min"}

:tighten[m8-nut]{with="wrench socket-13"}.
`;

const [first] = vehicleRecord().work;

/** A shop that has released revision 1 and changed the guide since, with its records in a folder. */
async function shop(): Promise<{
  readonly place: Bench;
  readonly released: string;
  readonly file: (name: string, more: Partial<VehicleRecord>) => Promise<void>;
}> {
  const place = await bench(exampleWorkspace({ 'example/guide.md': guide('1', '20 N·m') }));
  await baybook(place.folder, 'release', 'example', '--date', '2026-10-02', '--verified', 'M. Hart');
  const path = join(place.folder, 'guides/example/releases/1.json');
  const released = JSON.parse(await readFile(path, 'utf8')).fingerprint;
  const warning =
    '\n:::warning[Falling bracket]\nA bracket that falls crushes a foot. Hold it with both hands until two nuts are on.\n:::\n';
  const changed = guide('2', '22 N·m', warning).replace('6 min', '7 min').replace('Hang the', 'Lift up the');
  await place.write('example/guide.md', changed);
  expect((await place.check()).out).toBe('1 guide checked: no errors, no warnings\n');
  await mkdir(join(place.folder, 'records'));
  return {
    place,
    released,
    file: (name, more) => writeFile(join(place.folder, 'records', name), JSON.stringify(vehicleRecord(more))),
  };
}

const work = (
  revision: string,
  fingerprint: string,
  guides: VehicleRecord['work'][number]['guides'] = [],
) => {
  if (!first) throw new Error('a record has work');
  return [{ ...first, revision, fingerprint, guides }];
};
const named = (text: string) => [{ key: 'identity', label: 'Registration', text }];
const own = { id: 'example', title: 'Example guide' };

describe('baybook recall', () => {
  it('lists who was served under a revision, by itself and in a visit, and what has changed that matters', async () => {
    const { place, released, file } = await shop();
    await file('a.json', {
      id: 'a'.repeat(32),
      guide: own,
      vehicle: named('RB 12'),
      work: work('1', released),
    });
    await file('b.json', {
      id: 'b'.repeat(32),
      guide: own,
      vehicle: named('RB 13'),
      work: work('2', 'ef'.repeat(32)),
    });
    const inVisit = work('9', '12'.repeat(32), [
      { id: 'example', title: 'Example guide', revision: '1', fingerprint: released },
    ]);
    await file('c.json', {
      id: 'c'.repeat(32),
      guide: { id: 'visits/both', title: 'Two jobs' },
      vehicle: named('RB\u001b[31m 14\n'),
      work: inVisit,
      signatures: [],
    });
    await file('d.json', { id: 'd'.repeat(32), guide: own, vehicle: [], work: work('1', 'ef'.repeat(32)) });
    const { out, err, code } = await baybook(place.folder, 'recall', 'example', '--revision', '1', 'records');
    const short = released.slice(0, 12).replace(/(....)(?=.)/g, '$1\u00a0');
    expect(out.replace(/\([0-9a-f\u00a0]{14}\)/g, '(…)').replaceAll(short, '(released)')).toBe(
      `example, revision 1: 3 found in 4 records

  RB 12, from 2026-10-02, signed by M. Hart (The whole job, 2026-10-02): records/a.json
  RB□[31m 14, from 2026-10-02, in the visit “Two jobs”, not signed: records/c.json
  not named, from 2026-10-02, under the text of revision 1 efef\u00a0efef\u00a0efef, which is not what was released, signed by M. Hart (The whole job, 2026-10-02): records/d.json

What has changed between revision 1 (…) and the text as it stands (…)
  safety
    Step 1, “Lift up the bracket”
      - warning added: “Falling bracket. A bracket that falls crushes a foot. Hold it with both hands until two nuts are on.”
  torque
    M8 nut
      - torque 22 N·m (16.2 lbf·ft), was 20 N·m (14.8 lbf·ft)

Other changes of the work: 1; baybook compare example --from 1 tells them
`,
    );
    expect([err, code]).toEqual(['', 0]);
    const other = await baybook(
      place.folder,
      'recall',
      'example',
      '--fingerprint',
      'EFEF efef efef',
      'records',
    );
    expect(other.out).toContain('2 found in 4 records');
    expect(other.out).toContain('cannot be told: example was not released under this fingerprint');
  });

  it('tells a file that is no sound record by its name, and lists the rest; as data by its schema', async () => {
    const { place, released, file } = await shop();
    await file('a.json', { guide: own, work: work('1', released) });
    await writeFile(join(place.folder, 'records/broken.json'), '{"form":"Baybook vehicle record", "ver');
    await writeFile(join(place.folder, 'records/foreign.json'), '[]');
    const asked = ['recall', 'example', '--revision', '1', 'records', 'gone.json'];
    const { out, err, code } = await baybook(place.folder, ...asked);
    expect(out).toContain('1 found in one record');
    expect(err).toBe(
      'records/broken.json: this vehicle record is not whole: part of the file is missing or damaged; save it again where it was made\n' +
        'records/foreign.json: this file is no vehicle record\n' +
        'gone.json: there is no such file\n',
    );
    expect(code).toBe(1);
    const data = JSON.parse((await baybook(place.folder, ...asked, '--format', 'json')).out);
    // Held by ajv, an independent validator.
    const validate = new Ajv({ strict: false }).compile(JSON.parse(recallSchemaJson()));
    expect(validate(data), JSON.stringify(validate.errors)).toBe(true);
    expect(data.vehicles.map(({ file: path }: { file: string }) => path)).toEqual(['records/a.json']);
    expect(
      data.changes.map(({ touches, of, id }: { touches: string; of: string; id: string }) => [
        touches,
        of,
        id,
      ]),
    ).toEqual([
      ['safety', 'step', 'hang'],
      ['torque', 'item', 'm8-nut'],
    ]);
    expect(data.unread).toHaveLength(3);
  });

  it('asks for what is looked for, and knows a fingerprint when it sees one', async () => {
    const { place } = await shop();
    const none = await baybook(place.folder, 'recall', 'example', 'records');
    expect(none).toMatchObject({
      code: 2,
      err: expect.stringContaining('--revision or which --fingerprint'),
    });
    const odd = await baybook(place.folder, 'recall', 'example', '--fingerprint', 'xyz', 'records');
    expect(odd).toMatchObject({ code: 2, err: expect.stringContaining('"xyz" is none') });
    const strange = await baybook(place.folder, 'recall', 'exampel', '--revision', '1', 'records');
    expect(strange).toMatchObject({ code: 2, err: expect.stringContaining('there is no guide "exampel"') });
  });
});
