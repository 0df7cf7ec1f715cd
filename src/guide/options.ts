import * as z from 'zod';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import { isId } from '../directives/attributes/id-text.ts';
import { parseWhen } from '../directives/attributes/when.ts';
import { optionsIn } from '../job/builds/when.ts';
import { capitalised } from '../job/words/noun.ts';
import type { Item } from '../model/item.ts';
import type { Build, BuildSpace, Option, When } from '../model/when.ts';
import type { Span, Written } from '../source/span.ts';
import { type YamlPlaces, yamlKey, yamlText, yamlYesNo } from '../syntax/read-yaml.ts';
import { conditionUnreadable } from './rules/condition-unreadable.ts';
import { optionDoubled } from './rules/option-doubled.ts';

const id = z.string().refine(isId, { error: 'an id of lower-case letters, digits and hyphens, 64 at most' });

const oneOf = z.strictObject({
  name: yamlKey(yamlText.optional(), 'text', 'What the option is called; without it, its id gives the name.'),
  'one-of': yamlKey(
    z.record(id, yamlText).refine((choices) => Object.keys(choices).length >= 2, {
      error: 'at least two choices',
    }),
    'a map of at least two choices, as in `{halogen: Halogen lamps, led: LED lamps}`',
    'The choices, of which a vehicle has exactly one. In a condition: `lamps is led`.',
  ),
});

/** `options:` of a platform, guide or procedure, and `wishes:` of a guide. */
export const optionsSchema = z
  .record(id, z.union([yamlText, oneOf], { error: 'a name, or a map with one-of' }))
  .optional();

/** `builds:` and `impossible:` of a platform. */
export const buildsSchema = z
  .array(z.record(id, z.union([yamlYesNo, id])))
  .min(1)
  .optional();
export const impossibleSchema = z.array(yamlText).optional();

type Declared = z.infer<typeof optionsSchema>;

/**
 * The options of a front matter, in the order written.
 *
 * @param key `options` are facts of the vehicle, `wishes` what the customer decides
 */
export function readOptions(
  declared: Declared,
  places: YamlPlaces,
  key: 'options' | 'wishes' = 'options',
): readonly Option[] {
  const wish = key === 'wishes';
  return Object.entries(declared ?? {}).map(([option, value]) => {
    const at = places.keyAt([key, option]);
    if (typeof value === 'string') return { id: option, name: value, choices: null, wish, at };
    const choices = Object.entries(value['one-of']).map(([choice, name]) => ({
      id: choice,
      name,
      at: places.keyAt([key, option, 'one-of', choice]),
    }));
    return { id: option, name: value.name ?? capitalised(option.replaceAll('-', ' ')), choices, wish, at };
  });
}

/** The builds that a platform lists. */
export function readBuilds(
  listed: readonly Readonly<Record<string, boolean | string>>[] | undefined,
  places: YamlPlaces,
): readonly Written<Partial<Build>>[] | null {
  return listed?.map((value, index) => ({ value, at: places.valueAt(['builds', index]) })) ?? null;
}

/** The combinations that a platform calls impossible. */
export function readImpossible(
  written: readonly string[] | undefined,
  places: YamlPlaces,
  report: Report,
): readonly Written<When>[] {
  return (written ?? []).flatMap((text, index) => {
    const at = inside(places.valueAt(['impossible', index]), text);
    const reading = parseWhen(text, at);
    if (reading.ok) return [{ value: reading.value, at }];
    report(finding(conditionUnreadable, reading.at ?? at, reading.message));
    return [];
  });
}

/**
 * The builds that a guide is for, from its `when:`: every other is impossible for it. An option that neither the
 * platform nor the guide has is told here.
 */
export function limitBuilds(
  space: BuildSpace,
  written: string | undefined,
  places: YamlPlaces,
  report: Report,
): BuildSpace {
  if (written === undefined) return space;
  const at = inside(places.valueAt(['when']), written);
  const reading = parseWhen(written, at);
  if (!reading.ok) {
    report(finding(conditionUnreadable, reading.at ?? at, reading.message));
    return space;
  }
  const known = space.options.map(({ id }) => id);
  const unknown = [...optionsIn(reading.value)].find((option) => !known.includes(option));
  if (unknown !== undefined) {
    const likely = nearest(unknown, known)[0];
    const message = `"${unknown}" is no option of the platform or of this guide`;
    report(
      finding(
        conditionUnreadable,
        at,
        message,
        likely ? { suggestion: { at, text: written.replace(unknown, likely) } } : {},
      ),
    );
    return space;
  }
  const others: When = { kind: 'not', of: reading.value, at };
  return { ...space, impossible: [...space.impossible, { value: others, at }] };
}

/** The place of a YAML text without the quotes around it. */
function inside(at: Span, text: string): Span {
  return at.end - at.start === text.length + 2 ? { ...at, start: at.start + 1, end: at.end - 1 } : at;
}

/** The builds of a guide: the platform's, times the options that only the guide asks about. */
export function joinBuilds(
  platform: BuildSpace | undefined,
  own: readonly Option[],
  report: Report,
): BuildSpace {
  const known = new Map(platform?.options.map((option) => [option.id, option]));
  const ofPlatform = new Set(known.keys());
  const added = own.filter((option) => {
    const earlier = known.get(option.id);
    known.set(option.id, earlier ?? option);
    if (!earlier) return true;
    const isPlatforms = ofPlatform.has(option.id);
    const message = isPlatforms
      ? `the platform already has the option "${option.id}"; leave it out here`
      : `"${option.id}" is an option and a wish; it is either a fact or decided by the customer`;
    const notes = [{ message: isPlatforms ? 'declared on the platform' : 'declared here', at: earlier.at }];
    report(finding(optionDoubled, option.at, message, { notes }));
    return false;
  });
  return {
    options: [...(platform?.options ?? []), ...added],
    listed: platform?.listed ?? null,
    impossible: platform?.impossible ?? [],
  };
}

/**
 * The builds of a guide, times what its inspections may find: what hangs on a finding is judged as what hangs on an
 * option is. An inspection that bears the name of an option would be taken for it.
 */
export function withFindings(
  space: BuildSpace,
  items: ReadonlyMap<string, Item>,
  report: Report,
): BuildSpace {
  const found = [...items.values()].flatMap((item): readonly Option[] => {
    if (item.kind !== 'inspection') return [];
    const earlier = space.options.find(({ id }) => id === item.id);
    if (earlier) {
      const message = `"${item.id}" is an option already; give the inspection an id of its own`;
      const notes = [{ message: 'the option is declared here', at: earlier.at }];
      report(finding(optionDoubled, item.idAt, message, { notes }));
      return [];
    }
    const choices = item.outcomes.map(({ value, at }) => ({
      id: value,
      name: `${item.noun.singular}: ${value.replaceAll('-', ' ')}`,
      at,
    }));
    return [{ id: item.id, name: item.noun.label, choices, wish: false, at: item.idAt }];
  });
  return { ...space, options: [...space.options, ...found] };
}
