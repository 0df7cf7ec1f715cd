import { wearSign, wearSignFor } from '../../drawings/safety-symbol.ts';
import type { Markup } from '../../html/markup.ts';
import { stringify } from '../../html/stringify.ts';
import type { Tool, Wear } from '../../model/item.ts';
import { formatBoth, formatRangeBoth } from '../../units/format.ts';
import { frameOf, type PageContext } from '../frame/context.ts';
import { toolPath } from '../frame/reference-paths.ts';
import type { GuideSummary } from './guide-summary.ts';
import { driveFact, fact, ownPictureView, synonymFacts } from './reference-facts.ts';
import type { FactView, ReferenceView } from './reference-views.ts';
import { usesOfTool } from './where-used.ts';

/** A tool of the crib, or protective equipment: its sizes, its other names, and where it is used. */
export function toolPage(
  item: Tool | Wear,
  guides: readonly GuideSummary[],
  page: PageContext,
): ReferenceView {
  return {
    frame: frameOf(page, { title: item.noun.label, styles: [`${page.root}assets/reference.css`] }),
    kicker: item.kind === 'tool' ? 'Tool' : 'To wear',
    title: item.noun.label,
    picture: ownPictureView(`tool ${item.id}`, page),
    drawing: drawingOf(item),
    lead: null,
    facts: [...(item.kind === 'tool' ? toolFacts(item, page) : []), ...synonymFacts(item)],
    ...usesOfTool(item.id, guides, page),
  };
}

/** The sign of what is worn. What a tool fits is no picture of the tool: it stands with its drive, among the facts. */
function drawingOf(item: Tool | Wear): Markup | null {
  return item.kind === 'wear' ? stringify([wearSign(wearSignFor(item.noun.label))]) : null;
}

function toolFacts(tool: Tool, page: PageContext): readonly FactView[] {
  const { drive, range, diameter, cutterRadius, offset, length, atHand } = tool;
  return [
    ...(drive ? [driveFact(drive.value, page)] : []),
    ...(atHand > 1 ? [fact('At hand', String(atHand))] : []),
    ...(range ? [fact('Range', formatRangeBoth(range.value))] : []),
    ...(diameter ? [fact('Diameter', formatBoth(diameter.value))] : []),
    ...(cutterRadius ? [fact('Least inside radius', formatBoth(cutterRadius.value))] : []),
    ...(length ? [fact('Length from grip to square', formatBoth(length.value))] : []),
    ...(offset ? [fact('Offset from the square', formatBoth(offset.value))] : []),
    ...tool.or.flatMap(({ value }) => {
      const other = page.shop.crib.get(value);
      return other ? [fact('Serves as well', other.noun.label, page.root + toolPath(value))] : [];
    }),
  ];
}
