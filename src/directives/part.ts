import type { Part } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { refs, size } from './attributes/attribute-types.ts';
import {
  counted,
  countedAttributes,
  itemAttributes,
  itemBase,
  labelled,
  pictureAttributes,
} from './attributes/item-attributes.ts';
import { unlabelled } from './attributes/unlabelled.ts';
import { directive } from './directive.ts';

/** Declares a part of the vehicle; without a label it comes from the platform. */
export const part = directive({
  name: 'part',
  form: 'leaf',
  label: 'optional',
  attributes: {
    ...itemAttributes,
    ...pictureAttributes,
    ...countedAttributes,
    covers: meant(refs, 'What cannot be reached while it is in place: parts, fasteners or plugs.'),
    length: meant(size('length'), 'How long it is along a bolt that goes through it.'),
  },
  summary:
    'Declares a part of the vehicle, what it covers, and with `length` how long it is along the bolts that go through it.',
  example: '::part[Bumper cover]{#cover covers=beam}',
  build: (read): Part | null => {
    const { values, directive: found, scope } = read;
    if (!values.id) return null;
    const known = scope.platformParts.get(values.id.value);
    const noun = labelled(found.labelText, known?.noun);
    if (!noun)
      return unlabelled(
        'part',
        values.id,
        'among the parts of the platform',
        scope.platformParts.keys(),
        scope,
      );
    const own = itemBase('part', read, values.id, noun);
    const number = counted(values, found.at);
    return {
      ...own,
      ...number,
      when: own.when ?? known?.when ?? null,
      work: own.work ?? known?.work ?? null,
      immobile: own.immobile || known?.immobile === true,
      zones: own.zones.length > 0 ? own.zones : (known?.zones ?? []),
      count: values.count ?? known?.count ?? number.count,
      countWritten: number.countWritten || known?.countWritten === true,
      picture: own.picture ?? known?.picture ?? null,
      side: values.side ?? known?.side ?? null,
      covers: values.covers?.value ?? known?.covers ?? [],
      length: values.length ?? known?.length ?? null,
      fromPlatform: known !== undefined,
    };
  },
});
