import type { Measure } from '../model/item.ts';
import type { QuantityRange } from '../units/quantity.ts';
import { type AttributeType, good, meant } from './attributes/attribute.ts';
import { range, recheck } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled } from './attributes/item-attributes.ts';
import { directive } from './directive.ts';

const quantities = range(
  'length',
  'torque',
  'pressure',
  'angle',
  'temperature',
  'voltage',
  'current',
  'resistance',
  'mass',
  'time',
  'force',
  'volume',
  'power',
  'percentage',
);

type Expected = { readonly range: QuantityRange } | { readonly words: readonly string[] };

/** A range of a quantity, or the words that a reading may show, which hold no digit. */
const expected: AttributeType<Expected> = {
  expects: `${quantities.expects}, or words, as in \`green\` or \`green or amber\``,
  read: (text, at) => {
    const words = text
      .split(/\s+or\s+/)
      .map((word) => word.trim())
      .filter((word) => word !== '');
    if (words.length > 0 && !/\d/.test(text)) return good<Expected>({ words });
    const reading = quantities.read(text, at);
    return reading.ok ? good<Expected>({ range: reading.value }) : reading;
  },
};

/** Declares something to be measured and the range it must fall in. */
export const measure = directive({
  name: 'measure',
  form: 'leaf',
  label: 'required',
  attributes: {
    ...itemAttributes,
    expect: meant(
      expected,
      'The range that the reading must fall in, or the words that it must show. What `needs` it waits for that.',
    ),
    recheck: meant(recheck, 'When the owner has it taken again; stands on the hand-over sheet.'),
  },
  summary:
    'Declares a reading that is taken during the job, what is expected (a range, or words such as `green or amber`), and with `recheck` when the owner has it taken again.',
  example: '::measure[Ground clearance under the cradle]{#clearance expect="180..240 mm"}',
  build: (read): Measure | null => {
    const { values, directive: found } = read;
    const noun = labelled(found.labelText, undefined);
    if (!values.id || !noun) return null;
    const { expect, recheck: again } = values;
    return {
      ...itemBase('measure', read, values.id, noun),
      expect: expect && 'range' in expect.value ? { value: expect.value.range, at: expect.at } : null,
      words: expect && 'words' in expect.value ? expect.value.words : [],
      recheck: again,
    };
  },
});
