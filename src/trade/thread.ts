import { inOneForm } from '../units/number.ts';
import { type Base, base, type Millimetres } from '../units/quantity.ts';
import { decimalComma, type TradeProblem, tradeProblem } from './problem.ts';

/** A screw thread. */
export interface Thread {
  readonly form: 'metric' | 'unified';
  readonly series: 'coarse' | 'fine';
  readonly diameter: Millimetres;
  readonly pitch: Millimetres;
  /** Without the pitch: `M8`, `1/4`, `#10`. */
  readonly size: string;
  /** In full: `M8x1.25`, `1/4-20`. */
  readonly name: string;
}

/** A thread, or what is wrong with the text. */
type ParsedThread = { readonly ok: true; readonly thread: Thread } | TradeProblem;

/** Pitches in mm by nominal diameter, coarse first (ISO 261 and ISO 262; from memory). */
const metricPitches: { readonly [size: string]: readonly number[] } = {
  'M1.6': [0.35],
  M2: [0.4],
  'M2.5': [0.45],
  M3: [0.5, 0.35],
  'M3.5': [0.6],
  M4: [0.7, 0.5],
  M5: [0.8, 0.5],
  M6: [1, 0.75],
  M7: [1, 0.75],
  M8: [1.25, 1, 0.75],
  M10: [1.5, 1.25, 1, 0.75],
  M12: [1.75, 1.5, 1.25, 1],
  M14: [2, 1.5, 1.25, 1],
  M16: [2, 1.5, 1],
  M18: [2.5, 2, 1.5, 1],
  M20: [2.5, 2, 1.5, 1],
  M22: [2.5, 2, 1.5, 1],
  M24: [3, 2, 1.5, 1],
  M27: [3, 2, 1.5],
  M30: [3.5, 3, 2, 1.5],
  M33: [3.5, 3, 2, 1.5],
  M36: [4, 3, 2, 1.5],
};

/** Threads to the inch by nominal size, coarse (UNC) then fine (UNF): ASME B1.1. */
const unifiedPitches: { readonly [size: string]: readonly number[] } = {
  '#4': [40, 48],
  '#5': [40, 44],
  '#6': [32, 40],
  '#8': [32, 36],
  '#10': [24, 32],
  '#12': [24, 28],
  '1/4': [20, 28],
  '5/16': [18, 24],
  '3/8': [16, 24],
  '7/16': [14, 20],
  '1/2': [13, 20],
  '9/16': [12, 18],
  '5/8': [11, 18],
  '3/4': [10, 16],
  '7/8': [9, 14],
  // 1-14 is UNS, which sockets and hubs have all the same.
  '1': [8, 12, 14],
  '1-1/8': [7, 12],
  '1-1/4': [7, 12],
};

const expects = 'write, for example, "M8x1.25" or "1/4-20"';

/** Reads `M8x1.25`, `M8×1.25`, `M8` (coarse), `1/4-20`, `#10-24`; a pitch that the size does not have is refused. */
export function parseThread(text: string): ParsedThread {
  const plain = inOneForm(text).replace(/ ?[×xX*] ?/, 'x');
  const comma = decimalComma(plain, (mended) => parseThread(mended).ok);
  if (comma) return comma;
  const metric = /^M ?(\d+(?:\.\d+)?)(?:[x-](\d+(?:\.\d+)?|\.\d+))?$/i.exec(plain);
  if (metric?.[1]) return metricThread(Number(metric[1]), metric[2]);
  const unified = /^(#?\d+|\d+\/\d+|\d+[- ]\d+\/\d+)(?: ?in|")? ?- ?(\d+)(?: ?UN[CF])?$/i.exec(plain);
  if (unified?.[1] && unified[2]) return unifiedThread(unified[1].replace(' ', '-'), Number(unified[2]));
  if (plain === '') return tradeProblem(`the thread is empty; ${expects}`);
  return tradeProblem(`"${plain}" is not a thread that Baybook knows; ${expects}`);
}

function metricThread(diameter: number, typed: string | undefined): ParsedThread {
  const size = `M${diameter}`;
  const pitches = metricPitches[size];
  const coarse = pitches?.[0];
  if (!pitches || coarse === undefined) {
    return tradeProblem(`there is no thread ${size} among those that vehicles use; ${expects}`);
  }
  const pitch = typed === undefined ? coarse : Number(typed);
  if (!pitches.includes(pitch)) {
    return tradeProblem(
      `${size} is not made with a pitch of ${pitch} mm; it has ${pitches.join(', ')}`,
      `${size}x${coarse}`,
    );
  }
  const series = pitch === coarse ? 'coarse' : 'fine';
  const measures = { diameter: base<'length'>(diameter), pitch: base<'length'>(pitch) };
  return { ok: true, thread: { form: 'metric', series, ...measures, size, name: `${size}x${pitch}` } };
}

function unifiedThread(typed: string, perInch: number): ParsedThread {
  const size = unifiedPitches[typed] ? typed : `#${typed}`;
  const pitches = unifiedPitches[size];
  if (!pitches)
    return tradeProblem(`there is no inch thread ${typed} among those that vehicles use; ${expects}`);
  if (!pitches.includes(perInch)) {
    return tradeProblem(
      `${size} is not made with ${perInch} threads to the inch; it has ${pitches.join(' or ')}`,
      `${size}-${pitches[0]}`,
    );
  }
  const series = perInch === pitches[0] ? 'coarse' : 'fine';
  const measures = { diameter: base<'length'>(inchDiameter(size)), pitch: base<'length'>(25.4 / perInch) };
  return { ok: true, thread: { form: 'unified', series, ...measures, size, name: `${size}-${perInch}` } };
}

/** Nominal diameter of an inch size in mm; a numbered screw is 0.060 in and 0.013 in for each number (ASME B1.1). */
function inchDiameter(size: string): number {
  if (size.startsWith('#')) return 25.4 * (0.06 + 0.013 * Number(size.slice(1)));
  const [, whole, top, bottom] = /^(?:(\d+)-)?(\d+)(?:\/(\d+))?$/.exec(size) ?? [];
  return 25.4 * (Number(whole ?? 0) + Number(top) / Number(bottom ?? 1));
}

/**
 * Tensile stress area. Metric: π/4·(d − 0.9382·P)², ISO 898-1; inch: π/4·(d − 0.9743/n)², ASME B1.1.
 */
export function stressArea({ form, diameter, pitch }: Thread): Base<'area'> {
  const factor = form === 'metric' ? 0.9382 : 0.9743;
  return base<'area'>((Math.PI / 4) * (diameter - factor * pitch) ** 2);
}
