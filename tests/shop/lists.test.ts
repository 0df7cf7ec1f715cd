import { expect, it } from 'vitest';
import { collector } from '../../src/diagnostics/report.ts';
import { readCrib } from '../../src/shop/lists/crib.ts';
import { readFastenerTypes } from '../../src/shop/lists/fastener-types.ts';
import type { ListEntry } from '../../src/shop/lists/list-entries.ts';
import { readSettings } from '../../src/shop/lists/settings.ts';
import { lineColumn, sourceFile } from '../../src/source/source-file.ts';

function reading<T>(
  path: string,
  text: string,
  read: (source: ReturnType<typeof sourceFile>, report: ReturnType<typeof collector>['report']) => T,
) {
  const source = sourceFile(path, text);
  const { findings, report } = collector();
  const value = read(source, report);
  const faults = findings.map(({ at, code, message }) => {
    const { line, column } = lineColumn(source, at.start);
    return `${line}:${column} ${code} ${message}`;
  });
  return { value, faults };
}

const byId = <R>(entries: readonly ListEntry<R>[]) =>
  new Map(entries.map(({ id, value }) => [id, value] as const));
const crib = (text: string) =>
  reading('tools.yaml', text, (source, report) => byId(readCrib(source, report)));
const types = (text: string) =>
  reading('fasteners.yaml', text, (source, report) => byId(readFastenerTypes(source, report)));
const settings = (text: string) =>
  reading('shop.yaml', text, (source, report) => readSettings(source, new Map([['logo.svg', 1]]), report));

it('reads tools and protective equipment with the attributes of a guide', () => {
  const { value, faults } = crib(
    [
      'torque-60: {name: "Torque wrench, 10–60 N·m", range: 10..60 N·m, plural: torque wrenches}',
      'bit-t15: {name: T15 bit, drive: T15, synonyms: [star bit, "6-lobe bit"], or: [bit-t15-long]}',
      'gloves: {name: Gloves, wear: yes}',
    ].join('\n'),
  );
  expect(faults).toEqual([]);
  expect(value.get('torque-60')).toMatchObject({
    kind: 'tool',
    inCrib: true,
    noun: { singular: 'torque wrench', plural: 'torque wrenches' },
    range: { value: { least: { base: 10 }, most: { base: 60 } } },
  });
  expect(value.get('bit-t15')).toMatchObject({
    synonyms: ['star bit', '6-lobe bit'],
    or: [{ value: 'bit-t15-long' }],
  });
  expect(value.get('gloves')?.kind).toBe('wear');
});

it('tells of a list of more than 2,000 tools how many there are and may be', () => {
  const over = crib(Array.from({ length: 2001 }, (_, i) => `tool-${i}: {name: Tool ${i}}\n`).join(''));
  expect(over.value.size).toBe(0);
  expect(over.faults).toEqual([
    '1:1 text-oversized 2001 entries stand in this list; it may have 2000: take out what no guide uses',
  ]);
});

it('points at the fault in an entry of the crib', () => {
  expect(crib('socket: {name: Socket, drive: 13}').faults).toHaveLength(1);
  expect(crib('socket: {name: Socket, drive: 13}').faults[0]).toMatch(/^1:31 attribute-value /);
  expect(crib('socket: {name: Socket, colour: red}').faults[0]).toMatch(/^1:24 attribute-unknown /);
  expect(crib('Socket 7: {name: Socket}').faults[0]).toMatch(/^1:1 attribute-value /);
  expect(crib('socket: {drive: hex 7}').faults).toEqual([
    '1:1 yaml-missing-key "name" is missing; it should be text',
  ]);
  expect(crib('socket: {name: Socket, wear: perhaps}').faults).toEqual([
    '1:30 yaml-wrong-value "wear" should be yes or no, not "perhaps"',
  ]);
  expect(crib('socket: Socket 13').faults).toEqual([
    '1:9 yaml-wrong-value this should be a map with at least its name, as in {name: Trim lever}, not "Socket 13"',
  ]);
  // The place inside a quoted value is past its quote.
  expect(crib('torque: {name: T, range: "60..10 N·m"}').faults[0]).toMatch(/^1:27 attribute-value /);
});

it('keeps the name of an entry that cannot be used, and knows nothing else of it', () => {
  const { value } = crib('socket: {name: Socket, drive: [hex]}\nBit 15: {name: Bit}\nlever: {drive: T15}\n');
  expect([...value.keys()]).toEqual(['socket', 'bit-15', 'lever']);
  expect(value.get('socket')).toMatchObject({ noun: { singular: 'socket' }, drive: null });
  expect(value.get('bit-15')).toMatchObject({ noun: { singular: 'bit' } });
  expect(value.get('lever')?.unknown.has('drive')).toBe(true);
});

it('reads fastener types', () => {
  const { value, faults } = types(
    'clip:\n  name: Fir-tree clip\n  reuse: no\n  release: Pull square.\n  synonyms: [christmas tree]\n',
  );
  expect(faults).toEqual([]);
  expect(value.get('clip')).toMatchObject({
    id: 'clip',
    noun: { singular: 'fir-tree clip' },
    reuse: false,
    release: 'Pull square.',
    synonyms: ['christmas tree'],
    drive: null,
  });
});

it('reads the settings of a shop and fills in what is left out', () => {
  const { value, faults } = settings(
    'name: Quarrel Lane\nlogo: logo.svg\naccent: "#0B6E5F"\naddress: https://guides.example/q/\npapers: [A4, Letter, a4]\ncrew: 2\nplain-language: {off: [sentence-long]}\n',
  );
  expect(faults).toEqual([]);
  expect(value).toMatchObject({
    name: 'Quarrel Lane',
    logo: { value: 'logo.svg' },
    accent: '#0b6e5f',
    address: 'https://guides.example/q/',
    units: 'metric',
    papers: ['a4', 'letter'],
    crew: 2,
    signalWords: 'ansi',
  });
  expect([...value.plainLanguage.off]).toEqual(['sentence-long']);
  expect(settings('name: A').value).toMatchObject({ papers: ['a4', 'letter'], crew: 1, logo: null });
});

it.each([
  ['name: A\nlogo: logo.png', '2:7 logo-missing there is no picture "logo.png" in the workspace'],
  [
    'name: A\naccent: green',
    '2:9 yaml-wrong-value "accent" should be a colour in quotes, as in "#0b6e5f", not "green"',
  ],
  [
    'name: A\naccent: #0b6e5f',
    '2:9 yaml-wrong-value "accent" is empty, since YAML takes what follows # for a comment; put it in quotes',
  ],
  [
    'name: A\npapers: [A5]',
    '2:10 yaml-wrong-value "papers.0" should be a paper: a4, letter, a3, tabloid, single, not "A5"',
  ],
  [
    'name: A\ncrew: 0',
    '2:7 yaml-wrong-value "crew" should be a whole number from 1 to 9, not the number "0"',
  ],
  [
    'name: A\ncrew: 1.5',
    '2:7 yaml-wrong-value "crew" should be a whole number from 1 to 9, not the number "1.5"',
  ],
  [
    'name: A\naddress: javascript:alert(1)',
    '2:10 yaml-wrong-value "address" should be a web address, as in https://guides.example/, not "javascript:alert(1)"',
  ],
  ['nme: A', '1:1 yaml-unknown-key "nme" is not a key that is known here'],
])('points at the fault in %j', (text, expected) => {
  expect(settings(text).faults).toEqual([expected]);
});
