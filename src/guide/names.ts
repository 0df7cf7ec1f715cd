import { directives } from '../directives/index.ts';
import type { DirectiveNames } from '../syntax/names.ts';
import type { Directive } from '../syntax/tree.ts';

const named = (form: Directive['form']): ReadonlySet<string> =>
  new Set(directives.filter((directive) => directive.form === form).map(({ name }) => name));

/** Every directive of the format by form, for the reader of the text. */
export const directiveNames: DirectiveNames = {
  leaf: named('leaf'),
  container: named('container'),
  text: named('text'),
  flags: new Set(
    directives.flatMap(({ attributes }) =>
      Object.entries(attributes).flatMap(([name, type]) => (type.flag ? [name] : [])),
    ),
  ),
};
