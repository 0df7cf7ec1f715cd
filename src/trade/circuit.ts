import { significant } from '../units/format.ts';
import type { Base, Millimetres } from '../units/quantity.ts';
import { ampacity, voltageDrop, type Wire } from './wire.ts';

/** A supply circuit as far as the author states it. */
interface CircuitFacts {
  readonly load: Base<'current'> | null;
  /** From the source to the load, one way. */
  readonly length: Millimetres | null;
  readonly wire: Wire | null;
  readonly fuse: Base<'current'> | null;
  readonly voltage: Base<'voltage'> | null;
}

/** A fault of a circuit, in a technician's words, without a closing full stop. */
export interface CircuitFault {
  readonly kind:
    | 'wire-too-small'
    | 'fuse-below-load'
    | 'fuse-near-load'
    | 'fuse-above-wire'
    | 'no-such-fuse'
    | 'voltage-drop'
    | 'voltage-drop-high';
  readonly message: string;
}

/**
 * Judges what of a circuit is stated: the fuse lies between the load and what the wire may carry, and the voltage
 * arrives.
 */
export function judgeCircuit(circuit: CircuitFacts): readonly CircuitFault[] {
  return [...wireFaults(circuit), ...fuseFaults(circuit), ...dropFaults(circuit)];
}

function wireFaults({ load, wire, fuse }: CircuitFacts): readonly CircuitFault[] {
  if (!wire) return [];
  const carries = ampacity(wire);
  const limit = `${wire.size}, which may carry ${significant(carries)} A`;
  const faults: CircuitFault[] = [];
  if (load !== null && load > carries) {
    faults.push({ kind: 'wire-too-small', message: `the load of ${amperes(load)} is too much for ${limit}` });
  }
  if (fuse !== null && fuse > carries) {
    faults.push({
      kind: 'fuse-above-wire',
      message: `the ${amperes(fuse)} fuse does not protect ${limit}: the wire burns first`,
    });
  }
  return faults;
}

/** A fuse carries a lasting load of 80 % of its mark: our own reckoning, as the trade does (no source). */
const LASTING = 0.8;
/** Above this, in A, fuses are of other kinds than blades. */
const GREATEST_BLADE = 40;

function fuseFaults({ load, fuse }: CircuitFacts): readonly CircuitFault[] {
  if (fuse === null) return [];
  const faults: CircuitFault[] = [];
  if (load !== null && fuse < load) {
    faults.push({
      kind: 'fuse-below-load',
      message: `the ${amperes(fuse)} fuse blows at the load of ${amperes(load)}`,
    });
  } else if (load !== null && load > LASTING * fuse) {
    const message = `the load of ${amperes(load)} is more than 80 % of the ${amperes(fuse)} fuse, which ages and blows (our own rule of thumb)`;
    faults.push({ kind: 'fuse-near-load', message });
  }
  if (fuse <= GREATEST_BLADE && fuseColour(fuse) === undefined) {
    const made = [...bladeFuses.keys()].join(', ');
    faults.push({
      kind: 'no-such-fuse',
      message: `no blade fuse is made for ${amperes(fuse)}; they are ${made} A`,
    });
  }
  return faults;
}

/** ABYC E-11: 3 % for what must work well, 10 % for the rest. */
const NOTICED_DROP = 0.03;
const GREATEST_DROP = 0.1;

function dropFaults({ load, length, wire, voltage }: CircuitFacts): readonly CircuitFault[] {
  if (load === null || length === null || wire === null || voltage === null) return [];
  const drop = voltageDrop(load, length, wire);
  const share = drop / voltage;
  const lost = `${significant(drop)} V of ${significant(voltage)} V (${Math.round(share * 100)} %) is lost in the wire`;
  if (share > GREATEST_DROP)
    return [{ kind: 'voltage-drop-high', message: `${lost}; more than 10 % starves the load` }];
  return share > NOTICED_DROP
    ? [{ kind: 'voltage-drop', message: `${lost}; more than 3 % dims a lamp` }]
    : [];
}

function amperes(current: Base<'current'>): string {
  return `${significant(current)} A`;
}

/** Blade fuses by rating in A and colour of the body (ISO 8820-3; 35 from memory). Maxi fuses have colours of their own. */
const bladeFuses: ReadonlyMap<number, string> = new Map([
  [1, 'black'],
  [2, 'grey'],
  [3, 'violet'],
  [4, 'pink'],
  [5, 'tan'],
  [7.5, 'brown'],
  [10, 'red'],
  [15, 'blue'],
  [20, 'yellow'],
  [25, 'clear'],
  [30, 'green'],
  [35, 'blue-green'],
  [40, 'orange'],
]);

/** The colour of a blade fuse; undefined where no blade fuse has that rating. */
export function fuseColour(rating: Base<'current'>): string | undefined {
  return bladeFuses.get(rating);
}
