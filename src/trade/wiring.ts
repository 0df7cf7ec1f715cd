import { significant } from '../units/format.ts';
import { plainText, readNumber } from '../units/number.ts';
import { type Base, base, type Millimetres } from '../units/quantity.ts';
import { decimalComma, type TradeProblem, tradeProblem } from './problem.ts';

/** A copper wire by its size. */
export interface Wire {
  /** As printed: `2.5 mm²`, `12 AWG`, `10 SAE`. */
  readonly size: string;
  readonly area: Base<'area'>;
}

/** A wire size, or what is wrong with the text. */
export type ParsedWire = { readonly ok: true; readonly wire: Wire } | TradeProblem;

/** Metric conductors (ISO 6722), in mm². */
const metricSizes = [0.35, 0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120];

/** SAE conductors in circular mils: some 10 % less copper than the AWG size of the same number. */
const saeMils: { readonly [gauge: string]: number } = {
  18: 1537,
  16: 2336,
  14: 3702,
  12: 5833,
  10: 9343,
  8: 14810,
  6: 25910,
};

/** A circular mil in mm²: a circle of a thousandth of an inch. */
const CIRCULAR_MIL = (Math.PI / 4) * 0.0254 ** 2;

const expects = 'write, for example, "2.5 mm²", "14 AWG" or "14 SAE"';

/** Reads a wire size: `2.5 mm²`, `14 AWG`, `14 SAE`; a bare gauge is refused because AWG and SAE differ. */
export function parseWire(text: string): ParsedWire {
  const plain = plainText(text);
  const comma = decimalComma(plain, (mended) => parseWire(mended).ok);
  if (comma) return comma;
  const gauge = /^(?:(AWG|SAE) ?(\d+)|(\d+) ?(AWG|SAE))$/i.exec(plain);
  const number = gauge?.[2] ?? gauge?.[3];
  if (number !== undefined) return gaugeWire(Number(number), (gauge?.[1] ?? gauge?.[4] ?? '').toUpperCase());
  if (/^(?:#?\d+ ?(?:ga|gauge)|#\d+)$/i.test(plain)) {
    return tradeProblem(`"${plain}" can be AWG or SAE, and an SAE wire holds less copper; ${expects}`);
  }
  const size = readNumber(plain);
  if (size && /^(?:mm²|mm2|sq ?mm)$/i.test(size.rest)) {
    if (metricSizes.includes(size.value))
      return { ok: true, wire: { size: `${size.written} mm²`, area: base(size.value) } };
    return tradeProblem(
      `no vehicle wire is made ${size.written} mm²; the sizes are ${metricSizes.join(', ')}`,
    );
  }
  return tradeProblem(
    plain === '' ? `the wire size is empty; ${expects}` : `"${plain}" is not a wire size; ${expects}`,
  );
}

function gaugeWire(number: number, system: string): ParsedWire {
  const mils = saeMils[number];
  if (system === 'SAE') {
    if (mils === undefined) return tradeProblem(`SAE ${number} is not a wire size known here; ${expects}`);
    return { ok: true, wire: { size: `${number} SAE`, area: base(mils * CIRCULAR_MIL) } };
  }
  if (number > 24) return tradeProblem(`${number} AWG is too fine for a vehicle's wiring; ${expects}`);
  return { ok: true, wire: { size: `${number} AWG`, area: awgArea(number) } };
}

/** The copper of an AWG size: a diameter of 0.127·92^((36 − n)/39) mm. */
export function awgArea(gauge: number): Base<'area'> {
  return base((Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2);
}

/** Resistivity of copper in Ω·mm²/m behind K = 10.75 Ω·cmil/ft, with which ABYC E-11 sizes wires. */
const RESISTIVITY = (10.75 * CIRCULAR_MIL) / 0.3048;

/** Voltage lost there and back along a run of this length one way. */
export function voltageDrop(current: Base<'current'>, oneWay: Millimetres, { area }: Wire): Base<'voltage'> {
  return base((current * RESISTIVITY * 2 * (oneWay / 1000)) / area);
}

/** Ampacity in A of single wires, 105 °C insulation, in an engine space (ABYC E-11), by gauge, thickest first; 8 and 6 from memory. */
const ampacities: readonly (readonly [gauge: number, ampacity: number])[] = [
  [6, 102],
  [8, 68],
  [10, 51],
  [12, 38],
  [14, 30],
  [16, 21],
  [18, 17],
];

/**
 * What a wire may carry: as the thickest gauge of which it holds the copper. The table is made for SAE wire, so
 * that is what is compared. Undefined below 18 and above 6, where the table here ends.
 */
export function ampacity({ area }: Wire): Base<'current'> | undefined {
  if (area > awgArea(6) * 1.01) return undefined;
  const found = ampacities.find(
    ([gauge]) => (saeMils[gauge] ?? Number.POSITIVE_INFINITY) * CIRCULAR_MIL <= area,
  );
  return found && base<'current'>(found[1]);
}

/** A supply circuit as the author states it. */
export interface CircuitFacts {
  readonly load: Base<'current'>;
  /** From the source to the load, one way. */
  readonly length: Millimetres;
  readonly wire: Wire;
  readonly fuse: Base<'current'>;
  /** Of the supply; 12 V where nothing is stated. */
  readonly voltage: Base<'voltage'>;
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

/** What a circuit comes to. */
export interface CircuitJudgement {
  readonly drop: Base<'voltage'>;
  /** Of the supply's voltage. */
  readonly dropShare: number;
  readonly ampacity: Base<'current'> | undefined;
  readonly faults: readonly CircuitFault[];
}

/** ABYC E-11: 3 % for what must work well, 10 % for the rest. */
const NOTICED_DROP = 0.03;
const GREATEST_DROP = 0.1;
/** Above this, in A, fuses are of other kinds. */
const GREATEST_BLADE = 40;
/** A fuse carries a lasting load of 80 % of its mark (common practice, no source). */
const LASTING = 0.8;

/** Judges a circuit: the fuse lies between the load and what the wire may carry, and the voltage arrives. */
export function judgeCircuit(circuit: CircuitFacts): CircuitJudgement {
  const { load, wire, fuse, voltage, length } = circuit;
  const carries = ampacity(wire);
  const drop = voltageDrop(load, length, wire);
  const dropShare = drop / voltage;
  const faults: CircuitFault[] = [];
  const add = (kind: CircuitFault['kind'], message: string): void => void faults.push({ kind, message });
  if (carries !== undefined && load > carries) {
    add(
      'wire-too-small',
      `the load of ${significant(load)} A is more than ${wire.size} may carry, ${carries} A`,
    );
  }
  if (fuse < load) {
    add('fuse-below-load', `the ${significant(fuse)} A fuse blows at the load of ${significant(load)} A`);
  } else if (load > LASTING * fuse) {
    add(
      'fuse-near-load',
      `the load of ${significant(load)} A is more than 80 % of the ${significant(fuse)} A fuse, which ages and blows`,
    );
  }
  if (carries !== undefined && fuse > carries) {
    add(
      'fuse-above-wire',
      `the ${significant(fuse)} A fuse does not protect ${wire.size}, which may carry ${carries} A: the wire burns first`,
    );
  }
  if (fuse <= GREATEST_BLADE && fuseColour(fuse) === undefined) {
    add(
      'no-such-fuse',
      `no blade fuse is made for ${significant(fuse)} A; they are ${Object.keys(bladeFuses)
        .map(Number)
        .sort((a, b) => a - b)
        .join(', ')} A`,
    );
  }
  const lost = `${significant(drop)} V of ${significant(voltage)} V (${Math.round(dropShare * 100)} %) is lost in the wire`;
  if (dropShare > GREATEST_DROP) add('voltage-drop-high', `${lost}; more than 10 % starves the load`);
  else if (dropShare > NOTICED_DROP) add('voltage-drop', `${lost}; more than 3 % dims a lamp`);
  return { drop, dropShare, ampacity: carries, faults };
}

/** Blade fuses by rating in A and colour of the body (ISO 8820-3; 35 from memory). Maxi fuses have colours of their own. */
const bladeFuses: { readonly [rating: string]: string } = {
  1: 'black',
  2: 'grey',
  3: 'violet',
  4: 'pink',
  5: 'tan',
  7.5: 'brown',
  10: 'red',
  15: 'blue',
  20: 'yellow',
  25: 'clear',
  30: 'green',
  35: 'blue-green',
  40: 'orange',
};

/** The colour of a blade fuse; undefined where no blade fuse has that rating. */
export function fuseColour(rating: Base<'current'>): string | undefined {
  return bladeFuses[String(rating)];
}
