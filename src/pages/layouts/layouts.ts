import { Liquid, LiquidError, type Template } from 'liquidjs';
import { isMarkup } from '../../html/markup.ts';
import { unbroken } from '../../html/unbroken.ts';
import type { PrintedWords } from '../frame/printed-words.ts';
import { compiledRender } from './compiled-render.ts';
import type { PageAllowance } from './foreign-parts.ts';

/** The text of every layout by file name (`guide.liquid`); a shop's own stand in the place of the built-in ones. */
export type Layouts = ReadonlyMap<string, string>;

/** A page, or why a layout could not make it: the layout's name with line and column, in one sentence. */
type Rendered =
  | { readonly ok: true; readonly html: string }
  | { readonly ok: false; readonly problem: string };

/** Makes the HTML of a view with the layout of that name. */
export type RenderLayout = (layout: string, view: FramedView) => Rendered;

/** A view, whose table of printed words every layout within it reads as `words`; its frame says what the page may load. */
interface FramedView {
  readonly frame?: PageAllowance & { readonly words: PrintedWords };
}

/** Objects that a layout may make; a page of 500 steps needs about a tenth of it. */
const MEMORY_LIMIT = 20_000_000;

/** Pieces that the layouts of one page may do; a page of 25 steps does some 8,000. */
const WORK_LIMIT = 5_000_000;

/**
 * Readies the layouts: each is read once, when it is first asked for, and becomes functions. What they put out is
 * escaped; an unknown variable or filter is a fault and not an empty place; `raw` is refused, `markup` puts out
 * branded HTML alone, and `fault` refuses what a layout does not know; the time of day and chance are refused, so
 * that two builds are equal. Numbers stay with their units in what is made ({@link unbroken}). Work and memory are
 * counted, never time: a machine that sleeps loses no page.
 *
 * @param mark what each piece of a layout puts before its own output
 */
export function prepareLayouts(
  layouts: Layouts,
  workLimit = WORK_LIMIT,
  mark?: (template: Template) => string,
): RenderLayout {
  const engine = new Liquid({
    templates: Object.fromEntries(layouts),
    cache: true,
    outputEscape: 'escape',
    strictVariables: true,
    strictFilters: true,
    ownPropertyOnly: true,
    jsTruthy: true,
    memoryLimit: MEMORY_LIMIT,
  });
  engine.registerFilter('raw', refused('raw', 'text is always escaped'));
  for (const name of chanceFilters) engine.registerFilter(name, refused(name, 'two builds must be equal'));
  for (const name of clockFilters)
    engine.registerFilter(name, refused(name, 'a date stands in the guide, as its author wrote it'));
  engine.registerFilter('markup', {
    raw: true,
    handler: (value: unknown) => {
      if (isMarkup(value)) return value.html;
      throw new Error('"markup" puts out only what Baybook made as HTML, not text');
    },
  });
  engine.registerFilter('fault', (value: unknown, words: string) => {
    throw new Error(`${words}: "${value}"`);
  });
  const { renderTemplates, startPage } = compiledRender(engine, workLimit, mark);
  engine.renderer.renderTemplates = renderTemplates;
  return (layout, view) => {
    try {
      startPage();
      return {
        ok: true,
        html: unbroken(
          engine.renderFileSync(layout, view, { globals: { words: view.frame?.words } }) as string,
        ),
      };
    } catch (error) {
      if (LiquidError.is(error) || error instanceof Error)
        return { ok: false, problem: oneLine(error.message) };
      throw error;
    }
  };
}

/** Filters of Liquid that give another result each time. */
const chanceFilters = ['sample'];

/** Filters of Liquid that read the clock, or the machine's own time zone. */
const clockFilters = ['date', 'date_to_xmlschema', 'date_to_rfc822', 'date_to_string', 'date_to_long_string'];

function refused(name: string, why: string): () => never {
  return () => {
    throw new Error(`"${name}" is refused: ${why}`);
  };
}

function oneLine(message: string): string {
  return message.replace(/\s+/g, ' ').trim();
}
