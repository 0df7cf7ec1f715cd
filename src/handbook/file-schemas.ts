import * as z from 'zod';
import { releasesSchema } from '../release/entries.ts';
import { settingsSchema } from '../shop/lists/settings.ts';
import { daySchema } from '../visit/request/read-day.ts';
import { fileEntries } from './file-entries.ts';

/** A JSON Schema (2020-12), as an editor reads it. */
export type FileSchema = { readonly [key: string]: unknown };

const dialect = { $schema: 'https://json-schema.org/draft/2020-12/schema' } as const;

/** What an id looks like, as the format reads it. */
const idPattern = '^[a-z0-9]+(-[a-z0-9]+)*$';

/**
 * A JSON Schema for each YAML file of a workspace, by the name of the file, made from what reads it: editors that know
 * nothing of Baybook offer its keys with their meaning, and tell one that there is not.
 */
export function fileSchemas(): ReadonlyMap<string, FileSchema> {
  const lists = ['tools.yaml', 'fasteners.yaml', 'supplies.yaml'];
  return new Map([
    ['shop.yaml', ofKeys(settingsSchema)],
    ...lists.map((name) => [name, ofList(name)] as const),
    ['releases.yaml', ofKeys(releasesSchema)],
    ['day.yaml', ofKeys(daySchema)],
  ]);
}

function ofKeys(schema: z.ZodType): FileSchema {
  const made = z.toJSONSchema(schema, {
    io: 'input',
    unrepresentable: 'any',
    // What is expected is no word of the standard; it is told with what is meant.
    override: ({ jsonSchema }) => {
      const { expects, description } = jsonSchema as { expects?: string; description?: string };
      delete (jsonSchema as { expects?: string }).expects;
      if (expects !== undefined) jsonSchema.description = told(description ?? '', expects);
    },
  });
  return { ...made, ...dialect };
}

/** A map of things by id, each read as a directive: its values are checked by Baybook, its keys here. */
function ofList(name: string): FileSchema {
  const rows = fileEntries.find((entry) => entry.name === name)?.rows ?? [];
  const properties = rows.map(({ name: key, expects, means }) => [
    key,
    { description: told(means, expects) },
  ]);
  return {
    ...dialect,
    type: 'object',
    propertyNames: { pattern: idPattern },
    additionalProperties: {
      type: 'object',
      properties: Object.fromEntries(properties),
      required: rows.flatMap(({ name: key, needed }) => (needed ? [key] : [])),
      additionalProperties: false,
    },
  };
}

function told(means: string, expects: string): string {
  return expects === '' ? means : `${means} Expected: ${expects}.`;
}
