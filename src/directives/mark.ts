import type { FigureMark } from '../model/block.ts';
import { meant, required } from './attributes/attribute.ts';
import { picturePoint, picturePoints } from './attributes/attribute-types.ts';
import { directive } from './directive.ts';

/** A letter on the picture; the list item that it opens is its text in the key. */
export const mark = directive({
  name: 'mark',
  form: 'text',
  label: 'required',
  attributes: {
    at: meant(
      required(picturePoint),
      'The point that the line leads to, by how far across and how far down the upright picture it lies.',
    ),
    also: meant(
      picturePoints,
      'Where the others of the same kind are, each in the form of `at`: they get a dot, and where the step tightens them in an order, each its number.',
    ),
  },
  summary:
    'Sets a letter on the picture, as a fraction of its width and height, and opens its line of the key.',
  example: ':mark[A]{at="31%,44%"} lever tip, behind the lip',
  build: ({ values, directive: found }): Omit<FigureMark, 'text'> | null => {
    const letter = found.labelText.trim();
    const place = { point: values.at?.value ?? null, also: values.also?.value ?? [] };
    return letter === '' ? null : { letter, ...place, at: found.at };
  },
});
