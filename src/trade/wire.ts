import { inOneForm, readNumber } from '../units/number.ts';
import { type Base, base, type Millimetres } from '../units/quantity.ts';
import { decimalComma, type TradeProblem, tradeProblem } from './problem.ts';

/** A copper wire by its size. */
export interface Wire {
  /** As printed: `2.5 mm²`, `12 AWG`, `10 SAE`. */
  readonly size: string;
  readonly area: Base<'area'>;
  /** Ω to the metre, one conductor. */
  readonly perMetre: number;
}

/** A wire size, or what is wrong with the text. */
type ParsedWire = { readonly ok: true; readonly wire: Wire } | TradeProblem;

/**
 * Metric conductors in mm²: those of ISO 6722, and the Japanese 0.85, 1.25, 2, 3, 5, 8, 15 and 20 (from memory),
 * each with the greatest resistance in mΩ/m at 20 °C that ISO 6722 allows it, where that is known here (0.5 to 6 agree
 * with the figures of the reference test; the rest from memory).
 */
const metricSizes: ReadonlyMap<number, number | null> = new Map([
  [0.22, 84.8],
  [0.35, 54.4],
  [0.5, 37.1],
  [0.75, 24.7],
  [0.85, null],
  [1, 18.5],
  [1.25, null],
  [1.5, 12.7],
  [2, null],
  [2.5, 7.6],
  [3, null],
  [4, 4.71],
  [5, null],
  [6, 3.14],
  [8, null],
  [10, 1.82],
  [15, null],
  [16, 1.16],
  [20, null],
  [25, 0.743],
  [35, 0.527],
  [50, 0.368],
  [70, 0.259],
  [95, 0.196],
  [120, 0.153],
]);

/**
 * SAE conductors in circular mils: some 10 % less copper than the AWG size of the same number. 8 and thicker, and 20
 * and thinner, from memory.
 */
const saeMils: { readonly [gauge: string]: number } = {
  24: 435,
  22: 690,
  20: 985,
  18: 1537,
  16: 2336,
  14: 3702,
  12: 5833,
  10: 9343,
  8: 14810,
  6: 25910,
  4: 37360,
  2: 62450,
  1: 77790,
  '1/0': 98980,
  '2/0': 125100,
  '3/0': 158600,
  '4/0': 205500,
};

/** A circular mil in mm²: a circle of a thousandth of an inch. */
const CIRCULAR_MIL = (Math.PI / 4) * 0.0254 ** 2;

const expects = 'write, for example, "2.5 mm²", "14 AWG" or "14 SAE"';

/** Reads a wire size: `2.5 mm²`, `14 AWG`, `14 SAE`; a bare gauge is refused because AWG and SAE differ. */
export function parseWire(text: string): ParsedWire {
  const plain = inOneForm(text);
  const comma = decimalComma(plain, (mended) => parseWire(mended).ok);
  if (comma) return comma;
  const gauge = /^(?:(AWG|SAE) ?(\d+|[1-4]\/0)|(\d+|[1-4]\/0) ?(AWG|SAE))$/i.exec(plain);
  const number = gauge?.[2] ?? gauge?.[3];
  if (number !== undefined) return gaugeWire(number, (gauge?.[1] ?? gauge?.[4] ?? '').toUpperCase());
  if (/^(?:#?\d+ ?(?:ga|gauge)|#\d+)$/i.test(plain)) {
    return tradeProblem(`"${plain}" can be AWG or SAE, and an SAE wire holds less copper; ${expects}`);
  }
  const size = readNumber(plain);
  if (size && /^(?:mm²|mm2|sq ?mm)$/i.test(size.rest)) {
    const resistance = metricSizes.get(size.value);
    if (resistance === undefined) {
      const made = [...metricSizes.keys()].join(', ');
      return tradeProblem(`no vehicle wire is made ${size.written} mm²; the sizes are ${made}`);
    }
    const area = base<'area'>(size.value);
    // 0.019 Ω·mm²/m is what the standard's own figures come to (2.5 mm² has 7.60 mΩ/m).
    const perMetre = resistance === null ? STRANDED / size.value : resistance / 1000;
    return { ok: true, wire: { size: `${size.written} mm²`, area, perMetre } };
  }
  return tradeProblem(
    plain === '' ? `the wire size is empty; ${expects}` : `"${plain}" is not a wire size; ${expects}`,
  );
}

function gaugeWire(gauge: string, system: string): ParsedWire {
  const size = `${gauge} ${system}`;
  if (system === 'SAE') {
    const mils = saeMils[gauge];
    if (mils === undefined) return tradeProblem(`${size} is not a wire size known here; ${expects}`);
    return { ok: true, wire: wireOf(size, mils * CIRCULAR_MIL) };
  }
  // 2/0 is "two noughts", one size thicker than 1/0, which is 0.
  const number = gauge.endsWith('/0') ? 1 - Number(gauge.slice(0, -2)) : Number(gauge);
  if (number > 24) return tradeProblem(`${size} is too fine for a vehicle's wiring; ${expects}`);
  return { ok: true, wire: wireOf(size, awgArea(number)) };
}

/** A wire by its gauge, with the resistance by which ABYC E-11 sizes wires. */
function wireOf(size: string, area: number): Wire {
  return { size, area: base(area), perMetre: RESISTIVITY / area };
}

/** The copper of an AWG size: a diameter of 0.127·92^((36 − n)/39) mm. */
export function awgArea(gauge: number): Base<'area'> {
  return base((Math.PI / 4) * (0.127 * 92 ** ((36 - gauge) / 39)) ** 2);
}

/** Resistivity of copper in Ω·mm²/m behind K = 10.75 Ω·cmil/ft, with which ABYC E-11 sizes wires. */
const RESISTIVITY = (10.75 * CIRCULAR_MIL) / 0.3048;
/** The same for stranded metric wire whose own figure is not known here: the highest that ISO 6722 comes to. */
const STRANDED = 0.019;

/** Voltage lost there and back along a run of this length one way. */
export function voltageDrop(
  current: Base<'current'>,
  oneWay: Millimetres,
  { perMetre }: Wire,
): Base<'voltage'> {
  return base(current * perMetre * 2 * (oneWay / 1000));
}

/**
 * What single wires may carry in A, by the copper that it takes, thickest first. From 18 gauge up: 105 °C insulation
 * in an engine space (ABYC E-11), the copper that of SAE wire; 8 and thicker from memory. Below: what chassis wiring of
 * 20, 22 and 24 gauge is given (from memory).
 */
const ampacities: readonly (readonly [copper: number, ampacity: number])[] = [
  [mils('4/0'), 378],
  [mils('3/0'), 327],
  [mils('2/0'), 280],
  [mils('1/0'), 242],
  [mils('1'), 208],
  [mils('2'), 178],
  [mils('4'), 136],
  [mils('6'), 102],
  [mils('8'), 68],
  [mils('10'), 51],
  [mils('12'), 38],
  [mils('14'), 30],
  [mils('16'), 21],
  [mils('18'), 17],
  [0.75, 15],
  [0.5, 11],
  [0.35, 7],
  [0, 3.5],
];

function mils(gauge: string): number {
  return (saeMils[gauge] ?? 0) * CIRCULAR_MIL;
}

/** What a wire may carry, and so the greatest fuse that protects it: as the thickest size of which it holds the copper. */
export function ampacity({ area }: Wire): Base<'current'> {
  // Half a per cent lets 0.5 mm² through that a gauge comes to.
  const [, carries] = ampacities.find(([copper]) => copper <= area * 1.005) ?? [0, 0];
  return base(carries);
}
