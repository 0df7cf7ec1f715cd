import { stepsOf } from '../job/actions/walk.ts';
import { whenInWords } from '../job/builds/build-words.ts';
import { findTarget, targetNoun } from '../job/index.ts';
import type { Guide } from '../model/guide.ts';
import type { When } from '../model/when.ts';
import type { Written } from '../source/span.ts';
import { formatBoth, formatRangeBoth } from '../units/format.ts';
import type { Quantity, QuantityRange } from '../units/quantity.ts';
import type { Fact } from './record.ts';

/** What the makers of facts look up. */
export interface Telling {
  readonly guide: Guide;
  /** What a thing or a step is called; its id where nothing has it. */
  readonly label: (id: string) => string;
}

/** Readies the making of facts of a guide. */
export function tellingOf(guide: Guide): Telling {
  const titles = new Map(stepsOf(guide).map(({ id, titleText }) => [id, titleText]));
  return {
    guide,
    label: (id) => {
      const target = findTarget(guide, id);
      if (target) return targetNoun(target).label;
      return guide.sequences.get(id)?.label ?? titles.get(id) ?? id;
    },
  };
}

/** A fact in words; none where nothing is written. */
export function told(name: string, says: string | null | undefined): readonly Fact[] {
  return says === null || says === undefined || says === '' ? [] : [{ name, says: spaced(says) }];
}

/** A fact that is either so or not said. */
export function yesFact(name: string, is: boolean): readonly Fact[] {
  return is ? [{ name, says: 'yes' }] : [];
}

/** A quantity in both units, which means the same in whichever it was written. */
export function quantityFact(name: string, written: Written<Quantity> | null): readonly Fact[] {
  return written ? [{ name, says: formatBoth(written.value), means: meant(written.value) }] : [];
}

/** A range of quantities. */
export function rangeFact(name: string, written: Written<QuantityRange> | null): readonly Fact[] {
  if (!written) return [];
  const { least, most } = written.value;
  return [{ name, says: formatRangeBoth(written.value), means: `${meant(least)} to ${meant(most)}` }];
}

/** Things and steps that are named; where their order says nothing it is left out. */
export function names(
  name: string,
  refs: readonly Written<string>[],
  { label }: Telling,
  ordered = false,
): readonly Fact[] {
  if (refs.length === 0) return [];
  const written = refs.map(({ value }) => value);
  const ids = ordered ? written : [...new Set(written)].sort();
  return [{ name, says: ids.map(label).join(', '), ids }];
}

/** For which builds something stands. */
export function onlyFor(when: When | null | undefined, { guide }: Telling): readonly Fact[] {
  return when ? told('only', whenInWords(when, guide.builds.options)) : [];
}

/** In the base unit, without what no hand or gauge can tell. */
function meant({ base, dimension }: Quantity): string {
  return `${dimension} ${Number(base.toPrecision(6))}`;
}

/** Runs of white space as one space, as a page prints them; a space that does not break is one too. */
export function spaced(text: string): string {
  return text.replace(/\s+/g, ' ').trim();
}
