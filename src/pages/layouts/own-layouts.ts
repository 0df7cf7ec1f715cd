import { foreignParts } from './foreign-parts.ts';
import { type Layouts, prepareLayouts, type RenderLayout } from './layouts.ts';
import { newTrace } from './trace.ts';

/**
 * Readies layouts of which some are a shop's own. A page in which a browser would ask another host, run what is not
 * Baybook's, or work without the policy is refused, with the place of the layout that wrote it.
 */
export function prepareOwnLayouts(layouts: Layouts): RenderLayout {
  const render = prepareLayouts(layouts);
  return (layout, view) => {
    const page = render(layout, view);
    if (!page.ok || !view.frame) return page;
    const [first, ...more] = foreignParts(page.html, view.frame);
    if (!first) return page;
    const trace = newTrace();
    const marked = prepareLayouts(layouts, undefined, trace.mark)(layout, view);
    const traced = marked.ok ? trace.read(marked.html) : null;
    const place = traced?.html === page.html ? traced.placeAt(first.offset) : null;
    const where = place ? `${place.layout}, line:${place.line}, col:${place.column}` : layout;
    const rest = more.length > 0 ? `, and ${more.length} more` : '';
    return { ok: false, problem: `${first.what}, file:${where}${rest}` };
  };
}
