import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, it } from 'vitest';
import { parse } from 'yaml';
import { newWorkspace } from '../../src/desk/new-shared.ts';
import { fileEntries } from '../../src/handbook/file-entries.ts';
import { type FileSchema, fileSchemas } from '../../src/handbook/file-schemas.ts';
import { repository } from '../driver.ts';

/** What Ajv, a reference implementation of JSON Schema 2020-12, says of a YAML text. */
function faults(schema: FileSchema | undefined, text: string): readonly string[] {
  const ajv = new Ajv2020({
    allowUnionTypes: true,
    allErrors: true,
    formats: { uri: URL.canParse },
  });
  ajv.validate(schema ?? {}, parse(text));
  return (ajv.errors ?? []).map(({ instancePath, keyword }) => `${instancePath} ${keyword}`);
}

const schemas = fileSchemas();
const yaml = fileEntries.filter(({ name }) => name.endsWith('.yaml'));

describe('a JSON Schema for each YAML file', () => {
  it('is there for every one that has keys', () => {
    expect([...schemas.keys()].sort()).toEqual(yaml.map(({ name }) => name).sort());
  });

  it('lets through what the handbook, the demo and a new workspace write', () => {
    const demo = ['shop.yaml', 'tools.yaml', 'fasteners.yaml', 'supplies.yaml'].map(
      (name) => [name, readFileSync(join(repository, 'guides', name), 'utf8')] as const,
    );
    const begun = [...newWorkspace({ name: 'Kerb Lane', units: 'us' })].filter(([path]) =>
      path.endsWith('.yaml'),
    );
    const shown = yaml.flatMap(({ example }) =>
      typeof example === 'string'
        ? []
        : Object.entries(example).filter(([path]) => /(?:^|\/)[a-z]+\.yaml$/.test(path)),
    );
    const all = [...demo, ...begun, ...shown];
    expect(all.length).toBeGreaterThan(10);
    for (const [path, text] of all) {
      const schema = schemas.get(path.replace(/^.*\//, ''));
      expect(schema, path).toBeDefined();
      expect([path, ...faults(schema, text)]).toEqual([path]);
    }
  });

  it('tells a key that there is not, one that is missing, and an id that is none', () => {
    expect(faults(schemas.get('tools.yaml'), 'bit-t25: {name: T25 bit, drvie: T25}')).toEqual([
      '/bit-t25 additionalProperties',
    ]);
    expect(faults(schemas.get('tools.yaml'), 'bit-t25: {drive: T25}')).toEqual(['/bit-t25 required']);
    expect(faults(schemas.get('tools.yaml'), 'Bit_T25: {name: T25 bit}')).toContain(' propertyNames');
    expect(faults(schemas.get('shop.yaml'), 'name: Kerb Lane\nunits: imperial')).toEqual(['/units enum']);
    expect(faults(schemas.get('shop.yaml'), 'units: us')).toEqual([' required']);
  });

  it('says of each key what it means', () => {
    for (const { name, rows } of yaml) {
      const text = JSON.stringify(schemas.get(name));
      for (const { means } of rows) expect(text).toContain(JSON.stringify(means).slice(1, -1));
    }
  });

  it('is named by the first line of each file of a new workspace', () => {
    const files = newWorkspace({ name: 'Kerb Lane', units: 'metric' });
    for (const name of ['shop.yaml', 'tools.yaml', 'fasteners.yaml']) {
      const path = /^# yaml-language-server: \$schema=(\S+)\n/.exec(files.get(name) ?? '')?.[1] ?? '';
      expect(JSON.parse(files.get(path) ?? '{}')).toEqual(JSON.parse(JSON.stringify(schemas.get(name))));
    }
  });
});
