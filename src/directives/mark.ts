import type { FigureMark } from '../model/block.ts';
import { meant, required } from './attribute.ts';
import { picturePoint } from './attribute-types.ts';
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
  },
  summary:
    'Sets a letter on the picture, as a fraction of its width and height, and opens its line of the key.',
  example: ':mark[A]{at="31%,44%"} lever tip, behind the lip',
  build: ({ values, directive: found }): Omit<FigureMark, 'text'> | null => {
    const letter = found.labelText.trim();
    return letter === '' ? null : { letter, point: values.at?.value ?? null, at: found.at };
  },
});
