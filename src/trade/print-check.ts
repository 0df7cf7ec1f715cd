/** Side of the proof square, mm. */
const PROOF_SIDE = 100;

/** A printed side this near to 100 mm is true: a steel rule read by eye tells no more. */
const TRUE_WITHIN = 0.2;

/** A measured side this near to what a setting makes of 100 mm is taken as made by it. */
export const CAUSE_WITHIN = 0.4;

/** Outside this range a measurement is a setting, never a printer, and is not corrected. */
export const CORRECTABLE = { least: 97, most: 103 } as const;

/** A setting that makes the proof square come out wrong, and what to change. */
interface PrintCause {
  /** What 100 mm becomes, mm: one value, or the ends of a range. */
  readonly least: number;
  readonly most: number;
  readonly cause: string;
  readonly mend: string;
}

/**
 * What 100.0 mm became on paper, measured with two browsers and the usual print filter; 97.3 is Letter on A4
 * by arithmetic (210 / 215.9). Ordered by size.
 */
export const PRINT_CAUSES: readonly PrintCause[] = [
  {
    least: 62,
    most: 73,
    cause: 'the template was printed from the web page',
    mend: 'open the PDF file itself and print that',
  },
  {
    least: 85.5,
    most: 85.5,
    cause: 'the A4 file was fitted to Letter paper by the printer',
    mend: 'print the Letter file, at actual size',
  },
  {
    least: 91.4,
    most: 91.4,
    cause: 'the page was fitted to the printer’s margins',
    mend: 'set scaling to “actual size”, “none” or 100 %',
  },
  {
    least: 94,
    most: 94,
    cause: 'the page was scaled to fill the printable area',
    mend: 'set scaling to “actual size”, “none” or 100 %',
  },
  {
    least: 94,
    most: 94,
    cause: 'the A4 file was fitted to Letter paper',
    mend: 'print the Letter file, at actual size',
  },
  {
    least: 96.8,
    most: 96.8,
    cause: 'the page was fitted, by the print window or by the printer’s own driver',
    mend: 'switch “fit” off in the print window and in the printer’s own settings',
  },
  {
    least: 97.3,
    most: 97.3,
    cause: 'the page was fitted, by the print window or by the printer’s own driver',
    mend: 'switch “fit” off in the print window and in the printer’s own settings',
  },
  {
    least: 97.3,
    most: 97.3,
    cause: 'the Letter file was fitted to A4 paper',
    mend: 'print the A4 file, at actual size',
  },
];

/** Factors for a corrected file, per axis of the sheet held upright: nominal over measured. */
export interface Correction {
  readonly x: number;
  readonly y: number;
}

/**
 * The factors along a page of a size: the sheet is measured upright, and a page that lies is turned upright to be
 * printed.
 */
export function correctionOn({ x, y }: Correction, width: number, height: number): Correction {
  return width > height ? { x: y, y: x } : { x, y };
}

/** What every corrected sheet says about itself. */
export function correctionStamp({ x, y }: Correction): string {
  return `CORRECTED ×${x.toFixed(4)} across, ×${y.toFixed(4)} up`;
}

/** The name of a corrected file: `notch-a4.pdf` becomes `notch-a4-corrected.pdf`. */
export function correctedName(name: string): string {
  return name.replace(/(?:-corrected)?\.pdf$/i, '-corrected.pdf');
}

export type PrintCheck =
  /** Both sides are true: the sheets may be used. */
  | { readonly kind: 'true' }
  /** One or more settings explain what was measured: change the setting and print again. */
  | { readonly kind: 'setting'; readonly causes: readonly PrintCause[] }
  /** No setting explains it and the printer is near enough to be corrected. */
  | { readonly kind: 'correct'; readonly correction: Correction }
  /** No setting explains it and it is too far off, or the sides were not measured. */
  | { readonly kind: 'refused'; readonly reason: string };

/**
 * Says what the two measured sides of the proof square mean. `across` and `up` in millimetres, of the sheet
 * held upright. A correction is given only where no known setting fits both sides and each side measures
 * 97.0 to 103.0 mm.
 */
export function checkPrint(across: number, up: number): PrintCheck {
  if (!(across > 0 && up > 0 && across < 1000 && up < 1000)) {
    return { kind: 'refused', reason: 'give both sides of the 100 mm square, in millimetres' };
  }
  if (near(across, PROOF_SIDE, TRUE_WITHIN) && near(up, PROOF_SIDE, TRUE_WITHIN)) return { kind: 'true' };
  const causes = PRINT_CAUSES.filter((cause) => fits(cause, across, up));
  if (causes.length > 0) return { kind: 'setting', causes };
  if (![across, up].every((side) => side >= CORRECTABLE.least && side <= CORRECTABLE.most)) {
    return {
      kind: 'refused',
      reason:
        'no known setting fits both sides, and a printer is never off by more than 3 %: check the print settings and measure again',
    };
  }
  return { kind: 'correct', correction: { x: PROOF_SIDE / across, y: PROOF_SIDE / up } };
}

/** One setting scales both sides alike, so both must lie within its range and near each other. */
function fits(cause: PrintCause, across: number, up: number): boolean {
  const inRange = (side: number): boolean =>
    side >= cause.least - CAUSE_WITHIN - 1e-9 && side <= cause.most + CAUSE_WITHIN + 1e-9;
  return inRange(across) && inRange(up) && near(across, up, 2 * CAUSE_WITHIN);
}

function near(a: number, b: number, within: number): boolean {
  return Math.abs(a - b) <= within + 1e-9;
}

/**
 * The command that writes the corrected file for this printer: `guide` is the guide's folder name, `template`
 * the template's id, the sides as measured, in millimetres, or words that stand for them.
 */
export function correctionCommand(
  guide: string,
  template: string,
  across: number | string,
  up: number | string,
): string {
  return `baybook cut ${guide} ${template} --measured ${trim(across)},${trim(up)}`;
}

function trim(side: number | string): string {
  return typeof side === 'string' ? side : String(Number(side.toFixed(2)));
}
