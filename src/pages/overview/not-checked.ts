import type { Guide } from '../../model/guide.ts';
import type { NotChecked } from '../../model/not-checked.ts';

/** What was not checked and why, as the page, the print and the JSON say it: "the torque of the brace bolts: …". */
export function notCheckedWords(one: NotChecked, { items, templates }: Guide): string {
  const noun = (id: string) => items.get(id)?.noun.singular ?? templates.get(id)?.title ?? id;
  switch (one.check) {
    case 'torque':
      return `the torque of the ${noun(one.item)}: ${torqueLacks[one.lacks]}`;
    case 'fit':
      return `whether the ${noun(one.tool)} fits the ${noun(one.item)}: its drive is not stated`;
    case 'grip':
      return `whether the ${noun(one.item)} is long enough for what lies on it: the length of the ${noun(one.piece)} is not stated`;
    case 'joint':
      return `whether the threads on the ${noun(one.item)} agree: that of the ${noun(one.piece)} is not stated`;
    case 'width':
      return `the width across flats of the ${noun(one.item)}: no table here has it for its thread`;
    case 'hole':
      return `the ${one.label.toLowerCase()} (${noun(one.item)}): ${holeLacks[one.lacks]}`;
    case 'cut':
      return `the corners of the cut “${noun(one.item)}”: the ${noun(one.tool)} states no least radius`;
    case 'panel':
      return `whether the cuts of “${noun(one.item)}” and “${noun(one.other)}” keep clear of each other: they are not measured from the same datums`;
    case 'wiring':
      return `wire and fuse of the ${noun(one.item)}: the guide declares no circuit`;
    case 'cure':
      return `whether the ${noun(one.item)} has cured before it is loaded or gets wet: nothing that waits for it states needs=${one.item}`;
    case 'care':
      return `the messages and signatures that belong to work on the ${noun(one.item)}: it does not state work=${one.work}`;
    case 'load':
      if ('guide' in one) return `what “${one.guide}” adds to the ${noun(one.item)}: it states no load`;
      return 'against' in one
        ? `the load of the ${noun(one.item)} against the limit of the ${noun(one.against)}: they are of unlike kinds`
        : `the load of the ${noun(one.item)}: ${loadLacks[one.lacks]}`;
  }
}

const loadLacks = {
  limit: 'nothing that carries it states a limit of that kind',
  figure: 'neither a limit nor a load is stated',
} as const;

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
