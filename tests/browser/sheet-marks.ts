import { execFileSync } from 'node:child_process';
import type { Page } from 'playwright-core';

/** Something that must stand whole on a sheet, or with what follows it. */
export interface Unit {
  /** What it is and how it begins, for the message. */
  readonly name: string;
  readonly kind: 'step' | 'whole' | 'picture' | 'message' | 'heading';
  /** Printed height in millimetres. */
  readonly height: number;
  /** The sheets, from 1, on which it begins and ends. */
  readonly first: number;
  readonly last: number;
  /** The sheet on which what stands before a picture ends, or what stands after a message or heading begins. */
  readonly neighbour: number | null;
}

/**
 * Puts a mark of white letters at the beginning and the end of every unit of the page, and of their neighbours.
 * A mark is a pseudo-element out of the flow: it moves nothing and is found in the print's text. Its letters and
 * digits are all of one height, since Chromium prints each on the sheet that its middle lies on; in a grid, as messages
 * are, it must be sent to the end.
 */
const setMarks = `(() => {
  const style = new CSSStyleSheet();
  const mark = (place, end) => '[data-mark]::' + place + '{content:"HXH" attr(data-mark) "HX' + end + '" !important;' +
    'position:absolute!important;display:block!important;width:auto;height:1px!important;margin:0!important;' +
    'padding:0!important;border:0!important;inset:auto!important;' +
    'font:1px/1px monospace!important;color:#fff!important;white-space:nowrap}';
  style.replaceSync(mark('before', 'A') + mark('after', 'Z') +
    '[data-mark]::after{translate:0 -2px} .message::after{align-self:end} [data-mark]::before{translate:0 2px}');
  document.adoptedStyleSheets.push(style);
  const seen = (element) => element.getClientRects().length > 0;
  const number = (element) => {
    element.dataset.mark ??= String(document.querySelectorAll('[data-mark]').length);
    return element.dataset.mark;
  };
  const next = (element) => {
    for (let at = element; at && at.id !== 'content'; at = at.parentElement) {
      for (let after = at.nextElementSibling; after; after = after.nextElementSibling) if (seen(after)) return after;
    }
    return null;
  };
  const previous = (element) => {
    for (let at = element.previousElementSibling; at; at = at.previousElementSibling) if (seen(at)) return at;
    return null;
  };
  // A row cannot be marked, its cells can.
  const markable = (element) => (element?.matches('table, thead, tbody, tr, ul, ol') ?
    markable([...element.querySelectorAll('th, td, li')].find(seen)) : element);
  const lastOf = (element) => (element?.matches('table, ul, ol') ?
    markable([...element.querySelectorAll('tr, li')].filter(seen).at(-1)) : element);
  const kinds = {
    step: '.step',
    whole: 'td, th, .lines, .tightening, .message',
    picture: '.figure',
    message: '.part .message:not(:last-child)',
    heading: 'h1, h2, h3, h4, h5, .step-head, .line-title, caption, tr.group',
  };
  return Object.entries(kinds).flatMap(([kind, wanted]) =>
    [...document.querySelectorAll(wanted.split(',').map((one) => 'main ' + one).join(','))]
      .filter((element) => seen(element) && !element.closest('.unseen, .sr-only') &&
        getComputedStyle(element).clipPath === 'none')
      .map((element) => {
        const beside = kind === 'picture' ? lastOf(previous(element)) :
          kind === 'message' || kind === 'heading' ? markable(element.matches('caption') ?
            element.parentElement.querySelector('thead') ?? element.nextElementSibling : next(element)) : null;
        return {
          kind,
          name: kind + ': ' + (element.innerText ?? '').trim().replace(/\\s+/g, ' ').slice(0, 50),
          height: element.getBoundingClientRect().height / 96 * 25.4,
          mark: number(element.matches('tr') ? markable(element) : element),
          beside: beside ? number(beside) : null,
        };
      }));
})()`;

interface Marked extends Pick<Unit, 'name' | 'kind' | 'height'> {
  readonly mark: string;
  readonly beside: string | null;
}

/** Marks the units of a page that shows its print; the print is made after that and read by {@link findUnits}. */
export async function markUnits(page: Page): Promise<readonly Marked[]> {
  await page.emulateMedia({ media: 'print' });
  return page.evaluate<readonly Marked[]>(setMarks);
}

/** Finds the marks in the print. */
export function findUnits(marked: readonly Marked[], file: string): readonly Unit[] {
  const sheetOf = new Map<string, number>();
  const text = execFileSync('pdftotext', ['-raw', file, '-'], { encoding: 'utf8' });
  for (const [index, sheet] of text.split('\f').entries()) {
    for (const [, mark = '', end = ''] of sheet.replace(/\s/g, '').matchAll(/HXH(\d+)HX([AZ])/g)) {
      sheetOf.set(`${mark}${end}`, index + 1);
    }
  }
  const place = (mark: string, name: string) => {
    const sheet = sheetOf.get(mark);
    if (sheet === undefined) throw new Error(`the mark ${mark} was not printed: ${name}`);
    return sheet;
  };
  return marked.map(({ mark, beside, kind, name, ...unit }) => ({
    ...unit,
    kind,
    name,
    first: place(`${mark}A`, name),
    last: place(`${mark}Z`, name),
    neighbour: beside === null ? null : place(kind === 'picture' ? `${beside}Z` : `${beside}A`, name),
  }));
}

/**
 * What is torn though it would have stood on one sheet, and what stands on another sheet than it belongs to.
 *
 * @param room the height of a sheet's text, in millimetres
 */
export function tornUnits(units: readonly Unit[], room: number): readonly string[] {
  return units.flatMap((unit) => {
    const where = `${unit.name} (${Math.round(unit.height)} mm, sheets ${unit.first} to ${unit.last})`;
    if (unit.height < room && unit.first !== unit.last) return [`torn: ${where}`];
    const own = unit.kind === 'picture' ? unit.first : unit.last;
    return unit.neighbour !== null && unit.neighbour !== own ? [`parted: ${where}, ${unit.neighbour}`] : [];
  });
}
