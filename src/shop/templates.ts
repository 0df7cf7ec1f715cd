import type { Bit } from '../cut/lint.ts';
import { resolve } from '../cut/resolve.ts';
import type { Report } from '../diagnostics/report.ts';
import type { Guide } from '../model/guide.ts';

/** Reports what is wrong with the shapes of a guide's cut templates. */
export function checkTemplates(guide: Guide, report: Report): void {
  const bits = bitsOf(guide);
  for (const template of guide.templates.values()) {
    for (const finding of resolve(template, bits).findings) report(finding);
  }
}

/** The drill bits that a guide declares; `null` where a size could not be read, so that nobody asks for it. */
function bitsOf({ items }: Guide): readonly Bit[] | null {
  const tools = [...items.values()].flatMap((item) => (item.kind === 'tool' ? [item] : []));
  if (tools.some(({ unknown }) => unknown.has('diameter'))) return null;
  return tools.flatMap(({ id, diameter }) => (diameter ? [{ id, diameter: diameter.value.base }] : []));
}
