import type { Supply } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { flag, friction, list, quantity, ref, size } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled } from './attributes/item-attributes.ts';
import { unsupplied } from './attributes/unlabelled.ts';
import { yields } from './attributes/yields.ts';
import { directive } from './directive.ts';

/** Declares something that is used up; without a label it comes from the shop's list of supplies. */
export const supply = directive({
  name: 'supply',
  form: 'leaf',
  label: 'optional',
  attributes: {
    ...itemAttributes,
    quantity: meant(quantity('length', 'volume', 'mass', 'area'), 'How much of it the job takes in all.'),
    temporary: meant(flag, 'It must come off again before the end, as masking tape does.'),
    replaces: meant(
      ref,
      'What of the vehicle is thrown away and made good with it, as a bead of sealant that is cut.',
    ),
    friction: meant(friction, 'What it makes of a thread. A fastener with it as its `coat` is judged so.'),
    dries: meant(size('time'), 'From putting it on until something may be put over it or against it.'),
    cures: meant(size('time'), 'From putting it on until what `needs` it may begin.'),
    'open-time': meant(size('time'), 'From putting it on until what it is for must be in place.'),
    yields: meant(yields, 'How far it goes.'),
    pack: meant(quantity('length', 'volume', 'mass', 'area'), 'How much is in one package as it is bought.'),
    synonyms: meant(list, 'What else it is called; the search finds it by these too.'),
  },
  summary:
    'Declares something that the job uses up, with how much of it; `temporary` must come off again, and one with `replaces` takes the place of what was there. `friction` says what it makes of a thread: every fastener with it as its `coat` is judged so. Without a label it is one of `supplies.yaml`, with what stands there. `dries` runs from putting it on until something may be put over it or against it, `cures` until what `needs` it may begin, `open-time` until what it is for must be in place; `:apply` says with `on` what it is put on. `yields` says how far it goes, and `pack` how much is in one package.',
  example: '::supply[Masking tape, 25 mm]{#tape quantity="2 m" temporary}',
  build: (read): Supply | null => {
    const { values, unknown, directive: found, scope } = read;
    if (!values.id) return null;
    const known = scope.supplies.get(values.id.value);
    const noun = labelled(found.labelText, known?.noun);
    if (!noun) return unsupplied(values.id, scope);
    return {
      ...itemBase('supply', read, values.id, noun),
      // What the list says of it and cannot be read is unknown here too.
      unknown: new Set([...unknown, ...(known?.unknown ?? [])]),
      quantity: values.quantity ?? known?.quantity ?? null,
      temporary: values.temporary !== null || known?.temporary === true,
      replaces: values.replaces?.value ?? null,
      friction: values.friction ?? known?.friction ?? null,
      dries: values.dries ?? known?.dries ?? null,
      cures: values.cures ?? known?.cures ?? null,
      openTime: values['open-time'] ?? known?.openTime ?? null,
      yields: values.yields ?? known?.yields ?? null,
      pack: values.pack ?? known?.pack ?? null,
      synonyms: values.synonyms?.value ?? known?.synonyms ?? [],
    };
  },
});
