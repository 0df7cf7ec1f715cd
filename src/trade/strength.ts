import { type Base, base } from '../units/quantity.ts';
import { stressArea, type Thread } from './thread.ts';

/** How strong a bolt of a property class or grade is, in MPa. */
export interface Strength {
  /** In full: `8.8`, `SAE grade 5`. */
  readonly name: string;
  /** The greatest stress without lasting stretch. */
  readonly proof: number;
  /** Tensile strength. */
  readonly tensile: number;
}

/** Property classes. ISO 898-1 (8.8 to 12.9 agree with the printed proof loads; the rest from memory), ISO 3506-1. */
const metric: { readonly [grade: string]: readonly [proof: number, tensile: number] } = {
  '4.6': [225, 400],
  '4.8': [310, 420],
  '5.8': [380, 520],
  '6.8': [440, 600],
  '8.8': [580, 800],
  '9.8': [650, 900],
  '10.9': [830, 1040],
  '12.9': [970, 1220],
  'A2-70': [450, 700],
  'A4-70': [450, 700],
  'A4-80': [600, 800],
};

/** A nut is named by the first figure of the strongest bolt that it holds (ISO 898-2). */
const nutOf: { readonly [grade: string]: string } = {
  5: '5.8',
  6: '6.8',
  8: '8.8',
  9: '9.8',
  10: '10.9',
  12: '12.9',
};

/** Proof and tensile stress in ksi, up to a nominal diameter in inches. */
type InchRow = readonly [upTo: number, proof: number, tensile: number];

/** SAE J429: each grade by size, smallest first. Grade 2 above 3/4 in is weaker (33 ksi proof; tensile from memory). */
const inch: { readonly [grade: string]: readonly InchRow[] } = {
  2: [
    [0.75, 55, 74],
    [1.5, 33, 60],
  ],
  5: [
    [1, 85, 120],
    [1.5, 74, 105],
  ],
  8: [[1.5, 120, 150]],
};

/** 1000 pounds to the square inch, in MPa. */
const KSI = 6.8947572931684;

/**
 * The strength that a class or grade as written (`8.8`, `8` of a nut, `grade 5`, `A2-70`) means on this
 * thread; undefined where no table gives it.
 */
export function strengthOf(thread: Thread, grade: string): Strength | undefined {
  const word = grade
    .trim()
    .toUpperCase()
    .replace(/^(CLASS|GRADE|SAE GRADE|SAE|GR\.?)\s*/, '');
  if (thread.form === 'unified') {
    // A numbered size may differ from its fraction in the last place of a double.
    const found = inch[word]?.find(([upTo]) => thread.diameter <= upTo * 25.4 + 1e-6);
    return found && { name: `SAE grade ${word}`, proof: found[1] * KSI, tensile: found[2] * KSI };
  }
  const name = nutOf[word] ?? word;
  const found = metric[name];
  if (!found) return undefined;
  // ISO 898-1 gives 8.8 above 16 mm its own figures.
  const [proof, tensile] = name === '8.8' && thread.diameter > 16 ? [600, 830] : found;
  return { name, proof, tensile };
}

/** The strongest class that there is: what is too much for it is too much for every bolt. */
export const strongest: Strength = {
  name: 'even if it is of class 12.9',
  proof: metricOf('12.9')[0],
  tensile: metricOf('12.9')[1],
};

function metricOf(name: string): readonly [proof: number, tensile: number] {
  const found = metric[name];
  if (!found) throw new Error(`there is no class ${name}`);
  return found;
}

/** The classes and grades that the tables give for a form of thread, as an author may write them. */
export function gradesFor(form: Thread['form']): readonly string[] {
  return form === 'unified' ? Object.keys(inch) : [...Object.keys(metric), ...Object.keys(nutOf)];
}

/** The greatest load without lasting stretch: proof stress on the stress area. */
export function proofLoad(thread: Thread, strength: Strength): Base<'force'> {
  return base<'force'>(strength.proof * stressArea(thread));
}
