import type { Bit } from '../cut/lint.ts';
import { resolve } from '../cut/resolve.ts';
import type { Finding } from '../diagnostics/finding.ts';
import type { Report } from '../diagnostics/report.ts';
import type { Guide } from '../model/guide.ts';
import type { Span } from '../source/span.ts';

/**
 * Reports what is wrong with the shapes of a guide's cut templates. A template in which something could not be
 * `read` lacks a shape, so nothing more is said of it.
 */
export function checkTemplates(guide: Guide, read: readonly Finding[], report: Report): void {
  const bits = bitsOf(guide);
  const faults = read.filter(({ severity }) => severity === 'error').map(({ at }) => at);
  for (const template of guide.templates.values()) {
    if (faults.some((at) => within(at, template.at))) continue;
    for (const finding of resolve(template, bits).findings) report(finding);
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
