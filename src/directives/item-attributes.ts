import { nounOf } from '../job/noun.ts';
import type { Counted, Fixing, ItemKind, Noun } from '../model/item.ts';
import type { Span, Written } from '../source/span.ts';
import { required } from './attribute.ts';
import {
  drive,
  flag,
  friction,
  id,
  oneOf,
  recheck,
  ref,
  refs,
  size,
  thread,
  torque,
  wholeNumber,
  widthStandard,
  words,
} from './attribute-types.ts';
import type { Scope, Values } from './directive.ts';
import { when } from './when.ts';

/** The most of one thing that a guide can count, per side. */
export const MOST = 999;

/** What every declared item may carry. */
export const itemAttributes = {
  id: required(id),
  plural: words,
  when,
  with: refs,
  needs: refs,
  work: oneOf('airbag', 'brakes', 'seat-belt', 'high-voltage', 'towing'),
  immobile: flag,
};

/** What can be counted. */
export const countedAttributes = {
  count: wholeNumber(1, MOST),
  side: oneOf('each', 'left', 'right'),
};

/** What holds something in place. */
export const fixingAttributes = {
  ...countedAttributes,
  drive,
  standard: widthStandard,
  thread,
  grade: words,
  torque,
  friction,
  pattern: oneOf('cross', 'circle', 'row'),
  holds: refs,
  reuse: oneOf('yes', 'no'),
  replaces: ref,
  'free-when': oneOf('loosened'),
  stack: refs,
  length: size('length'),
  coat: ref,
  'left-hand': flag,
  'one-by-one': flag,
  recheck,
  spare: wholeNumber(1, MOST),
};

/** The parts of an item that all kinds share, from its attributes. */
export function itemBase<K extends ItemKind>(
  kind: K,
  read: {
    readonly values: Values<typeof itemAttributes>;
    readonly unknown: ReadonlySet<string>;
    readonly directive: { readonly at: Span };
    readonly scope: Scope;
  },
  id: Written<string>,
  noun: Noun,
) {
  const { values, unknown, directive, scope } = read;
  return {
    kind,
    id: id.value,
    noun: values.plural ? { ...noun, plural: values.plural.value } : noun,
    at: directive.at,
    idAt: id.at,
    when: values.when,
    with: values.with?.value ?? [],
    needs: values.needs?.value ?? [],
    work: values.work,
    immobile: values.immobile !== null,
    origins: scope.origins,
    unknown,
  };
}

/** How many and on which side; one where nothing is written. */
export function counted(values: Values<typeof countedAttributes>, at: Span): Counted {
  return {
    count: values.count ?? { value: 1, at },
    countWritten: values.count !== null,
    side: values.side,
  };
}

/** What holds something in place, from its attributes. */
export function fixing(values: Values<typeof fixingAttributes>, at: Span): Fixing {
  return {
    ...counted(values, at),
    drive: values.drive,
    standard: values.standard,
    thread: values.thread,
    grade: values.grade,
    torque: values.torque,
    friction: values.friction,
    pattern: values.pattern,
    holds: values.holds?.value ?? [],
    reuse: values.reuse?.value !== 'no',
    replaces: values.replaces?.value ?? null,
    freeWhenLoosened: values['free-when'] !== null,
    stack: values.stack?.value ?? [],
    length: values.length,
    coat: values.coat?.value ?? null,
    leftHand: values['left-hand'] !== null,
    oneByOne: values['one-by-one'] !== null,
    recheck: values.recheck,
  };
}

/** The noun of a declaration: its own label, or else the one it is known by elsewhere. */
export function labelled(labelText: string, known: Noun | undefined): Noun | null {
  const label = labelText.trim();
  return label === '' ? (known ?? null) : nounOf(label);
}
