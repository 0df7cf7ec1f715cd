import type { CutTemplate } from '../../model/cut-template.ts';
import { drawingsRead } from './maker.ts';
import { resolve } from './resolve.ts';

/**
 * What was done to what an author wrote or a maker drew before the line to cut, a sentence each without its stop:
 * what was read of drawings, with its overall size, the set-back, and by how much a curve moved the places.
 */
export function whatWasDone(template: CutTemplate): readonly string[] {
  const changed = template.curveRadius || template.setBack;
  return [...drawingsRead(template), ...(changed ? resolve(template).resolved.applied : [])];
}
