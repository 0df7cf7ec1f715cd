import fc from 'fast-check';

/** What slips in: pieces of the formats, numbers beyond all sense, and names that every object has. */
const scraps = [
  ...[
    '',
    ' ',
    '\n',
    '\n\n',
    '\t',
    '\0',
    '\u00a0',
    '\uFEFF',
    '\u202e',
    '🔧',
    '"',
    "'",
    '\\',
    '`',
    '<',
    '>',
    '&',
  ],
  ...[
    '::',
    ':::',
    '[',
    ']',
    '{',
    '}',
    '#',
    '=',
    ',',
    ':',
    '---',
    '- ',
    '> ',
    '|',
    '*',
    '!',
    '?',
    '%',
    '@',
    '~',
  ],
  ...['-1', '0', '1e999', 'NaN', '99999999999999999999', '0x10', '1/0', '10..-10 mm', '2026-13-45', '1.5.2'],
  ...[
    '__proto__',
    'constructor',
    'toString',
    'null',
    'true',
    '[]',
    '{}',
    '&a [*a]',
    '!!js/function',
    '<<: *a',
  ],
  ...[
    'side=each',
    'side=left',
    'count=0',
    'when="not (a)"',
    'holds=cover',
    'needs=lock',
    '{#cover}',
    '{of=off}',
  ],
  ...[
    '::reverse{of=off}',
    '::procedure{of=x}',
    ':remove[cover]',
    ':tighten[bar-bolt]{with=wrench}',
    ':::prove',
  ],
];

interface Spoiling {
  readonly at: number;
  readonly length: number;
  readonly put: string;
}

/** A few places of a text at which something is lost, or slips in. */
export const spoilings = fc.array(
  fc.record({
    at: fc.double({ min: 0, max: 1, noNaN: true }),
    length: fc.oneof({ weight: 3, arbitrary: fc.constant(0) }, fc.nat({ max: 12 }), fc.nat({ max: 400 })),
    put: fc.oneof(
      { weight: 4, arbitrary: fc.constantFrom(...scraps) },
      fc.string({ unit: 'binary', maxLength: 6 }),
    ),
  }),
  { minLength: 1, maxLength: 4 },
);

/** A text with each spoiling made in it in turn. */
export function spoilt(text: string, list: readonly Spoiling[]): string {
  return list.reduce((now, { at, length, put }) => {
    const place = Math.floor(at * now.length);
    return now.slice(0, place) + put + now.slice(place + length);
  }, text);
}
