import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { nearest } from '../../diagnostics/suggest.ts';
import type { Span, Written } from '../../source/span.ts';
import type { Scope } from '../directive.ts';
import { itemUnlabelled } from '../rules/item-unlabelled.ts';
import { supplyUnlisted } from '../rules/supply-unlisted.ts';
import { toolUnlisted } from '../rules/tool-unlisted.ts';

/** Reports a declaration that has no label and whose id nobody knows. Returns `null`, for its caller to return. */
export function unlabelled(
  what: string,
  id: Written<string>,
  place: string,
  known: Iterable<string>,
  scope: Scope,
): null {
  return reported(itemUnlabelled, what, id, place, known, scope);
}

/** The same for a supply, which the shop's list of supplies would name. */
export function unsupplied(id: Written<string>, scope: Scope): null {
  return reported(supplyUnlisted, 'supply', id, 'in supplies.yaml', scope.supplies.keys(), scope);
}

/** The same for a fastener, which may take its name from its type. */
export function unnamed(id: Written<string>, scope: Scope): null {
  const message = `"${id.value}" has neither a label nor a type that would name it: ::fastener[Name]{#${id.value}}`;
  scope.report(finding(itemUnlabelled, id.at, message));
  return null;
}

/** The same for what the tool crib would name. */
export function unlisted(what: 'tool' | 'wear', id: Written<string>, at: Span, scope: Scope): null {
  if (scope.crib.get(id.value)?.kind === 'wear') {
    const message = `"${id.value}" is protective equipment in the tool crib: declare it with ::wear{#${id.value}}`;
    scope.report(finding(toolUnlisted, at, message, { suggestion: { at, text: 'wear' } }));
    return null;
  }
  return reported(toolUnlisted, what, id, 'in the tool crib', scope.crib.keys(), scope);
}

function reported(
  card: RuleCard,
  what: string,
  id: Written<string>,
  place: string,
  known: Iterable<string>,
  scope: Scope,
): null {
  const likely = nearest(id.value, [...known])[0];
  const message = `"${id.value}" is not ${place}, so this ${what} needs a label: ::${what}[Name]{#${id.value}}`;
  scope.report(finding(card, id.at, message, likely ? { suggestion: { at: id.at, text: likely } } : {}));
  return null;
}
