import { button, make, say } from '../bay/elements.ts';
import type { Keeper } from '../bay/kept/keeper.ts';
import { cameraFor } from './camera.ts';
import { saveRecord } from './file.ts';
import { dayOf, type KeptRecord, nameOf } from './kept.ts';
import { isShut } from './page-facts.ts';
import type { RecordKeeper } from './record-keeper.ts';
import { showSheet } from './sheet.ts';

/** A list of the record that is written in line by line. */
type Lines = 'vehicle' | 'intake' | 'signatures' | 'rechecks';

/** The record that is open on the page of a guide, to be written in. */
export function recordPanel(
  records: RecordKeeper,
  keeper: Keeper,
  shut: { readonly close: () => void; readonly drop: () => void },
): { readonly panel: HTMLElement; readonly heading: HTMLElement } {
  const { vehicle } = keeper.page.words;
  const title = make('h3', '');
  title.tabIndex = -1;
  const problem = make('p', 'vehicle-problem');
  const said = make('p', 'vehicle-told');
  for (const one of [problem, said]) one.setAttribute('role', 'status');
  records.onChange(({ record }, met) => {
    say(title, nameOf(record));
    say(problem, met ?? '');
  });
  const print = button('', 'Read and print it', () => showSheet(records.now(), print));
  const panel = make(
    'div',
    'vehicle-open-record',
    title,
    problem,
    part(`The ${vehicle}, and as it came in`, true, intakeParts(records)),
    part('Other photographs', false, [otherPhotographs(records)]),
    part('Who signs', false, [linesOf(records, 'signatures', signatureFields)]),
    part('To be looked at again', false, [linesOf(records, 'rechecks', recheckFields)]),
    make(
      'p',
      'buttons',
      button('', 'Save as a file', () => say(said, `Saved as ${saveRecord(records.now())}.`)),
      print,
      button('', 'Close the record', shut.close),
    ),
    said,
    make(
      'p',
      'quiet',
      `It stays on this device under its own number, whatever becomes of the guide. Nothing leaves the device unless you save it. Closing it clears the page for the next ${vehicle}.`,
    ),
    part('Take it off this device', false, [
      make('p', '', 'Do this only when it is saved as a file: it cannot be had back from here.'),
      make('p', 'buttons', button('', 'Take the record off this device', shut.drop)),
    ]),
  );
  return { panel, heading: title };
}

function part(title: string, isOpen: boolean, children: readonly HTMLElement[]): HTMLElement {
  const details = make('details', 'vehicle-part', make('summary', '', title), ...children);
  details.open = isOpen;
  return details;
}

function intakeParts(records: RecordKeeper): readonly HTMLElement[] {
  const texts = (name: 'vehicle' | 'intake') =>
    linesOf(records, name, ({ key, label }) => [
      { name: 'text', label },
      ...(key.startsWith('part ')
        ? [cameraFor(records, `intake ${key}`, () => `${label}, as it came in`)]
        : []),
    ]);
  return [
    texts('vehicle'),
    make(
      'p',
      'quiet',
      'What the job touches: write down what is scratched, cracked or loose already, or “none”.',
    ),
    texts('intake'),
  ];
}

function otherPhotographs(records: RecordKeeper): HTMLElement {
  const shows = make('input', 'field');
  shows.type = 'text';
  shows.autocomplete = 'off';
  return make(
    'div',
    '',
    make('label', 'vehicle-field', 'What it shows', shows),
    cameraFor(records, '', () => shows.value.trim() || 'Not said'),
  );
}

/** A text that is asked for, by its name in the line. */
interface TextField {
  readonly name: string;
  readonly label: string;
}

function signatureFields({
  key,
  what,
}: KeptRecord['signatures'][number]): readonly (TextField | HTMLElement)[] {
  const shut = make('p', 'vehicle-told');
  shut.dataset.shutBy = key;
  return [
    make('p', 'vehicle-what', what),
    shut,
    { name: 'name', label: 'Name' },
    { name: 'on', label: 'Date' },
  ];
}

function recheckFields({
  what,
  detail,
  when,
  due,
}: KeptRecord['rechecks'][number]): readonly (TextField | HTMLElement)[] {
  return [
    make('p', 'vehicle-what', `${what}${detail === '' ? '' : `: ${detail}`}, ${when}`),
    ...(due === '' ? [] : [make('p', 'quiet', `On this one ${due}`)]),
    { name: 'on', label: 'Done on' },
    { name: 'by', label: 'By' },
    { name: 'found', label: 'Found' },
  ];
}

/** The lines of a list with their fields. They are made anew only where there are others: whoever types goes on typing. */
function linesOf<K extends Lines>(
  records: RecordKeeper,
  list: K,
  fieldsOf: (line: KeptRecord[K][number]) => readonly (TextField | HTMLElement)[],
): HTMLElement {
  const box = make('div', 'vehicle-lines');
  let drawnFor = '';
  records.onChange(({ record }) => {
    const lines: readonly KeptRecord[K][number][] = record[list];
    const names = JSON.stringify(
      lines.map((line) => ('key' in line ? [line.key] : [line.what, line.when, line.due])),
    );
    if (names !== drawnFor) {
      drawnFor = names;
      box.replaceChildren(
        ...lines.map((line, index) =>
          make(
            'div',
            'vehicle-line',
            ...fieldsOf(line).map((one) =>
              one instanceof HTMLElement ? one : textOf(records, list, index, one),
            ),
          ),
        ),
      );
    }
    for (const input of box.querySelectorAll<HTMLInputElement>('input[data-name]')) {
      const line: { readonly [name: string]: string } = { ...lines[Number(input.dataset.index)] };
      const text = line[input.dataset.name ?? ''] ?? '';
      if (input.value !== text) input.value = text;
    }
    for (const told of box.querySelectorAll<HTMLElement>('[data-shut-by]')) {
      const shut = isShut(told.dataset.shutBy ?? '');
      say(told, shut ? 'Not to be signed yet: the evidence is open.' : '');
      for (const input of told.parentElement?.querySelectorAll('input') ?? []) input.readOnly = shut;
    }
  });
  return box;
}

function textOf(records: RecordKeeper, list: Lines, index: number, { name, label }: TextField): HTMLElement {
  const input = make('input', 'field');
  input.type = 'text';
  input.autocomplete = 'off';
  Object.assign(input.dataset, { name, index: String(index) });
  input.addEventListener('input', () =>
    records.change((record) => ({
      ...record,
      [list]: record[list].map((line, at) =>
        at === index ? withToday({ ...line, [name]: input.value }, list, name) : line,
      ),
    })),
  );
  return make('label', 'vehicle-field', label, input);
}

/** Whoever writes a name signs today, and may write another day. */
function withToday<L extends object>(line: L, list: Lines, name: string): L {
  const signs = list === 'signatures' && name === 'name' && 'on' in line && line.on === '';
  return signs ? { ...line, on: dayOf(new Date().toISOString()) } : line;
}
