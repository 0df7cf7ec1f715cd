import { finding } from '../diagnostics/rule-card.ts';
import type { MentionKind, Ref } from '../model/inline.ts';
import type { Inline } from '../model/prose.ts';
import type { Directive } from '../syntax/tree.ts';
import { meant } from './attributes/attribute.ts';
import { id, words } from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import { type DirectiveReader, directive, type Scope } from './directive.ts';
import { targetMissing } from './rules/target-missing.ts';

const kinds: readonly MentionKind[] = [
  'wear',
  'tool',
  'supply',
  'kit',
  'part',
  'fastener',
  'connector',
  'condition',
  'setting',
  'inspection',
  'rating',
  'circuit',
  'step',
  'cut-template',
  'hole',
];

function summaryOf(of: MentionKind): string {
  if (of !== 'hole') return `Mentions a ${of} by its id and prints its name.`;
  return 'Mentions a hole, slot or pattern of a cut template by its id, prints its name and leads to its line in the table of the template.';
}

/** Mentions of everything that has a name: they print the noun from its declaration. */
export const mentions: readonly DirectiveReader<Inline>[] = kinds.map((of) =>
  directive({
    name: of,
    form: 'text',
    label: 'required',
    attributes: { as: meant(words, 'Words in the place of its name.'), when },
    summary: summaryOf(of),
    example: `:${of}[some-id]`,
    build: ({ values, directive: found, scope }) => {
      const target = targetOf(found, scope);
      return (
        target && {
          type: 'mention',
          of,
          target,
          as: values.as?.value ?? null,
          when: values.when,
          at: found.at,
        }
      );
    },
  }),
);

/** The id in a directive's brackets; `null`, and a finding, where it is no id. */
export function targetOf(found: Directive, scope: Scope): Ref | null {
  const written = found.labelText.trim();
  if (written === '') return null;
  const reading = id.read(written, found.labelAt);
  if (reading.ok) return { value: reading.value, at: found.labelAt };
  const suggestion =
    reading.suggestion === undefined ? undefined : { at: found.labelAt, text: reading.suggestion };
  scope.report(
    finding(
      targetMissing,
      found.labelAt,
      `:${found.name}[…] takes an id as it is declared; ${reading.message}`,
      {
        suggestion,
      },
    ),
  );
  return null;
}
