import { make } from '../bay/elements.ts';
import { messageOf, partsOf } from './compact.ts';
import { copyOf, wordsIn } from './copy.ts';

/** The first sheet of a job sheet, from what the page says of itself: pieces that stand one below the other. */
export function coverPieces(main: HTMLElement): readonly HTMLElement[] {
  const opening = partsOf(main.querySelector('.opening'));
  const messages = opening.filter((part) => part.matches('.message'));
  const picture = main.querySelector<HTMLElement>('.opening .figure img, .part .step .figure img.paper');
  const words = opening.filter((part) => part.matches('p, ul, ol'));
  const title = make(
    'div',
    'paper-cover',
    make(
      'div',
      '',
      make('p', 'paper-quiet', wordsIn(main.querySelector('.kicker'))),
      make('h1', '', wordsIn(main.querySelector('h1'))),
      ...words.map(copyOf),
    ),
    ...coverPicture(picture),
  );
  return [
    make(
      'div',
      'paper-shop',
      make('span', '', wordsIn(document.querySelector('.home'))),
      make('span', '', 'Job sheet'),
    ),
    title,
    identity(main),
    ...standing(main),
    ...messages.map(messageOf),
    fields(main),
    make('section', 'paper-contents'),
    ...tables(main),
    make(
      'p',
      'paper-words',
      `${wordsIn(main.querySelector(':scope > .deferral'))} Do not mix sheets of another fingerprint in.`,
    ),
  ];
}

function coverPicture(picture: HTMLElement | null): readonly HTMLElement[] {
  if (!(picture instanceof HTMLImageElement)) return [];
  const shown = make('img', 'paper-shown');
  shown.src = picture.src;
  shown.alt = '';
  for (const side of ['width', 'height'] as const) shown.setAttribute(side, picture.getAttribute(side) ?? '');
  return [shown];
}

/** What the document is, for which build it is printed, how long the job takes and who is needed when. */
function identity(main: HTMLElement): HTMLElement {
  const own = [...main.querySelectorAll('.head .identity > div')].map((entry): [string, string] => [
    wordsIn(entry.querySelector('dt')),
    wordsIn(entry.querySelector('dd')),
  ]);
  const rows = [...main.querySelectorAll('table.facts tr')].map((row): [string, string] => [
    wordsIn(row.querySelector('th')),
    wordsIn([...row.querySelectorAll<HTMLElement>('td > div')].find((line) => !line.hidden)),
  ]);
  const build = buildWords();
  // Behind the last step of this build another build may have one more.
  const helper = wordsIn(
    [...main.querySelectorAll('table.facts tr')]
      .find((row) => row.querySelector('.detail [data-step]'))
      ?.querySelector('span.detail'),
  ).replace(/,$/, '');
  return make(
    'dl',
    'paper-identity',
    ...[
      ...own,
      ...rows.slice(0, 1),
      ...(helper === '' ? [] : [['Second person', helper] as const]),
      ...(build === '' ? [] : [['Build', build] as const]),
    ].map(([label, value]) => make('div', '', make('dt', '', label), make('dd', '', value))),
  );
}

/** The build that the page shows, in words; empty where every build is shown or all are alike. */
export function buildWords(): string {
  if (document.documentElement.dataset.plan === undefined) return '';
  const line = [...document.querySelectorAll<HTMLElement>('.plans > li')].find(({ hidden }) => !hidden);
  return wordsIn(line);
}

/** What is written down of the vehicle and the job, each in a box of its own. */
function fields(main: HTMLElement): HTMLElement {
  const rows = [...main.querySelectorAll<HTMLElement>('.cover .job th')];
  return make(
    'div',
    'paper-fields',
    ...rows.map((row) => {
      const value = make('b', '');
      const { fact } = row.dataset;
      if (fact) value.dataset.factOf = fact;
      return make('div', fact ? 'paper-field' : 'paper-field wide', make('span', '', wordsIn(row)), value);
    }),
  );
}

/** That it is a draft, and how it stands to what was released: whoever knows the work must know what nobody has proved. */
function standing(main: HTMLElement): readonly HTMLElement[] {
  const told = [...main.querySelectorAll<HTMLElement>('.draft-note, .head > .standing')];
  return told.map((one) => {
    const kind = one.matches('.draft-note, .unverified') ? 'paper-standing unproved' : 'paper-standing';
    const lines = one.matches('p') ? [one] : [...one.querySelectorAll('p')];
    return make(
      'div',
      kind,
      ...lines.map((line) => make(line.querySelector('strong') ? 'b' : 'span', '', wordsIn(line))),
    );
  });
}

/** What the job is meant for, with the code that leads to the page, and the cut templates that are printed apart. */
function tables(main: HTMLElement): readonly HTMLElement[] {
  const [about, templates] = ['.cover .about', '.cover .cover-templates'].map((name) => {
    const table = main.querySelector<HTMLElement>(name);
    return table && partsOf(table.querySelector('tbody')).length > 0 ? [tableOf(table)] : [];
  });
  const code = main.querySelector('.cover .code svg')?.cloneNode(true);
  const beside = code ? [make('div', 'paper-code', code, 'This guide on a screen')] : [];
  return [make('div', 'paper-low', ...(about ?? []), ...beside), ...(templates ?? [])];
}

/** A table of the page with its caption as a heading. */
export function tableOf(table: HTMLElement): HTMLElement {
  const copy = copyOf(table);
  const caption = copy.querySelector('caption');
  const title = caption ? [make('h2', '', caption.textContent ?? '')] : [];
  caption?.remove();
  return make('section', 'paper-table', ...title, copy);
}
