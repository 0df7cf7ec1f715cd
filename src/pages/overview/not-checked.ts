import type { Guide } from '../../model/guide.ts';
import type { NotChecked } from '../../model/not-checked.ts';

/** What was not checked and why, as the page, the print and the JSON say it: "the torque of the brace bolts: …". */
export function notCheckedWords(one: NotChecked, { items, templates }: Guide): string {
  const noun = (id: string) => items.get(id)?.noun.singular ?? templates.get(id)?.title ?? id;
  switch (one.check) {
    case 'torque':
      return `the torque of the ${noun(one.item)}: ${torqueLacks[one.lacks]}`;
    case 'width':
      return `the width across flats of the ${noun(one.item)}: no table here has it for its thread`;
    case 'hole':
      return `the ${one.label.toLowerCase()} (${noun(one.item)}): ${holeLacks[one.lacks]}`;
    case 'cut':
      return `the corners of the cut “${noun(one.item)}”: the ${noun(one.tool)} states no least radius`;
    case 'wiring':
      return `wire and fuse of the ${noun(one.item)}: the guide declares no circuit`;
    case 'load':
      return one.lacks === 'limit'
        ? `the load of the ${noun(one.item)}: nothing that carries it states a limit of that kind`
        : `the load of the ${noun(one.item)} against the limit of the ${noun(one.against)}: they are of unlike kinds`;
  }
}

const torqueLacks = {
  thread: 'its thread is not stated',
  grade: 'its grade is not stated',
  table: 'no table here has its grade',
} as const;

const holeLacks = {
  fastener: 'nothing says what goes through it',
  thread: 'the thread of what goes through it is not stated',
  table: 'no table here has its size',
} as const;
