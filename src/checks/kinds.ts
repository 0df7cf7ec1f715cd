import type { Target } from '../job/index.ts';
import type { Span } from '../source/span.ts';

/** What something is, in the word that declares it. */
export function kindOf(target: Target): string {
  switch (target.kind) {
    case 'item':
      return target.item.kind;
    case 'template':
      return 'cut-template';
    case 'hole':
      return 'hole';
  }
}

/** Where something is declared. */
export function declaredAt(target: Target): Span {
  switch (target.kind) {
    case 'item':
      return target.item.idAt;
    case 'template':
      return target.template.at;
    case 'hole':
      return target.feature.at;
  }
}

/** A kind with its article, as a sentence has it: "a part", "a kit item". */
export function articled(kind: string): string {
  if (kind === 'wear') return 'protective equipment';
  const noun = kind === 'kit' ? 'kit item' : kind;
  return `${/^[aeiou]/.test(noun) ? 'an' : 'a'} ${noun}`;
}
