import { finding } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import type { Written } from '../source/span.ts';
import type { Scope } from './directive.ts';
import { itemUnlabelled } from './rules/item-unlabelled.ts';

/** Reports a declaration that has no label and whose id nobody knows. Returns `null`, for its caller to return. */
export function unlabelled(
  what: string,
  id: Written<string>,
  place: string,
  known: Iterable<string>,
  scope: Scope,
): null {
  const likely = nearest(id.value, [...known])[0];
  scope.report(
    finding(
      itemUnlabelled,
      id.at,
      `"${id.value}" is not in ${place}, so this ${what} needs a label: ::${what}[Name]{#${id.value}}`,
      likely ? { suggestion: { at: id.at, text: likely } } : {},
    ),
  );
  return null;
}
