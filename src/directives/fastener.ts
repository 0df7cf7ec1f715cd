import { finding } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import type { Ref } from '../model/inline.ts';
import type { Fastener, FastenerType } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { ref } from './attributes/attribute-types.ts';
import {
  fixing,
  fixingAttributes,
  itemAttributes,
  itemBase,
  labelled,
  pictureAttributes,
} from './attributes/item-attributes.ts';
import { unnamed } from './attributes/unlabelled.ts';
import { directive, type Scope } from './directive.ts';
import { fastenerTypeUnknown } from './rules/fastener-type-unknown.ts';

/** Declares a fastener of the vehicle; its type fills in the drive and whether it can be used again. */
export const fastener = directive({
  name: 'fastener',
  form: 'leaf',
  label: 'optional',
  attributes: {
    ...itemAttributes,
    ...pictureAttributes,
    ...fixingAttributes,
    type: meant(
      ref,
      'An entry of `fasteners.yaml`. What stands there (name, drive, reuse, how it lets go) need not be written again.',
    ),
  },
  summary:
    'Declares fasteners of the vehicle, how many per side, and what they hold. `standard` says which standard the width across flats follows, so that the drive is held against that one alone. `friction` says what the torque is for (`dry`, `oiled`, `waxed`, or a nut factor); without it a nut factor of 0.20 is judged. `stack` names what lies on it, from the head to the nut, and `length` says how long it is under its head, or how thick a washer or spacer is. `coat` is the supply that goes on its thread, `left-hand` tells that it tightens anticlockwise, `one-by-one` that only one may be loose at a time, and `recheck` when the owner has it looked at again.',
  example: '::fastener[Liner screw]{#liner-screw drive=T15 count=3 side=each holds=cover}',
  build: (read): Fastener | null => {
    const { values, unknown, directive: found, scope } = read;
    if (!values.id) return null;
    const type = values.type ? typeOf(values.type.value, scope) : undefined;
    const noun = labelled(found.labelText, type?.noun);
    if (!noun) {
      return values.type || unknown.has('type') ? null : unnamed(values.id, scope);
    }
    const own = fixing(values, found.at);
    // What a type that is lost, or cannot be read, would have filled in is not known either.
    const typeLost = values.type !== null && type === undefined;
    const lost = ['drive', 'reuse', 'standard'].filter((name) => typeLost || type?.unknown.has(name));
    return {
      ...itemBase('fastener', read, values.id, noun),
      ...own,
      unknown: new Set([...unknown, ...lost]),
      standard: own.standard ?? (unknown.has('standard') ? null : (type?.standard ?? null)),
      drive: own.drive ?? (unknown.has('drive') ? null : (type?.drive ?? null)),
      reuse: values.reuse ? own.reuse : (type?.reuse ?? true),
      type: values.type?.value ?? null,
      spare: values.spare,
    };
  },
});

function typeOf(type: Ref, scope: Scope): FastenerType | undefined {
  const known = scope.fastenerTypes.get(type.value);
  if (known) return known;
  const likely = nearest(type.value, [...scope.fastenerTypes.keys()])[0];
  scope.report(
    finding(
      fastenerTypeUnknown,
      type.at,
      `"${type.value}" is not among the fastener types`,
      likely ? { suggestion: { at: type.at, text: likely } } : {},
    ),
  );
  return undefined;
}
