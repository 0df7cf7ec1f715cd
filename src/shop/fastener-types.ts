import type { Report } from '../diagnostics/report.ts';
import { required } from '../directives/attribute.ts';
import { drive, id, list, widthStandard, words, yesNo } from '../directives/attribute-types.ts';
import { directive } from '../directives/directive.ts';
import { nounOf } from '../job/index.ts';
import type { FastenerType } from '../model/item.ts';
import type { SourceFile } from '../source/source-file.ts';
import { type ListEntry, readEntries } from './list-entries.ts';

export const fastenersFile = 'fasteners.yaml';

/** An entry of `fasteners.yaml`, read as if it were a directive. */
const entryReader = directive({
  name: 'fastener type',
  form: 'leaf',
  label: 'required',
  attributes: {
    id: required(id),
    plural: words,
    drive,
    standard: widthStandard,
    reuse: yesNo,
    release: words,
    synonyms: list,
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

/** Reads the kinds of fastener that the shop knows. */
export function readFastenerTypes(source: SourceFile, report: Report): readonly ListEntry<FastenerType>[] {
  return readEntries(source, {}, () => entryReader, report);
}
