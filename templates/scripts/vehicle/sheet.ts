import type { RecordedWork } from '../../../src/vehicle/record.ts';
import { make } from '../bay/elements.ts';
import { TICKED } from '../bay/kept/progress.ts';
import { dayOf, editionOf, type KeptRecord, nameOf, type WholeRecord } from './kept.ts';
import { drawn } from './photograph.ts';

/** Pixels along the longer side of a photograph on the sheet. */
const ON_SHEET = 900;

/** A record as it is read and printed. Whatever stands in it is shown as text alone. */
export function recordSheet({ record, photographs }: WholeRecord): HTMLElement {
  const { guide, work } = record;
  return make(
    'article',
    'vehicle-sheet',
    make('h2', '', nameOf(record)),
    pairs('The record', [
      ['Job', guide.title],
      ...work.map(({ since, ...one }) => [`Worked from ${dayOf(since)} by`, editionOf(one)] as const),
      ['Begun', dayOf(record.begun)],
      ['Last written in', dayOf(record.saved)],
    ]),
    pairs(
      'What it is of',
      record.vehicle.map(({ label, text }) => [label, text]),
    ),
    pairs(
      'As it came in',
      record.intake.map(({ label, text }) => [label, text]),
    ),
    ...work.flatMap((one) => workParts(one, work.length > 1)),
    table(
      'Done and checked',
      ['What', 'Name', 'Signature', 'Date'],
      record.signatures.map(({ what, name, on }) => [what, name, '', on]),
    ),
    table(
      'To be looked at again',
      ['What', 'When', 'On this one', 'Done on', 'By', 'Found'],
      record.rechecks.map(({ what, detail, when, due, on, by, found }) => [
        detail === '' ? what : `${what}: ${detail}`,
        when,
        due,
        on,
        by,
        found,
      ]),
    ),
    ...(photographs.length > 0 ? [make('h3', '', 'Photographs')] : []),
    ...photographs.map((photograph) =>
      make(
        'figure',
        'vehicle-figure',
        drawn(photograph, ON_SHEET),
        make('figcaption', '', `${photograph.shows}, ${dayOf(photograph.taken)}`),
      ),
    ),
  );
}

/** What was done under one edition, told apart where there are several. */
function workParts(work: RecordedWork, several: boolean): readonly HTMLElement[] {
  const { buildWords, found, steps, values } = work;
  const typed = values.filter(({ text }) => text !== TICKED);
  const ticked = values.filter(({ text }) => text === TICKED);
  return [
    ...(several ? [make('h3', '', `By ${editionOf(work)}`)] : []),
    ...guidesOf(work),
    pairs('Found', [
      ...(buildWords === '' ? [] : [['Build', buildWords] as const]),
      ...found.map(({ asked, text }) => [asked, text] as const),
    ]),
    pairs(
      'Readings and torques',
      typed.map(({ asked, text }) => [asked, text]),
    ),
    pairs(
      'Steps',
      steps.map(({ title, done }) => [title, doneWords(done)]),
    ),
    pairs(
      'Ticked',
      ticked.map(({ asked, text }) => [asked, text]),
    ),
  ].filter((part) => part.childElementCount > 0);
}

function guidesOf({ guides }: RecordedWork): readonly HTMLElement[] {
  const rows = guides.map(
    ({ title, revision, fingerprint }) =>
      [title, editionOf({ edition: revision === null ? '' : `revision ${revision}`, fingerprint })] as const,
  );
  return rows.length > 0 ? [pairs('Planned from', rows)] : [];
}

function doneWords(done: RecordedWork['steps'][number]['done']): string {
  if (done.includes('whole') || (done.includes('left') && done.includes('right'))) return 'done';
  return done.length === 0 ? 'not ticked' : `done on the ${done[0]}`;
}

/** An empty list is left out: its head would ask for what nobody is to write. */
function pairs(caption: string, rows: readonly (readonly [string, string])[]): HTMLElement {
  if (rows.length === 0) return make('div', '');
  return make(
    'table',
    'vehicle-pairs',
    make('caption', '', caption),
    make(
      'tbody',
      '',
      ...rows.map(([label, text]) => make('tr', '', headOf(label, 'row'), make('td', '', text))),
    ),
  );
}

function table(caption: string, heads: readonly string[], rows: readonly (readonly string[])[]): HTMLElement {
  if (rows.length === 0) return make('div', '');
  return make(
    'table',
    'vehicle-list',
    make('caption', '', caption),
    make('thead', '', make('tr', '', ...heads.map((head) => headOf(head, 'col')))),
    make(
      'tbody',
      '',
      ...rows.map(([first = '', ...rest]) =>
        make(
          'tr',
          '',
          headOf(first, 'row'),
          ...rest.map((text, index) => {
            const cell = make('td', '', text);
            // On a phone each stands on a line of its own, behind its head.
            cell.dataset.head = heads[index + 1] ?? '';
            return cell;
          }),
        ),
      ),
    ),
  );
}

function headOf(text: string, scope: 'row' | 'col'): HTMLElement {
  const head = make('th', '', text);
  head.scope = scope;
  return head;
}

/** Shows a record in the place of the page, to be read and printed. */
export function showSheet(whole: WholeRecord, back: HTMLElement): void {
  const root = document.documentElement;
  const leave = (): void => {
    root.classList.remove('on-record');
    view.remove();
    back.focus();
  };
  const print = make('button', '', 'Print the record');
  const shut = make('button', '', 'Back');
  for (const [one, press] of [
    [print, () => window.print()],
    [shut, leave],
  ] as const) {
    one.type = 'button';
    one.addEventListener('click', press);
  }
  const view = make('section', 'vehicle-view', make('p', 'buttons', print, shut), recordSheet(whole));
  view.setAttribute('aria-label', 'Record');
  view.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') leave();
  });
  document.body.append(view);
  root.classList.add('on-record');
  window.scrollTo(0, 0);
  print.focus({ preventScroll: true });
}

/** How a record is named where it is one of several. */
export function lineOf(record: KeptRecord): string {
  const last = record.work.at(-1);
  return `${nameOf(record)}, begun ${dayOf(record.begun)}${last ? `, ${editionOf(last)}` : ''}`;
}
