import type { BenchItem } from '../../model/job.ts';
import type { GuideContext } from '../frame/context.ts';

/** What tells the nouns of things and the words for sides. */
interface Words {
  readonly guide: Pick<GuideContext['guide'], 'items' | 'words'>;
}

/** "bumper cover", "6 liner screws", "fog lamp plug (left)". */
export function benchItemWords({ item: id, count, side }: BenchItem, { guide }: Words): string {
  const noun = guide.items.get(id)?.noun;
  const name = count === 1 ? (noun?.singular ?? id) : `${count} ${noun?.plural ?? id}`;
  return side === 'left' || side === 'right' ? `${name} (${guide.words[side]})` : name;
}
