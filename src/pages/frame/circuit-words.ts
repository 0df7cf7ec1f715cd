import { listed } from '../../job/words/noun.ts';
import type { Guide } from '../../model/guide.ts';
import type { Ref } from '../../model/inline.ts';
import type { Circuit } from '../../model/item.ts';
import { fuseColour } from '../../trade/circuit.ts';
import { formatBoth, formatQuantity } from '../../units/format.ts';

type Items = Pick<Guide, 'items'>;

/** "12 V, 6 A, 3 m of 2.5 mm² one way, red insulation, fuse 10 A (red), ends: ring lug and blade, crimped with the crimp tool". */
export function circuitWords(circuit: Circuit, guide: Items): string {
  const { voltage, load } = circuit;
  const fed = [voltage, load].flatMap((size) => (size ? [formatQuantity(size.value)] : []));
  return [...fed, ...cableParts(circuit, guide)].join(', ');
}

/** What is cut to length and closed at its ends, without what flows in it; empty where nothing of it is stated. */
export function cableWords(circuit: Circuit, guide: Items): string {
  return cableParts(circuit, guide).join(', ');
}

function cableParts(
  { length, wire, fuse, colour, ends, with: tools }: Circuit,
  guide: Items,
): readonly string[] {
  const run = [...(length ? [formatBoth(length.value)] : []), ...(wire ? [wire.value.size] : [])];
  const fuseInk = fuse ? fuseColour(fuse.value.base) : undefined;
  return [
    run.length > 0 ? `${run.join(' of ')}${length ? ' one way' : ''}` : null,
    colour ? `${colour.value} insulation` : null,
    fuse ? `fuse ${formatQuantity(fuse.value)}${fuseInk ? ` (${fuseInk})` : ''}` : null,
    ends.length > 0
      ? `${ends.length === 1 ? 'end' : 'ends'}: ${listed(named(ends, guide))}${tools.length > 0 ? `, ${closedWith(tools, guide)}` : ''}`
      : null,
  ].filter((part) => part !== null);
}

function closedWith(tools: readonly Ref[], guide: Items): string {
  const solders = tools.some(({ value }) => {
    const tool = guide.items.get(value);
    return tool?.kind === 'tool' && tool.solders && !tool.crimps;
  });
  return `${solders ? 'soldered' : 'crimped'} with the ${listed(named(tools, guide))}`;
}

function named(refs: readonly Ref[], { items }: Items): readonly string[] {
  return refs.map(({ value }) => items.get(value)?.noun.singular ?? value);
}
