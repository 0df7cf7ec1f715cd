import type { Note } from '../../diagnostics/finding.ts';
import { actionsOf, stepsOf } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Item, WorkClass } from '../../model/item.ts';
import { isWritten } from '../language/written.ts';

/** A step that acts on an item whose work asks for special care. */
export interface ClassedStep {
  readonly step: Step;
  readonly item: Item;
  readonly work: WorkClass;
}

/** Every written step with each class of its work, named once by the first item that brings it. */
export function classedSteps(guide: Guide): readonly ClassedStep[] {
  return stepsOf(guide)
    .filter(isWritten)
    .flatMap((step) => {
      const classes = new Map<WorkClass, ClassedStep>();
      for (const { node } of actionsOf(step)) {
        const item = guide.items.get(node.target.value);
        const work = item?.work?.value;
        if (item && work && !classes.has(work)) classes.set(work, { step, item, work });
      }
      return [...classes.values()];
    });
}

/** What a class is called in a sentence. */
export const workNames: { readonly [K in WorkClass]: string } = {
  airbag: 'airbag work',
  brakes: 'work on the brakes',
  'seat-belt': 'work on a seat belt',
  'high-voltage': 'high-voltage work',
  towing: 'work on what tows',
};

/** What every finding about such work says besides. */
export function classNotes(item: Item): readonly Note[] {
  return [
    ...(item.work ? [{ message: `the ${item.noun.singular} is in this class`, at: item.work.at }] : []),
    { message: 'the vehicle maker’s data and licensed practice govern' },
  ];
}
