import { make } from '../bay/elements.ts';
import { copyOf, isPicked, wordsIn } from './copy.ts';

/** A safety message, whole: signal word, hazard and words in the order of the page. */
export function messageOf(from: HTMLElement): HTMLElement {
  const word = [...from.classList].find((name) => name !== 'message') ?? '';
  const bar = from.querySelector('.signal');
  const alert = bar?.querySelector('svg')?.cloneNode(true);
  const label = wordsIn(bar?.querySelector('span'));
  const text = from.querySelector('.message-text');
  return make(
    'div',
    `paper-message ${word}`,
    ...(bar ? [make('p', 'paper-signal', ...(alert ? [alert] : []), make('span', '', label))] : []),
    make('div', 'paper-message-text', ...partsOf(text).map(messagePart)),
  );
}

function messagePart(from: HTMLElement): HTMLElement {
  const copy = copyOf(from);
  if (from.matches('.hazard')) copy.className = 'paper-hazard';
  return copy;
}

/** What of a page's element the build has. */
export function partsOf(from: Element | null): readonly HTMLElement[] {
  return [...(from?.children ?? [])].filter(
    (child): child is HTMLElement =>
      child instanceof HTMLElement &&
      !child.hidden &&
      !child.matches('.why, .bench, [class^="bay-"], .owner'),
  );
}

/** A step in few lines: number, title and ticks, what it takes, then all that it says in its order. */
export function stepOf(step: HTMLElement, sides: readonly string[]): HTMLElement {
  const body = step.querySelector('.step-body');
  const lines = body?.querySelector<HTMLElement>(':scope > .lines');
  const parts = partsOf(body).filter((part) => part !== lines);
  const place = step.querySelector('.step-head .place-name')?.textContent ?? '';
  const takes = takesOf(lines, ':not([data-torque], .evidence)', [
    ['', place],
    // No number is parted from its unit.
    ['Time', wordsIn(step.querySelector('.step-head .facts'))],
  ]);
  const torques = takesOf(lines, ':is([data-torque], .evidence)', []);
  // The torque stands where the page has it: behind what is done, before figures of its own.
  const behind = parts.findIndex((part) => part.matches('.tightening, .positions, .readings, .sign'));
  const at = behind < 0 ? parts.length : behind;
  return make(
    'article',
    'paper-step',
    headOf(step, sides),
    ...(takes ? [takes] : []),
    ...parts.slice(0, at).map(blockOf),
    ...(torques ? [torques] : []),
    ...parts.slice(at).map(blockOf),
  );
}

/** The head of a step that goes on, where one is higher than a column. */
export function headAgain(head: Element): HTMLElement {
  const copy = head.cloneNode(true) as HTMLElement;
  copy.querySelector('h3')?.append(', continued');
  for (const tick of copy.querySelectorAll('.paper-ticks')) tick.remove();
  return copy;
}

function headOf(step: HTMLElement, sides: readonly string[]): HTMLElement {
  const head = step.querySelector('.step-head');
  const done = (side: string) => {
    const boxes = [...step.querySelectorAll<HTMLInputElement>('.bay-ticks input')];
    const box = boxes[side === '' ? 0 : sides.indexOf(side)];
    return box?.checked ? '✓' : '';
  };
  const isTwice = step.querySelectorAll('.bay-ticks input').length > 1;
  const ticks = (isTwice ? sides : ['']).map((side) =>
    make('span', 'paper-of-side', side, make('span', 'paper-tick', done(side))),
  );
  const only = head?.querySelector('p.only');
  return make(
    'header',
    'paper-step-head',
    make('b', '', wordsIn(head?.querySelector('[data-step]'))),
    make('h3', '', wordsIn(head?.querySelector('h2, h3, h4, h5, h6'))),
    make('span', 'paper-ticks', ...ticks),
    ...(only && document.documentElement.dataset.plan === undefined
      ? [make('p', 'paper-only', wordsIn(only))]
      : []),
  );
}

/**
 * Tools, wear, torques and the rest, each name before its words, one after the other.
 *
 * @param first names with their words that stand before all else; where the words are empty, not at all
 */
function takesOf(
  lines: HTMLElement | null | undefined,
  which: string,
  first: readonly (readonly [string, string])[],
): HTMLElement | null {
  const rows = (lines ? partsOf(lines) : []).filter((row) => row.matches(which));
  const facts = first.filter(([, words]) => words !== '');
  if (rows.length + facts.length === 0) return null;
  return make(
    'dl',
    'paper-takes',
    ...facts.map(([name, words]) =>
      make('div', '', make('dt', '', name && `${name} `), make('dd', '', words)),
    ),
    ...rows.map((row) => {
      const words = row.querySelector('dd');
      const name = make('dt', '', `${wordsIn(row.querySelector('dt'))} `);
      const said = make('dd', '', ...(words ? copyOf(words).childNodes : []));
      return make('div', row.matches('[data-torque], .evidence') ? 'paper-torque' : '', name, said);
    }),
  );
}

/** What a step or a section says, in the form of a sheet. */
export function blockOf(from: HTMLElement): HTMLElement {
  if (from.matches('.message')) return messageOf(from);
  if (from.matches('.figure')) return pictureOf(from);
  if (from.matches('.tightening')) return orderOf(from);
  if (from.matches('.template')) return templateOf(from);
  if (from.matches('.readings')) return readingsOf(from);
  if (from.matches('.prove')) return proofOf(from);
  const copy = copyOf(from);
  copy.classList.add(from.matches('.note') ? 'paper-note' : 'paper-words');
  return copy;
}

/**
 * A picture with its marks, and under it its key in two columns; one that another step has is on the sheets once,
 * unless it bears the numbers of this step.
 */
function pictureOf(from: HTMLElement): HTMLElement {
  const elsewhere = from.querySelector('.undoes');
  if (elsewhere && !from.querySelector('.order-told')) return make('p', 'paper-words', wordsIn(elsewhere));
  const plates = [...from.querySelectorAll<HTMLElement>('.plate')].map((plate) => {
    const image = plate.querySelector<HTMLImageElement>('img.paper') ?? plate.querySelector('img');
    const marks = plate.querySelector(':scope > svg')?.cloneNode(true);
    const shown = image ? make('img', '') : null;
    if (image && shown) {
      shown.src = image.src;
      shown.alt = image.alt;
      shown.width = image.width;
      shown.height = image.height;
      for (const side of ['width', 'height'] as const)
        shown.setAttribute(side, image.getAttribute(side) ?? '');
    }
    const sides = [...plate.classList].filter((name) => name.startsWith('marked-'));
    const kind = plate.matches('.detail-plate') ? 'paper-detail-plate' : '';
    return make(
      'div',
      ['paper-plate', kind, ...sides].join(' '),
      ...(shown ? [shown] : []),
      ...(marks ? [marks] : []),
    );
  });
  const told = partsOf(from.querySelector('figcaption')).filter(
    (part) => !(isPicked() && part.matches('.only')),
  );
  const said = told.map((part) => {
    const copy = copyOf(part);
    copy.classList.add(
      part.matches('.key') ? 'paper-key' : part.matches('.caption') ? 'paper-caption' : 'paper-words',
    );
    return copy;
  });
  return make('figure', 'paper-picture', ...plates, make('figcaption', '', ...said));
}

/** An order of tightening or the section of a bolt, with its words beside it. */
function orderOf(from: HTMLElement): HTMLElement {
  const drawing = from.querySelector('svg')?.cloneNode(true);
  const words = from.querySelector('figcaption');
  return make('figure', 'paper-order', ...(drawing ? [drawing] : []), ...(words ? [copyOf(words)] : []));
}

/** A cut template by its name, datums and cuts; its drawing is the sheet that is printed apart at full scale. */
function templateOf(from: HTMLElement): HTMLElement {
  const kept = partsOf(from).filter((part) =>
    part.matches('h2, h3, h4, h5, h6, .facts, ul:not(.files), .cuts'),
  );
  return make(
    'section',
    'paper-template',
    ...kept.map((part) => {
      const copy = copyOf(part);
      if (part.matches('.facts')) copy.className = 'paper-quiet';
      // Letter, what is cut and its size say themselves what they are.
      copy.querySelector('thead')?.remove();
      return copy;
    }),
  );
}

/** Readings, each with a box to write into. */
function readingsOf(from: HTMLElement): HTMLElement {
  const rows = [...from.querySelectorAll('tbody tr')].filter((row) => !(row as HTMLElement).hidden);
  return make(
    'div',
    'paper-readings',
    ...rows.map((row) => {
      const [name, found] = [row.querySelector('th'), row.querySelector('td')];
      return make(
        'div',
        'paper-reading',
        ...(name ? [make('div', '', ...copyOf(name).childNodes)] : []),
        ...(found ? [make('div', '', ...copyOf(found).childNodes)] : []),
      );
    }),
  );
}

/** What is proved: a box before each line, readings under them. */
function proofOf(from: HTMLElement): HTMLElement {
  const parts = partsOf(from).map((part) => {
    if (!part.matches('ul')) return blockOf(part);
    const lines = partsOf(part).map((line) => {
      const box = line.querySelector<HTMLInputElement>('input[type="checkbox"]');
      return make(
        'li',
        '',
        make('span', 'paper-tick', box?.checked ? '✓' : ''),
        make('span', '', ...copyOf(line).childNodes),
      );
    });
    return make('ul', 'paper-proof', ...lines);
  });
  return make('div', 'paper-prove', ...parts);
}
