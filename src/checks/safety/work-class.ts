import type { Note } from '../../diagnostics/finding.ts';
import { actionsOf, stepsOf } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Item, WorkClass } from '../../model/item.ts';
import { isWritten } from '../language/written.ts';

/** A step that acts on items whose work asks for special care. */
interface ClassedStep {
  readonly step: Step;
  readonly work: WorkClass;
  /** The items that bring it, in the order in which they are acted on; never empty. */
  readonly items: readonly [Item, ...Item[]];
}

/** Every written step with each class of its work. */
export function classedSteps(guide: Guide): readonly ClassedStep[] {
  return stepsOf(guide)
    .filter(isWritten)
    .flatMap((step) => {
      const classes = new Map<WorkClass, ClassedStep>();
      for (const { node } of actionsOf(step)) {
        const item = guide.items.get(node.target.value);
        if (!item?.work) continue;
        const { value: work } = item.work;
        const known = classes.get(work);
        classes.set(work, { step, work, items: known ? [...known.items, item] : [item] });
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
export function classNotes(item: Item, { words }: Pick<Guide, 'words'>): readonly Note[] {
  return [
    ...(item.work ? [{ message: `the ${item.noun.singular} is in this class`, at: item.work.at }] : []),
    { message: `the ${words.vehicle} maker’s data and licensed practice govern` },
  ];
}
