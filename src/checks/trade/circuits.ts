import type { Report } from '../../diagnostics/report.ts';
import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import type { Guide } from '../../model/guide.ts';
import type { Circuit } from '../../model/item.ts';
import type { Span } from '../../source/span.ts';
import { type CircuitFault, judgeCircuit } from '../../trade/circuit.ts';
import { deferral } from './deferral.ts';

/** What a circuit has to state before it can be judged, in the order in which an author writes it. */
export const circuitFacts = ['load', 'length', 'wire', 'fuse', 'voltage'] as const;

/** The circuits of a guide. */
export function circuitsOf({ items }: Guide): readonly Circuit[] {
  return [...items.values()].filter((item) => item.kind === 'circuit');
}

/** Reports the faults of some kinds in every circuit, as far as what it states can be judged. */
export function reportCircuits(
  card: RuleCard,
  kinds: readonly CircuitFault['kind'][],
  guide: Guide,
  report: Report,
): void {
  for (const circuit of circuitsOf(guide)) {
    for (const fault of faultsOf(circuit)) {
      if (!kinds.includes(fault.kind)) continue;
      const notes = [...secondPlace(circuit, fault.kind), deferral(guide)];
      const message = `in the ${circuit.noun.singular}, ${fault.message}`;
      report(finding(card, placeOf(circuit, fault.kind), message, { notes }));
    }
  }
}

function faultsOf({ load, length, wire, fuse, voltage }: Circuit): readonly CircuitFault[] {
  const faults = judgeCircuit({
    load: load?.value.base ?? null,
    length: length?.value.base ?? null,
    wire: wire?.value ?? null,
    fuse: fuse?.value.base ?? null,
    voltage: voltage?.value.base ?? null,
  });
  // A wire that is too thin for the load is too thin for its fuse as well: one fault.
  const thin = faults.some(({ kind }) => kind === 'wire-too-small');
  return thin ? faults.filter(({ kind }) => kind !== 'fuse-above-wire') : faults;
}

function placeOf({ wire, fuse, at }: Circuit, kind: CircuitFault['kind']): Span {
  return (kind.includes('fuse') ? fuse?.at : wire?.at) ?? at;
}

function secondPlace({ load, wire, length }: Circuit, kind: CircuitFault['kind']) {
  if (kind === 'no-such-fuse') return [];
  if (kind === 'fuse-above-wire') return wire ? [{ message: 'the wire is stated here', at: wire.at }] : [];
  if (kind.startsWith('voltage')) {
    return length ? [{ message: 'the length, one way, is stated here', at: length.at }] : [];
  }
  return load ? [{ message: 'the load is stated here', at: load.at }] : [];
}
