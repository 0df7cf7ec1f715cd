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
  const gauge = /^(?:(AWG|SAE) ?(\d+|[1-4]\/0)|(\d+|[1-4]\/0) ?(AWG|SAE))$/i.exec(plain);
  const number = gauge?.[2] ?? gauge?.[3];
  if (number !== undefined) return gaugeWire(number, (gauge?.[1] ?? gauge?.[4] ?? '').toUpperCase());
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

function gaugeWire(gauge: string, system: string): ParsedWire {
  const size = `${gauge} ${system}`;
  if (system === 'SAE') {
    const mils = saeMils[gauge];
    if (mils === undefined) return tradeProblem(`${size} is not a wire size known here; ${expects}`);
    return { ok: true, wire: { size, area: base(mils * CIRCULAR_MIL) } };
  }
  // 2/0 is "two noughts", one size thicker than 1/0, which is 0.
  const number = gauge.endsWith('/0') ? 1 - Number(gauge.slice(0, -2)) : Number(gauge);
  if (number > 24) return tradeProblem(`${size} is too fine for a vehicle's wiring; ${expects}`);
  return { ok: true, wire: { size, area: awgArea(number) } };
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

const thinnest = [18, 17] as const;

/** Ampacity in A of single wires, 105 °C insulation, in an engine space (ABYC E-11), by gauge, thickest first; 8 and 6 from memory. */
const ampacities: readonly (readonly [gauge: number, ampacity: number])[] = [
  [6, 102],
  [8, 68],
  [10, 51],
  [12, 38],
  [14, 30],
  [16, 21],
  thinnest,
];

/** What a wire may carry. */
export interface Ampacity {
  readonly current: Base<'current'>;
  /** False for a wire thinner than any in the table: it carries less than this. */
  readonly reached: boolean;
}

/**
 * What a wire may carry: as the thickest gauge of which it holds the copper. The table is made for SAE wire, so
 * that is what is compared. Undefined for a wire thicker than 6 AWG, where the table ends.
 */
export function ampacity({ area }: Wire): Ampacity | undefined {
  if (area > awgArea(6) * 1.01) return undefined;
  const copper = (gauge: number): number => (saeMils[gauge] ?? 0) * CIRCULAR_MIL;
  const found = ampacities.find(([gauge]) => copper(gauge) <= area);
  return { current: base((found ?? thinnest)[1]), reached: found !== undefined };
}
