/** A paper that a template is printed on: upright, millimetres. */
export interface Paper {
  readonly title: string;
  readonly width: number;
  readonly height: number;
}

/**
 * Papers by name. A4 and A3 after ISO 216; Letter and Tabloid after ANSI/ASME Y14.1 (A and B size), which are
 * whole inches and halves: 8.5 × 11 in and 11 × 17 in.
 */
export const PAPERS = {
  a4: { title: 'A4', width: 210, height: 297 },
  letter: { title: 'Letter', width: 215.9, height: 279.4 },
  a3: { title: 'A3', width: 297, height: 420 },
  tabloid: { title: 'Tabloid', width: 279.4, height: 431.8 },
} as const satisfies Record<string, Paper>;

/** A paper by its name; `single` is one sheet as large as the template asks for. */
export type PaperName = keyof typeof PAPERS | 'single';

/** Every paper that templates can be asked for. */
export const paperNames = [...typedKeys(PAPERS), 'single'] as const satisfies readonly PaperName[];

/** A PDF unit is 1/72 in (ISO 32000-1, 8.3.2.3), and an inch is 25.4 mm. */
export const POINTS_PER_MM = 72 / 25.4;

/**
 * Margins that stay free of ink, mm. Some printers cannot print the lowest 16.7 mm of a sheet (measured), and
 * a crop that does not change the scale must do no harm.
 */
export const SAFE_MARGIN = { left: 13, right: 13, top: 13, bottom: 18 } as const;

/**
 * How far a place on a paper template may be off, mm, over a length: 0.3 mm for laying it down and following
 * the line, and the 0.2 % to which the proof square can be read. Common practice, no source.
 */
export function paperTolerance(length: number): number {
  return 0.3 + 0.002 * length;
}

function typedKeys<K extends string>(record: Readonly<Record<K, unknown>>): readonly K[] {
  return Object.keys(record) as K[];
}
