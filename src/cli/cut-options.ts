import { nearest } from '../diagnostics/suggest.ts';
import { type PaperName, paperNames } from '../trade/paper.ts';
import { type Correction, checkPrint } from '../trade/print-check.ts';
import { UsageError } from './io.ts';

/** Reads `--paper a4,letter`: each once, in the order as written. */
export function readPapers(written: string): readonly PaperName[] {
  const names = written.split(',').map((name) => {
    const typed = name.trim().toLowerCase();
    const paper = paperNames.find((one) => one === typed);
    if (paper) return paper;
    const near = nearest(typed, paperNames)[0];
    const help = near ? `did you mean ${near}?` : `there are ${paperNames.join(', ')}`;
    throw new UsageError(`--paper: "${name.trim()}" is no paper; ${help}`);
  });
  return [...new Set(names)];
}

/**
 * Reads `--measured 99.6,100.2`, the two sides of the proof square as printed, and works out the correction.
 * Refused where the sides are true, where a print setting explains them, and where no printer is so far off.
 */
export function readMeasured(written: string): Correction {
  const [, across, up] = /^(\d+(?:\.\d+)?),(\d+(?:\.\d+)?)$/.exec(written.trim()) ?? [];
  if (across === undefined || up === undefined) {
    throw new UsageError(
      '--measured takes the two sides of the 100 mm square in millimetres, across and up, as in 99.6,100.2',
    );
  }
  const check = checkPrint(Number(across), Number(up));
  const sides = `${across} × ${up} mm`;
  switch (check.kind) {
    case 'true':
      throw new UsageError(`${sides} is true to size; the files need no correction, so leave out --measured`);
    case 'refused':
      throw new UsageError(`no correction for ${sides}: ${check.reason}`);
    case 'setting': {
      const causes = check.causes.map(({ cause, mend }) => `  - ${cause}: ${mend}`);
      throw new UsageError(
        [`no correction for ${sides}, since a setting explains it; change the setting:`, ...causes].join(
          '\n',
        ),
      );
    }
    case 'correct':
      return check.correction;
  }
}
