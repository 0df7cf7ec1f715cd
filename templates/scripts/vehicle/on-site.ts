import { button, make, say } from '../bay/elements.ts';
import { device, refusalWords } from './device.ts';
import { fileChooser, recordIn, saveRecord } from './file.ts';
import type { KeptRecord, WholeRecord } from './kept.ts';
import { keepWhole } from './record-keeper.ts';
import { lineOf, recordSheet, showSheet } from './sheet.ts';

/** A guide of the site, as the page of records leads to it. */
interface SiteGuide {
  readonly id: string;
  readonly text: string;
  readonly href: string;
  readonly fingerprint: string;
}

/** The page of the site that opens any record: a file, or one that this device keeps. */
export function keepOnSite(root: HTMLElement): void {
  const guides: readonly SiteGuide[] = JSON.parse(
    document.getElementById('record_guides')?.textContent ?? '[]',
  );
  const said = make('p', 'vehicle-told');
  said.setAttribute('role', 'status');
  const kept = make('div', '');
  const shown = make('div', '');
  const chooser = fileChooser((file) => {
    say(said, '');
    void recordIn(file).then((found) => {
      if (typeof found === 'string') say(said, found);
      else show(found);
    });
  });
  const refused = (error: unknown) => say(said, refusalWords(error));
  const list = (): void =>
    void device.list().then((records) => kept.replaceChildren(...listOf(records, openKept)), refused);
  const openKept = (id: string) => void device.read(id).then((whole) => whole && show(whole), refused);

  const show = (whole: WholeRecord): void => {
    const { record } = whole;
    const print = button('', 'Print it', () => showSheet(whole, print));
    const drop = make(
      'details',
      'vehicle-part',
      make('summary', '', 'Take it off this device'),
      make('p', '', 'Do this only when it is saved as a file: it cannot be had back from here.'),
      make(
        'p',
        'buttons',
        button('', 'Take the record off this device', () => {
          void device.drop(record.id).then(() => {
            shown.replaceChildren();
            say(said, 'Taken off this device.');
            list();
          }, refused);
        }),
      ),
    );
    shown.replaceChildren(
      standing(record, guides),
      make(
        'p',
        'buttons',
        button('', 'Keep it on this device', () => {
          void keepWhole(whole, device).then((problem) => {
            say(said, problem ?? 'Kept on this device. On the page of its guide it can be gone on with.');
            list();
          });
        }),
        button('', 'Save as a file', () => say(said, `Saved as ${saveRecord(whole)}.`)),
        print,
      ),
      recordSheet(whole),
      drop,
    );
    const head = shown.querySelector<HTMLElement>('.vehicle-sheet h2');
    if (head) head.tabIndex = -1;
    head?.focus();
  };
  root.replaceChildren(make('p', 'buttons', chooser), said, kept, shown);
  root.hidden = false;
  list();
}

function listOf(records: readonly KeptRecord[], open: (id: string) => void): readonly HTMLElement[] {
  if (records.length === 0) return [make('p', 'quiet', 'This device keeps no record.')];
  return [
    make('h2', '', 'On this device'),
    make(
      'ul',
      'vehicle-kept',
      ...records.map((record) =>
        make(
          'li',
          '',
          button('', `${lineOf(record)}: ${record.guide.title}`, () => open(record.id)),
        ),
      ),
    ),
  ];
}

/** Whether the guide is still what the work was done by. */
function standing({ guide, work }: KeptRecord, guides: readonly SiteGuide[]): HTMLElement {
  const here = guides.find(({ id }) => id === guide.id);
  if (!here) return make('p', '', 'This site has no such guide. The record reads without it.');
  const link = make('a', '', here.text);
  link.href = here.href;
  const same = work.at(-1)?.fingerprint === here.fingerprint;
  const words = same
    ? ' is what the work was done by.'
    : ' has changed since the work was done. The record stays what it was.';
  return make('p', 'vehicle-standing', link, words);
}
