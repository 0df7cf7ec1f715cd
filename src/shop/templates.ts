import type { SheetContext } from '../cut/job.ts';
import type { Bit } from '../cut/lint.ts';
import { type Fonts, metricsOf } from '../cut/metrics.ts';
import { resolve } from '../cut/resolve.ts';
import type { Resolved } from '../cut/resolved.ts';
import { LETTERS_MISSING, SHEETS_TOO_MANY } from '../cut/rules.ts';
import { MOST_SHEETS } from '../cut/sheet-count.ts';
import { tooManySheets } from '../cut/sheets.ts';
import type { Finding } from '../diagnostics/finding.ts';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Guide } from '../model/guide.ts';
import type { ShopSettings } from '../model/shop.ts';
import type { Span } from '../source/span.ts';

/** Judges the cut templates of a guide, given what was found while reading it. */
export type JudgeTemplates = (guide: Guide, read: readonly Finding[], report: Report) => void;

/**
 * Makes the judge of a shop's templates: their shapes, and, with the fonts of the sheets, whether they can be
 * printed. A template in which something could not be read lacks a shape, so nothing more is said of it.
 */
export function templateJudge({ papers }: ShopSettings, fonts: Fonts | null): JudgeTemplates {
  const sheets = fonts && { papers, fonts, metrics: metricsOf(fonts), side: null };
  return (guide, read, report) => {
    const bits = bitsOf(guide);
    const faults = read.filter(({ severity }) => severity === 'error').map(({ at }) => at);
    for (const template of guide.templates.values()) {
      if (faults.some((at) => within(at, template.at))) continue;
      const { resolved, findings } = resolve(template, bits);
      for (const one of findings) report(one);
      if (!sheets || findings.some(({ severity }) => severity === 'error')) continue;
      reportSheets(
        resolved,
        { ...sheets, guideTitle: guide.title.value, revision: '', fingerprint: '' },
        report,
      );
    }
  };
}

function reportSheets(resolved: Resolved, context: SheetContext, report: Report): void {
  const { metrics, papers } = context;
  const labels = [...resolved.datums, ...resolved.cuts, ...resolved.keepOuts].map(({ label }) => label);
  const lacking = new Set([resolved.title, ...labels].flatMap((text) => metrics.lacks(text)));
  if (lacking.size > 0) {
    const letters = [...lacking].map((letter) => `“${letter}”`).join(' ');
    report(
      finding(LETTERS_MISSING, resolved.at, `the sheets cannot print ${letters} in this template’s words`),
    );
  }
  for (const paper of papers) {
    const sheets = tooManySheets(resolved, paper, context);
    if (sheets === null) continue;
    const message = `this template needs ${sheets} sheets on ${paper}; at most ${MOST_SHEETS} can be laid true`;
    report(finding(SHEETS_TOO_MANY, resolved.at, message));
  }
}

/**
 * The drill bits that a guide declares. `null` asks for none: where a size could not be read, and where no bit is
 * declared at all, so that holes are cut by other means; a `:drill` without a tool is found by its own rule.
 */
function bitsOf({ items }: Guide): readonly Bit[] | null {
  const tools = [...items.values()].flatMap((item) => (item.kind === 'tool' ? [item] : []));
  if (tools.some(({ unknown }) => unknown.has('diameter'))) return null;
  const bits = tools.flatMap(({ id, diameter }) => (diameter ? [{ id, diameter: diameter.value.base }] : []));
  return bits.length > 0 ? bits : null;
}

function within(inner: Span, outer: Span): boolean {
  return inner.file === outer.file && inner.start >= outer.start && inner.end <= outer.end;
}
