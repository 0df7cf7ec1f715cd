import { CAUSE_WITHIN, CORRECTABLE, correctionCommand, PRINT_CAUSES } from '../../trade/print-check.ts';

/** What the print check of a template knows without a script. */
export interface PrintCheckView {
  /** The guide and the template as `baybook cut` names them. */
  readonly guide: string;
  readonly template: string;
  /** The usual causes by what the 100 mm square comes to, smallest first. */
  readonly rows: readonly PrintCheckRow[];
  /** How near a measured side lies to a cause: `0.4 mm`. */
  readonly within: string;
  /** Between which sides a printer is corrected: `97 to 103 mm`. */
  readonly correctable: string;
  /** The command that corrects one printer, with the names of the sides in the place of numbers. */
  readonly command: string;
}

/** What the square measures, and what may have made it so. */
interface PrintCheckRow {
  readonly measures: string;
  readonly causes: readonly { readonly cause: string; readonly mend: string }[];
}

/** The print check that stands beside the files of a template. */
export function printCheckView(guide: string, template: string): PrintCheckView {
  const rows = new Map<string, PrintCheckRow['causes']>();
  for (const { least, most, cause, mend } of PRINT_CAUSES) {
    const measures = least === most ? `${least} mm` : `${least} to ${most} mm`;
    rows.set(measures, [...(rows.get(measures) ?? []), { cause, mend }]);
  }
  return {
    guide,
    template,
    rows: [...rows].map(([measures, causes]) => ({ measures, causes })),
    within: `${CAUSE_WITHIN} mm`,
    correctable: `${CORRECTABLE.least} to ${CORRECTABLE.most} mm`,
    command: correctionCommand(guide, template, 'ACROSS', 'UP'),
  };
}
