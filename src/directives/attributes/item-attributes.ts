import { nounOf } from '../../job/words/noun.ts';
import type { PictureFact } from '../../model/guide.ts';
import type { Counted, Fixing, ItemKind, Noun } from '../../model/item.ts';
import type { Span, Written } from '../../source/span.ts';
import type { Scope, Values } from '../directive.ts';
import { meant, required } from './attribute.ts';
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
import { when } from './when.ts';
import { itemZones } from './zones.ts';

/** The most of one thing that a guide can count, per side. */
export const MOST = 999;

/** What every declared item may carry. */
export const itemAttributes = {
  id: meant(required(id), 'The name by which everything else speaks of it: `:remove[cover]`, `holds=cover`.'),
  plural: meant(words, 'Its name where there are several, for words that do not simply take an s.'),
  when,
  with: meant(
    refs,
    'The tools for all that is done to it, also in steps that are worked out. An action that names its own goes before it.',
  ),
  needs: meant(
    refs,
    'The state that must hold, the product that must be cured, or the reading that must be in range, before anything is done to it.',
  ),
  work: meant(
    oneOf('airbag', 'brakes', 'seat-belt', 'high-voltage', 'towing'),
    'The kind of work that asks for more care. Every step that acts on it is of that kind, with the messages and the sign-off that belong to it.',
  ),
  immobile: meant(
    flag,
    'While it is off, apart, loose or aside, or while it holds, the vehicle must not be moved. The page says so at each step.',
  ),
  zone: meant(
    itemZones,
    'The zones of the platform in which it lies. Without it, what it holds, sits on, replaces or covers tells, or what covers or holds it.',
  ),
};

/** What shows a thing that can be taken for another. */
export const pictureAttributes = {
  picture: meant(
    { ...words, expects: 'the path of a picture, as in `pictures/bracket.svg`' },
    'What it looks like, by itself. Stands small where it is listed, and large where its facts open over a step. Without it a tool has that of the crib, a fastener that of its type, and what is in the box that of the type whose name ends its own.',
  ),
  alt: meant(words, 'What its own picture shows, for whoever cannot see it; without it, its name is told.'),
};

/** What can be counted. */
export const countedAttributes = {
  count: meant(
    wholeNumber(1, MOST),
    'How many there are, on each side where it has sides; one where nothing is written.',
  ),
  side: meant(
    oneOf('each', 'left', 'right'),
    'The side of the vehicle, as seen sitting in it and facing forward; `each` is one lot on the left and one on the right.',
  ),
};

/** What says that an item takes up a place of the vehicle. */
export const takenPlaces = {
  takes: meant(
    refs,
    'Places of the vehicle that it takes for good, each a part, best one of the platform: a fuse way, an earth point, a spare plug. Each can be taken as often as its `count` says.',
  ),
};

/** What holds something in place. */
export const fixingAttributes = {
  ...countedAttributes,
  drive: meant(
    drive,
    'What the tool must fit. With a drive, taking it out and putting it in asks for a tool that fits.',
  ),
  standard: meant(
    widthStandard,
    'The standard that its width across flats follows, where several are in use; the drive is held against that one alone.',
  ),
  thread: meant(
    thread,
    'Its thread. The torque is held against what it can bear, and a nut against its bolt.',
  ),
  grade: meant(
    words,
    'The property class or grade on its head, as in `8.8`, `10` or `A2-70`. With it the torque can be judged closely.',
  ),
  torque: meant(
    torque,
    'What it is tightened to. Several passes stand one after the other; `:tighten` runs them all.',
  ),
  friction: meant(
    friction,
    'What the torque is stated for: a dry, oiled or waxed thread, or its nut factor. Without it 0.20 is judged.',
  ),
  pattern: meant(
    oneOf('cross', 'circle', 'row'),
    'The order in which several of them are tightened; the page draws it.',
  ),
  holds: meant(
    refs,
    'The parts that it holds in place. None of them comes off before it is out, and it goes in only when all of them are there.',
  ),
  reuse: meant(
    oneOf('yes', 'no'),
    '`no` for what is used once: it is discarded, and something in the kit or the supplies must replace it. Loosened is used up too: it is not tightened again.',
  ),
  replaces: meant(ref, 'The old part or fastener in whose place it goes.'),
  'free-when': meant(
    oneOf('loosened'),
    'What it holds comes free when it is only loosened, as from under a clamp; otherwise it must be out.',
  ),
  stack: meant(
    refs,
    'What lies on it, from the head to the nut. With a `length` on each the bolt is checked for length, and the page draws the section.',
  ),
  length: meant(
    size('length'),
    'Under the head for a bolt; how thick it is for a washer, a spacer or a nut.',
  ),
  coat: meant(ref, 'The supply that goes on its thread. Putting it in before that is applied is a finding.'),
  'left-hand': meant(flag, 'Its thread is left-hand: it tightens anticlockwise, and each step says so.'),
  'one-by-one': meant(flag, 'Only one of them may be loose at a time.'),
  recheck: meant(recheck, 'When the owner has it looked at again; stands on the hand-over sheet.'),
  spare: meant(
    wholeNumber(1, MOST),
    'How many of the box may be left over; without it every one must be fitted.',
  ),
};

/** The parts of an item that all kinds share, from its attributes. */
export function itemBase<K extends ItemKind>(
  kind: K,
  read: {
    readonly values: Values<typeof itemAttributes> & Partial<Values<typeof pictureAttributes>>;
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
    zones: values.zone?.value ?? [],
    picture: namedPicture(values, noun, scope),
    origins: scope.origins,
    unknown,
  };
}

/** The own picture of a thing; its name tells what is seen where nothing else does. */
function namedPicture(
  { picture, alt }: Partial<Values<typeof pictureAttributes>>,
  noun: Noun,
  scope: Scope,
): PictureFact | null {
  if (!picture) return null;
  return {
    path: scope.resolve(picture.value),
    src: picture,
    alt: alt ?? { value: noun.label, at: picture.at },
    figure: null,
    at: picture.at,
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
