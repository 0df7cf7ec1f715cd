import type { Report } from '../diagnostics/report.ts';
import { finding, type RuleCard } from '../diagnostics/rule-card.ts';
import type { SourceFile } from '../source/source-file.ts';

/** What `baybook new` and `baybook adopt` write where only the author knows what belongs there. */
export const fillIn = 'FILL IN';

export const placeUnfilled: RuleCard = {
  code: 'place-unfilled',
  severity: 'error',
  title: 'A marked place is still to be filled',
  why: `"baybook new" begins a guide, and "baybook adopt" drafts one from an old one; both write ${fillIn} where only its author knows what belongs there. A technician must never meet such a place, so nothing is published while one is left.`,
  bad: `::step[Look around]{#look}\n\n${fillIn} what to look for.\n`,
  good: '::step[Look around]{#look}\n\nLook behind the edge.\n',
};

/** Reports each marked place of a text, to the end of what it asks for: an example between backticks is a part of that, with all its brackets. */
export function reportMarkedPlaces({ path, text }: SourceFile, report: Report): void {
  for (const { index, 0: found } of text.matchAll(/(?<!\w)FILL IN(?!\w)(?:`[^`\n\r]*`|[^\n\r"[\]{}|`])*/g)) {
    const asked = found.slice(fillIn.length).trim();
    const message = `this place is still to be filled${asked === '' ? '' : `: ${asked}`}`;
    report(
      finding(placeUnfilled, { file: path, start: index, end: index + found.trimEnd().length }, message),
    );
  }
}
