import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { BayData } from '../../../src/pages/guide/bay-data.ts';
import { usualWords } from '../../../src/trade/words.ts';
import { carryOver } from '../../../templates/scripts/bay/kept/carry-over.ts';
import {
  fresh,
  isBegun,
  type Progress,
  TICKED,
  withTick,
  withValue,
  withWait,
} from '../../../templates/scripts/bay/kept/progress.ts';
import { progressText, readProgress } from '../../../templates/scripts/bay/kept/progress-text.ts';

const step = (id: string, fingerprint: string, sides = false) => ({
  id,
  title: `Do ${id}`,
  fingerprint,
  sides,
  wait: 0,
});

const page: BayData = {
  guide: 'lamp-cradle',
  title: 'Lamp cradle',
  edition: 'revision 3',
  revision: '3',
  fingerprint: 'aa',
  words: usualWords,
  steps: [step('arch', '1', true), step('cut', '2'), step('hang', '3')],
  guides: [],
  intake: [],
  rechecks: [],
};

const asked = new Map([
  ['cut reading gap', 'Gap, expected 2–4 mm'],
  ['hang torque m8-nut ', '4 M8 flange nuts: 25 N·m'],
]);

const begun: Progress = [
  (progress: Progress) => withTick(progress, 'arch', 'left', true),
  (progress: Progress) => withTick(progress, 'cut', 'whole', true),
  (progress: Progress) => withWait(progress, 'cut', 1_000),
  (progress: Progress) =>
    withValue(progress, 'cut reading gap', {
      asked: 'Gap, expected 2–4 mm',
      step: 'cut',
      proof: false,
      text: '3',
    }),
  (progress: Progress) =>
    withValue(progress, 'hang torque m8-nut ', {
      asked: '4 M8 flange nuts: 25 N·m',
      step: 'hang',
      proof: false,
      text: '25',
    }),
].reduce((progress, edit) => edit(progress), fresh(page));

describe('progress', () => {
  it('is ticked and unticked by side', () => {
    const both = withTick(begun, 'arch', 'right', true);
    expect(both.ticks.get('arch')).toEqual(new Set(['left', 'right']));
    const none = withTick(withTick(both, 'arch', 'left', false), 'arch', 'right', false);
    expect(none.ticks.has('arch')).toBe(false);
  });

  it('drops a value that is wiped out, and is not begun while nothing stands in it', () => {
    const wiped = withValue(begun, 'cut reading gap', { asked: '', step: 'cut', proof: false, text: ' ' });
    expect(wiped.values.has('cut reading gap')).toBe(false);
    expect([isBegun(begun), isBegun(fresh(page))]).toEqual([true, false]);
  });
});

describe('progress of another edition of the guide', () => {
  it('keeps what is ticked of steps that read the same, and nothing of those that changed', () => {
    const next = {
      ...page,
      edition: 'revision 4',
      fingerprint: 'bb',
      words: usualWords,
      steps: [step('arch', '1', true), step('cut', '2x'), step('dress', '9')],
    };
    const carried = carryOver(begun, next, asked);
    expect(carried.fingerprint).toBe('bb');
    expect([...carried.ticks]).toEqual([['arch', new Set(['left'])]]);
    expect(carried.waits.size + carried.values.size).toBe(0);
    expect(carried.changed).toEqual({
      edition: 'revision 3',
      lines: [
        { step: 'cut', words: 'Changed: Do cut' },
        { step: 'dress', words: 'New: Do dress' },
        { step: '', words: 'No longer there: Do hang' },
        { step: '', words: 'To be taken again: Gap, expected 2–4 mm (was 3)' },
        { step: '', words: 'To be taken again: 4 M8 flange nuts: 25 N·m (was 25)' },
      ],
    });
  });

  it('keeps no value under a question that reads otherwise, though its step is the same', () => {
    const other = new Map(asked).set('cut reading gap', 'Gap, expected 2–3 mm');
    const carried = carryOver(begun, { ...page, fingerprint: 'bb' }, other);
    expect([...carried.values.keys()]).toEqual(['hang torque m8-nut ']);
    expect(carried.ticks).toEqual(begun.ticks);
  });

  it('keeps a ticked row of the gather list, and of the proof only what every step still bears out', () => {
    const rows = new Map(asked).set('need gather item_lever', 'Trim lever').set('prove x', 'Lamps light');
    const ticked = [
      ['need gather item_lever', 'Trim lever', false] as const,
      ['prove x', 'Lamps light', true] as const,
    ].reduce(
      (progress, [key, words, proof]) =>
        withValue(progress, key, { asked: words, step: null, proof, text: TICKED }),
      begun,
    );
    const kept = (steps: BayData['steps']) => carryOver(ticked, { ...page, fingerprint: 'bb', steps }, rows);
    expect([...kept(page.steps).values.keys()]).toContain('prove x');
    const carried = kept([step('arch', '1', true), step('cut', '2x'), step('hang', '3')]);
    expect([...carried.values.keys()]).toEqual(['hang torque m8-nut ', 'need gather item_lever']);
    expect(carried.changed?.lines).toContainEqual({ step: '', words: 'To be ticked again: Lamps light' });
  });

  it('takes the build along, and tells no change to whom nothing is ticked', () => {
    const picked = { ...fresh(page), build: 'fog:no' };
    const carried = carryOver(picked, { ...page, fingerprint: 'bb', steps: [step('arch', '7')] }, asked);
    expect([carried.build, carried.changed]).toEqual(['fog:no', null]);
  });

  it('never keeps a tick of a step whose fingerprint differs', () => {
    const ids = fc.constantFrom('arch', 'cut', 'hang', '__proto__', 'constructor');
    const steps = fc.uniqueArray(fc.record({ id: ids, fingerprint: fc.constantFrom('1', '2', '3') }), {
      selector: ({ id }) => id,
    });
    fc.assert(
      fc.property(steps, steps, (before, after) => {
        const data = (list: typeof before, fingerprint: string) => ({
          ...page,
          fingerprint,
          words: usualWords,
          steps: list.map(({ id, fingerprint: own }) => step(id, own)),
        });
        const old = before.reduce(
          (progress, { id }) => withTick(progress, id, 'whole', true),
          fresh(data(before, 'aa')),
        );
        const carried = carryOver(old, data(after, 'bb'), new Map());
        const same = after.filter(({ id, fingerprint }) =>
          before.some((one) => one.id === id && one.fingerprint === fingerprint),
        );
        expect(new Set(carried.ticks.keys())).toEqual(new Set(same.map(({ id }) => id)));
      }),
    );
  });
});

describe('progress as text', () => {
  it('comes back as it was', () => {
    expect(readProgress(progressText(begun))).toEqual(begun);
    const carried = carryOver(begun, { ...page, fingerprint: 'bb', steps: [] }, asked);
    expect(readProgress(progressText(carried))).toEqual(carried);
  });

  it.each([
    '',
    'null',
    '[]',
    '7',
    '{"form":"Baybook progress 1"}',
    '{"guide":"lamp-cradle"}',
    progressText(begun).slice(0, -1),
    progressText(begun).replace('"whole"', '"half"'),
    progressText(begun).replace('1000', '"soon"'),
    progressText(begun).replace('progress 1', 'progress 2'),
    progressText(begun).replace('"title":"Do cut"', '"title":7'),
    progressText(begun).replace('"build":""', '"build":null'),
    progressText(begun).replace('"proof":false', '"proof":"no"'),
  ])('is not read out of anything else: %.60s', (text) => {
    expect(readProgress(text)).toBeNull();
  });

  it('is read, or refused, from any value at all', () => {
    fc.assert(
      fc.property(fc.json(), fc.string(), (json, text) => {
        const fields = { ...JSON.parse(progressText(begun)), ticks: JSON.parse(json), values: text };
        expect(readProgress(json) ?? readProgress(JSON.stringify(fields))).toBeNull();
      }),
    );
  });
});
