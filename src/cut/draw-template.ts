import type { Finding } from '../diagnostics/finding.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { CutTemplate, Face, SheetPlan } from '../model/cut-template.ts';
import { PAPERS } from '../trade/paper.ts';
import { identified } from './drawing/identity.ts';
import { type Metrics, metricsOf } from './drawing/metrics.ts';
import { previewOf } from './drawing/preview.ts';
import { wholeDrawing } from './drawing/whole-drawing.ts';
import { writeDxf } from './files/dxf.ts';
import { writePdf } from './files/pdf.ts';
import { writeSvg } from './files/svg.ts';
import type { CutContext, SheetContext } from './job.ts';
import type { Bit } from './shape/lint.ts';
import { mirrored } from './shape/mirror.ts';
import { resolve } from './shape/resolve.ts';
import { type Resolved, writtenWords } from './shape/resolved.ts';
import { LETTERS_MISSING, SHEETS_TOO_MANY } from './shape/rules.ts';
import { MOST_SHEETS } from './sheet/sheet-count.ts';
import { drawSheets } from './sheet/sheets.ts';

/** What a file is, before it is written: its name has no folder. Sheets come with their plan, a drawing for a machine has none. */
type CutFileFacts = { readonly name: string } & (
  | { readonly format: 'pdf'; readonly plan: SheetPlan }
  | { readonly format: 'svg' | 'dxf'; readonly plan: null }
);

/** A file as it is written. */
type CutFile = CutFileFacts & { readonly bytes: Uint8Array };

/** A file that is written when it is asked for: always to the same bytes. */
type PlannedFile = CutFileFacts & { readonly write: () => Promise<Uint8Array> };

/** One side of a template, or of one of its variants, as drawn. */
export interface DrawnSide extends Omit<PlannedSide, 'files'> {
  readonly files: readonly CutFile[];
}

/** One side, laid out on its sheets, with files that are not written yet. */
export interface PlannedSide {
  readonly side: 'left' | 'right' | null;
  readonly face: Face;
  /** One plan for each paper asked for that the template fits. */
  readonly plans: readonly SheetPlan[];
  /** A reduced drawing for a page, as an SVG element. */
  readonly preview: string;
  readonly files: readonly PlannedFile[];
}

export interface DrawnTemplate {
  readonly sides: readonly DrawnSide[];
  readonly files: readonly CutFile[];
  readonly findings: readonly Finding[];
}

/**
 * Draws a template in full: PDF for each paper, SVG, DXF and a preview, for each side asked for. A template
 * with an error in its shapes is not drawn. The same template and context give the same bytes.
 */
export async function drawTemplate(
  template: CutTemplate,
  context: CutContext,
  bits: readonly Bit[] | null = null,
): Promise<DrawnTemplate> {
  const planned = planTemplate(template, context, bits);
  const sides: DrawnSide[] = [];
  for (const side of planned.sides) {
    const files: CutFile[] = [];
    for (const file of side.files) files.push({ ...file, bytes: await file.write() });
    sides.push({ ...side, files });
  }
  return { sides, files: sides.flatMap((s) => s.files), findings: planned.findings };
}

/** The same without writing a file: sides, sheets and names, and each file when it is asked for. */
export function planTemplate(
  template: CutTemplate,
  context: CutContext,
  bits: readonly Bit[] | null = null,
): { readonly sides: readonly PlannedSide[]; readonly findings: readonly Finding[] } {
  const { resolved, findings } = resolve(template, bits);
  if (resolved.cuts.length === 0 || findings.some((f) => f.severity === 'error'))
    return { sides: [], findings };
  const metrics = metricsOf(context.fonts);
  const found = [...findings];
  const readable = printable(resolved, metrics, (f) => found.push(f));
  const printed = { ...context, guideTitle: replaceMissing(context.guideTitle, metrics), metrics };
  const sides = sidesOf(readable, template, context).map((one) =>
    planSide(one, printed, (f) => found.push(f)),
  );
  return { sides, findings: found };
}

/** A template for each side is drawn for the left and mirrored for the right. */
function sidesOf(resolved: Resolved, template: CutTemplate, context: CutContext): Resolved[] {
  const face = context.face ?? template.face;
  const turned = face !== template.face;
  const seen = (one: Resolved): Resolved => (turned ? mirrored(one, one.side, face, context.words) : one);
  if (template.side !== 'each') return [seen(resolved)];
  const right = mirrored(resolved, 'right', template.face, context.words);
  return [resolved, right].filter((one) => context.side === null || one.side === context.side).map(seen);
}

function planSide(
  resolved: Resolved,
  context: SheetContext,
  report: (finding: Finding) => void,
): PlannedSide {
  const { variant } = resolved;
  // The underscore keeps the name apart from the ids that authors write.
  const named = variant ? `${resolved.id}_${variant.suffix}` : resolved.id;
  const stem = resolved.side ? `${named}-${resolved.side}` : named;
  const files: PlannedFile[] = [];
  const plans: SheetPlan[] = [];
  for (const paper of context.papers) {
    const drawn = drawSheets(resolved, paper, context);
    if (!drawn.ok) {
      const title = paper === 'single' ? 'one sheet' : PAPERS[paper].title;
      const message = `this template would need ${drawn.needed} sheets of ${title}; ${MOST_SHEETS} is the most that can be laid true`;
      report(finding(SHEETS_TOO_MANY, resolved.at, message));
      continue;
    }
    plans.push(drawn.plan);
    const title = [resolved.title, resolved.side && `${context.words[resolved.side]} side`, variant?.builds]
      .filter((part) => part)
      .join(', ');
    const suffix = context.correction ? '-corrected' : '';
    files.push({
      name: `${stem}-${paper}${suffix}.pdf`,
      write: () => writePdf(drawn.sheets, context.metrics, title, context),
      format: 'pdf',
      plan: drawn.plan,
    });
  }
  const text = new TextEncoder();
  const whole = (write: typeof writeSvg) => async (): Promise<Uint8Array> => {
    const { view, identity } = identified(wholeDrawing(resolved, context.metrics), context);
    return text.encode(write(view, identity));
  };
  files.push(
    { name: `${stem}.svg`, write: whole(writeSvg), format: 'svg', plan: null },
    { name: `${stem}.dxf`, write: whole(writeDxf), format: 'dxf', plan: null },
  );
  return {
    side: resolved.side,
    face: resolved.face,
    plans,
    preview: previewOf(resolved, context),
    files,
  };
}

/** Lettering that the fonts can print; what they lack becomes a question mark and a finding. */
function printable(resolved: Resolved, metrics: Metrics, report: (finding: Finding) => void): Resolved {
  const texts = writtenWords(resolved);
  const missing = [...new Set(texts.flatMap((text) => metrics.lacks(text)))];
  if (missing.length === 0) return resolved;
  report(
    finding(
      LETTERS_MISSING,
      resolved.at,
      `the sheets cannot print ${missing.map((c) => `“${c}”`).join(' ')} in this template’s words`,
    ),
  );
  const clean = (text: string): string => replaceMissing(text, metrics);
  return {
    ...resolved,
    title: clean(resolved.title),
    variant: resolved.variant && { ...resolved.variant, builds: clean(resolved.variant.builds) },
    datums: resolved.datums.map((d) => ({ ...d, label: clean(d.label) })),
    cuts: resolved.cuts.map((c) => ({ ...c, label: clean(c.label) })),
    keepOuts: resolved.keepOuts.map((k) => ({ ...k, label: clean(k.label) })),
  };
}

function replaceMissing(text: string, metrics: Metrics): string {
  const missing = new Set(metrics.lacks(text));
  return [...text].map((c) => (missing.has(c) ? '?' : c)).join('');
}
