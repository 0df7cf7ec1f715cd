import type { Report } from '../../diagnostics/report.ts';
import { meant, required } from '../../directives/attributes/attribute.ts';
import { drive, id, list, widthStandard, words, yesNo } from '../../directives/attributes/attribute-types.ts';
import { directive } from '../../directives/directive.ts';
import { nounOf } from '../../job/index.ts';
import type { FastenerType } from '../../model/item.ts';
import type { SourceFile } from '../../source/source-file.ts';
import { type ListEntry, ownAlt, ownPicture, readEntries } from './list-entries.ts';

export const fastenersFile = 'fasteners.yaml';

/** An entry of `fasteners.yaml`, read as if it were a directive. */
export const fastenerType = directive({
  name: 'fastener type',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: meant(required(id), 'The name by which `type=` speaks of it.'),
    plural: meant(words, 'Its name where there are several, for words that do not simply take an s.'),
    drive: meant(drive, 'What the tool must fit.'),
    standard: meant(widthStandard, 'The standard that its width across flats follows.'),
    reuse: meant(yesNo, '`no` for a kind that is used once and replaced.'),
    release: meant(words, 'How it lets go, in a sentence; stands on its page.'),
    synonyms: meant(list, 'What else it is called; the search finds it by these too.'),
  },
  summary: 'A kind of fastener: its drive, whether it goes back, and how it lets go.',
  example: '',
  build: ({ values, unknown, directive: found }): FastenerType | null => {
    if (!values.id) return null;
    const noun = nounOf(found.labelText);
    return {
      id: values.id.value,
      noun: values.plural ? { ...noun, plural: values.plural.value } : noun,
      drive: values.drive,
      standard: values.standard,
      reuse: values.reuse?.value ?? true,
      release: values.release?.value ?? null,
      synonyms: values.synonyms?.value ?? [],
      unknown,
      at: found.at,
    };
  },
});

/** What an entry says besides what its kind does. */
export const typeKeys = { picture: ownPicture, alt: ownAlt };

/** Reads the kinds of fastener that the shop knows. */
export function readFastenerTypes(source: SourceFile, report: Report): readonly ListEntry<FastenerType>[] {
  return readEntries(source, typeKeys, () => fastenerType, report);
}
