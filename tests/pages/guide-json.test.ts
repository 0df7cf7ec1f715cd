import { Ajv } from 'ajv';
import { describe, expect, it } from 'vitest';
import { guideJson, whenText } from '../../src/pages/guide/guide-json.ts';
import { guideSchemaJson } from '../../src/pages/guide/guide-schema.ts';
import { when } from '../job/builder.ts';
import * as fixture from './fixture.ts';

const schema = JSON.parse(guideSchemaJson());
const validate = new Ajv({ strict: true, allowUnionTypes: true }).compile(schema);
const json = JSON.parse(
  JSON.stringify(guideJson(fixture.guide, fixture.job, '../../schema/guide.schema.json')),
);

describe('the JSON of a guide', () => {
  it('keeps to the published JSON Schema, draft 7 (ajv)', () => {
    expect(validate(json), JSON.stringify(validate.errors)).toBe(true);
  });

  it('has a schema that refuses what is missing or unknown', () => {
    const { title: _, ...untitled } = json;
    expect(validate(untitled)).toBe(false);
    expect(validate({ ...json, torque: 25 })).toBe(false);
  });

  it('gives torques in newton metres and lengths in millimetres, beside what the author wrote', () => {
    const item = (id: string) => json.items.find((one: { id: string }) => one.id === id);
    expect(item('m8-nut').torque).toEqual([{ newtonMetres: 25 }]);
    expect(item('tape').quantity).toEqual({ written: '2', unit: 'm', base: 2000 });
    expect(item('clearance').expect.least).toMatchObject({ written: '180', unit: 'mm', base: 180 });
  });

  it('lets others add up the hands-on minutes of each plan', () => {
    for (const plan of json.plans) {
      const likely = plan.steps.reduce(
        (sum: number, step: { time: { likely: number } }) => sum + step.time.likely,
        0,
      );
      // The plans of the fixture are written by hand: 8 + 6 + 2 + 10 + 8 with fog lamps, 2 less without.
      expect(likely).toBe(plan.time.job.likely);
    }
  });

  it('says when an action is done, in the author’s own words', () => {
    const actions = json.sections.flatMap((section: { steps: { actions: object[] }[] }) =>
      section.steps.flatMap((step) => step.actions),
    );
    expect(actions).toContainEqual(
      expect.objectContaining({
        verb: 'disconnect',
        target: 'fog-plug',
        text: 'disconnect both fog lamp plugs',
        when: ['fog'],
      }),
    );
  });

  it('writes conditions so that they can be read back', () => {
    const text = 'not fog';
    expect(whenText(when(text))).toBe(text);
    const both = {
      kind: 'and',
      of: [when('fog'), when('sensors or lamps is led')],
      at: when('fog').at,
    } as const;
    expect(whenText(both)).toBe('fog and (sensors or lamps is led)');
    expect(whenText({ kind: 'not', of: both, at: both.at })).toBe('not (fog and (sensors or lamps is led))');
  });
});
