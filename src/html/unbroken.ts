import { units } from '../units/table.ts';
import { outside } from './outside.ts';

/** A unit as it is printed, also with its dot left out: `N·m`, `Nm`. */
const unit = units.map(({ name }) => name.replaceAll('·', '·?')).join('|');

/**
 * The blank before a unit, before the people of a step, or before the fraction of a mixed number, and the dash of a range;
 * in text, which a `<` ends.
 */
const breakable = new RegExp(
  ` (?<=\\d )(?=(?:\\d+/\\d+ )?(?:${unit}|people)(?![\\p{L}\\d])[^<>]*<)|–(?<=\\d–)(?=\\d[^<>]*<)`,
  'gu',
);

/**
 * A page whose numbers stay with their units, and whose ranges stay whole, at the end of a line: the blank of `10 mm`
 * becomes a no-break space, and after the dash of `4–10 min` stands a word joiner (Unicode Standard Annex 14, classes
 * GL and WJ; a browser may break after an en dash, class BA). Done on the page, so that what an author wrote stays as
 * it is in data, search and fingerprints. Text alone is changed: no attribute, script, style, code, or choice of a list.
 */
export const unbroken = outside(
  // Elements whose text is no markup, is copied to the byte, or is what a form gives.
  ['script', 'style', 'title', 'pre', 'code', 'textarea', 'option'],
  breakable,
  (found) => (found === ' ' ? '\u00a0' : `${found}\u2060`),
);
