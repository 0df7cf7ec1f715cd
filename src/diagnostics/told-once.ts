import type { Span } from '../source/span.ts';
import { compareFindings, type Finding, type Note } from './finding.ts';

/** Further places that are shown; one missing tool can be named in every step. */
const mostPlaces = 3;

/** The further places of one fault: the first few, and how many more there are. */
export function otherPlaces(message: string, places: readonly Span[]): readonly Note[] {
  const shown: readonly Note[] = places.slice(0, mostPlaces).map((at) => ({ message, at }));
  const more = places.length - shown.length;
  return more > 0 ? [...shown, { message: `and in ${more} more ${more === 1 ? 'place' : 'places'}` }] : shown;
}

/**
 * What one cause brings about in many places is told once, at the first of them: four holes for one screw are one
 * fault when the bit for them is missing. What else it brings about in the same place stands beside it. Findings without a cause of their own stay as they are.
 */
export function causesOnce(findings: readonly Finding[]): readonly Finding[] {
  const byCause = new Map<string, Finding[]>();
  const keyOf = ({ code, at, cause }: Finding) => `${code}\n${at.file}\n${cause}`;
  for (const one of findings) {
    if (one.cause === undefined) continue;
    const alike = byCause.get(keyOf(one));
    if (alike) alike.push(one);
    else byCause.set(keyOf(one), [one]);
  }
  // One word may be at fault in ten thousand places: they are put in order once, and not again for each.
  for (const alike of byCause.values()) alike.sort(compareFindings);
  return findings.flatMap((one) => {
    if (one.cause === undefined) return [one];
    const alike = byCause.get(keyOf(one)) ?? [];
    return one === alike[0] ? [toldWith(one, alike.slice(1))] : [];
  });
}

/** A finding with what else its cause brings about: beside it, and elsewhere. */
function toldWith(one: Finding, others: readonly Finding[]): Finding {
  const beside = others.filter(({ at, message }) => at.start === one.at.start && message !== one.message);
  const places = others.map(({ at }) => at).filter(({ start }) => start !== one.at.start);
  const more = [...beside.map(({ message }) => ({ message })), ...otherPlaces('the same here', places)];
  return { ...one, notes: [...one.notes, ...more] };
}
