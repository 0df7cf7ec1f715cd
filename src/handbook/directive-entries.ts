import { directives } from '../directives/index.ts';
import type { HandbookEntry } from './entry.ts';

const colons = { leaf: '::', container: ':::', text: ':' } as const;

const forms = {
  leaf: 'on a line of its own',
  container: 'with content, closed by :::',
  text: 'within a sentence',
} as const;

/** Every directive in each of its forms, from the objects that read it. */
export const directiveEntries: readonly HandbookEntry[] = directives.map(
  ({ form, name, label, summary, attributes, example }) => ({
    name,
    id: `${form}-${name}`,
    title: `${colons[form]}${name}, ${forms[form]}${label === 'none' ? ', without a label' : ''}`,
    lead: summary,
    rows: Object.entries(attributes).map(([attribute, { expects, means, required }]) => ({
      name: attribute === 'id' ? '#id' : attribute,
      expects,
      means,
      needed: required === true,
    })),
    example,
  }),
);

/** The first page of each word: a declaration before the mention of what it declares. */
export const firstEntries: ReadonlyMap<string, HandbookEntry> = new Map(
  [...directiveEntries].reverse().map((entry) => [entry.name, entry]),
);

/** Every name that a directive has, each once. */
export const directiveWords: readonly string[] = [...new Set(directives.map(({ name }) => name))];
