import type { Report } from '../../diagnostics/report.ts';
import type { RuleCard } from '../../diagnostics/rule-card.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import type { Range } from '../directive-places.ts';
import { attributeClass, quotesCurly, valueUnquoted } from './attributes.ts';
import { containerUnclosed, openingEnclosed } from './containers.ts';
import { directiveUnreadable, fenceStray } from './directive-unreadable.ts';
import { frontMatterUnread } from './front-matter-unread.ts';
import { headingIdUnclear, headingUnderlined } from './headings.ts';
import { linkUnsafe } from './link-unsafe.ts';
import { directiveForm, directiveUnknown } from './names.ts';
import { altDirective, htmlDropped } from './plain-markdown.ts';
import { type SyntaxPage, type SyntaxRule, span } from './rule.ts';
import { directiveHalfRead, directiveUnlabelled } from './text-directives.ts';
import { textOversized } from './text-oversized.ts';

/** In this order: a rule that explains more of the text stands before one that would report its remnants. */
const rules: readonly SyntaxRule[] = [
  frontMatterUnread,
  directiveUnreadable,
  openingEnclosed,
  containerUnclosed,
  directiveHalfRead,
  directiveUnlabelled,
  directiveUnknown,
  directiveForm,
  fenceStray,
  headingUnderlined,
  headingIdUnclear,
  attributeClass,
  valueUnquoted,
  quotesCurly,
  altDirective,
  linkUnsafe,
  htmlDropped,
];

/** The cards of every rule that reading Markdown can raise. */
export const syntaxRules: readonly RuleCard[] = [textOversized, ...rules.map(({ card }) => card)];

/** Codes of the faults that make what follows from a text unsure: they stop a guide's later stages. */
export const stoppingCodes: ReadonlySet<string> = new Set([
  textOversized.code,
  ...rules.filter(({ stops }) => stops).map(({ card }) => card.code),
]);

/** Judges a parsed file and reports what is wrong. Says whether later stages may rely on the text. */
export function judge(page: SyntaxPage, report: Report): boolean {
  const covered: Range[] = [];
  let sound = true;
  for (const { card, stops, find } of rules) {
    const found = find(page).filter(({ at }) => !covered.some((range) => contains(range, at.start)));
    for (const { at, message, covers = [], ...extra } of found) {
      report(finding(card, span(page, at), message, extra));
      covered.push(...covers);
      if (stops) sound = false;
    }
  }
  return sound;
}

function contains({ start, end }: Range, place: number): boolean {
  return place >= start && (place < end || (start === end && place === start));
}
