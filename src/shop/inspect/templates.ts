import { type Fonts, metricsOf } from '../../cut/drawing/metrics.ts';
import type { SheetContext } from '../../cut/job.ts';
import type { Bit } from '../../cut/shape/lint.ts';
import { resolve } from '../../cut/shape/resolve.ts';
import { type Resolved, writtenWords } from '../../cut/shape/resolved.ts';
import { LETTERS_MISSING, SHEETS_TOO_MANY } from '../../cut/shape/rules.ts';
import { MOST_SHEETS } from '../../cut/sheet/sheet-count.ts';
import { tooManySheets } from '../../cut/sheet/sheets.ts';
import type { Finding } from '../../diagnostics/finding.ts';
import { collector, type Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { actionsOf, stepsOf, templateVariants } from '../../job/index.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { ShopSettings } from '../../model/shop.ts';
import type { Span } from '../../source/span.ts';
import { eachOnce, type WorkedOut } from './drawn-once.ts';
import { judgePanels } from './panels.ts';

/** Judges the cut templates of a guide, given what was found while reading it. */
export type JudgeTemplates = (guide: Guide, job: Job, read: readonly Finding[], report: Report) => void;

/**
 * Makes the judge of a shop's templates: their shapes, and, with the fonts of the sheets, whether they can be
 * printed. A template in which something could not be read lacks a shape, so nothing more is said of it.
 */
export function templateJudge({ papers }: ShopSettings, fonts: Fonts | null): JudgeTemplates {
  return (guide, job, read, report) => {
    if (guide.templates.size === 0) return;
    const sheets = fonts && { papers, fonts, metrics: metricsOf(fonts), side: null };
    const bits = bitsOf(guide);
    const faults = read.filter(({ severity }) => severity === 'error').map(({ at }) => at);
    const printed = sheets && {
      ...sheets,
      words: guide.words,
      guideTitle: guide.title.value,
      revision: '',
      fingerprint: '',
    };
    const sound: WorkedOut[][] = [];
    for (const template of guide.templates.values()) {
      if (faults.some((at) => within(at, template.at))) continue;
      const drawn = templateVariants(template, guide, job).map((variant) => ({
        ...judge(variant.template, bits, printed),
        builds: variant.plans.flatMap((plan) => plan.builds),
      }));
      for (const one of eachOnce(drawn, guide, job)) report(one);
      sound.push(drawn.filter(({ findings }) => findings.every(({ severity }) => severity !== 'error')));
    }
    for (const one of judgePanels(sound, guide, job)) report(one);
  };
}

/** What a template comes to as some builds have it, and what is wrong with it. */
function judge(
  template: CutTemplate,
  bits: readonly Bit[] | null,
  sheets: SheetContext | null,
): Omit<WorkedOut, 'builds'> {
  const { resolved, findings } = resolve(template, bits);
  if (!sheets || findings.some(({ severity }) => severity === 'error'))
    return { template, resolved, findings };
  const { findings: unprintable, report } = collector();
  reportSheets(resolved, sheets, report);
  return { template, resolved, findings: [...findings, ...unprintable] };
}

function reportSheets(resolved: Resolved, context: SheetContext, report: Report): void {
  const { metrics, papers } = context;
  const lacking = new Set(writtenWords(resolved).flatMap((text) => metrics.lacks(text)));
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
 * declared at all, so that holes are cut by other means; a `:drill` without a tool is found by its own rule, and so
 * is one with a bit that nobody declared.
 */
function bitsOf(guide: Guide): readonly Bit[] | null {
  const { items } = guide;
  const drills = stepsOf(guide).flatMap((step) =>
    actionsOf(step).filter(({ node }) => node.verb === 'drill'),
  );
  if (drills.some(({ node }) => node.with.some(({ value }) => !items.has(value)))) return null;
  const tools = [...items.values()].flatMap((item) => (item.kind === 'tool' ? [item] : []));
  if (tools.some(({ unknown }) => unknown.has('diameter'))) return null;
  const bits = tools.flatMap(({ id, diameter }) => (diameter ? [{ id, diameter: diameter.value.base }] : []));
  return bits.length > 0 ? bits : null;
}

function within(inner: Span, outer: Span): boolean {
  return inner.file === outer.file && inner.start >= outer.start && inner.end <= outer.end;
}
