import type { Block, NoteBlock } from '../model/block.ts';
import { when } from './attributes/when.ts';
import { type BlockReader, directive } from './directive.ts';

const kinds: { readonly [K in NoteBlock['type']]: string } = {
  note: 'Informs; it never instructs.',
  why: 'Explains to trainees; folded on screen and left out of the print.',
  owner: 'Goes on the hand-over sheet for the owner.',
};

/** Text beside the steps. */
export const notes: readonly BlockReader[] = (Object.keys(kinds) as NoteBlock['type'][]).map((type) =>
  directive({
    name: type,
    form: 'container',
    label: 'optional',
    attributes: { when },
    summary: kinds[type],
    example: `:::${type}\nThe screw cannot be seen until the liner is folded back.\n:::`,
    build: ({ values, directive: found, scope }): Block | null =>
      found.form === 'container'
        ? {
            type,
            title: found.label && scope.prose(found.label),
            body: scope.body(found.children),
            when: values.when,
            at: found.at,
          }
        : null,
  }),
);
