import { VEHICLE_RECORD_FORM, VEHICLE_RECORD_VERSION } from '../../../src/vehicle/record.ts';
import { button, make, say } from '../bay/elements.ts';
import type { Keeper } from '../bay/kept/keeper.ts';
import { noteOpenRecord, openRecordOf } from '../bay/kept/open-record.ts';
import { fresh, isBegun } from '../bay/kept/progress.ts';
import { loadStyle } from '../beside.ts';
import { evidenceCameras } from './camera.ts';
import { fillCover, vehicleLines } from './cover.ts';
import { device, refusalWords } from './device.ts';
import { fileChooser, recordIn } from './file.ts';
import { follow } from './follow.ts';
import { type KeptRecord, randomId, type WholeRecord } from './kept.ts';
import { intakeLines, recheckLines, signatureLines } from './page-facts.ts';
import { recordPanel } from './panel.ts';
import { keepWhole, recordKeeper } from './record-keeper.ts';
import { lineOf } from './sheet.ts';
import { progressOf, workOn } from './work.ts';

/** Where the record stands on the page of a guide, and the line below in which it is told what became of it. */
interface Place {
  readonly body: HTMLElement;
  readonly tell: (words: string) => void;
  readonly keeper: Keeper;
}

/** The record of the vehicle on the page of a guide: begun, written in along with the job, closed and taken up again. */
export function keepOnGuide(element: HTMLElement, keeper: Keeper): void {
  if (element.dataset.kept !== undefined) return;
  element.dataset.kept = '';
  loadStyle('vehicle');
  const said = make('p', 'vehicle-told');
  said.setAttribute('role', 'status');
  const body = make('div', 'vehicle-body');
  const isAsked = element.contains(document.activeElement);
  element.replaceChildren(body, said);
  const place = { body, keeper, tell: (words: string) => say(said, words) };
  void reopen(place, isAsked);
}

/** Opens the record that was open when the page was left, else shows what there is. */
async function reopen(place: Place, isAsked: boolean): Promise<void> {
  const id = openRecordOf(place.keeper.page);
  if (id === null) return showShelf(place, isAsked);
  try {
    const whole = await device.read(id);
    if (!whole) await showShelf(place);
    else if (isBegun(place.keeper.now())) showRecord(whole, place);
    // A device that has kept the record and lost the ticks has them in the record.
    else takeUp(whole, place);
  } catch (error) {
    await showShelf(place);
    place.tell(refusalWords(error));
  }
}

/**
 * What can be begun or opened while no record is open.
 *
 * @param isAsked whether the button that asked for it had the focus, and is gone
 */
async function showShelf(place: Place, isAsked = false): Promise<void> {
  const { page } = place.keeper;
  const kept = await device.list().catch((error: unknown) => {
    place.tell(refusalWords(error));
    return [];
  });
  const own = kept.filter(({ guide }) => guide.id === page.guide);
  const all = make('a', 'vehicle-all', 'Records of every guide on this device');
  // Guides and visits lie as deep as one another.
  all.href = '../../records.html';
  const heading = make('h3', '', `Record of this ${page.words.vehicle}`);
  heading.tabIndex = -1;
  const hasFocus = isAsked || place.body.contains(document.activeElement);
  place.body.replaceChildren(
    heading,
    make(
      'p',
      'buttons',
      button('', 'Begin a record', () => begin(place)),
      fileChooser((file) => void openFile(file, place)),
    ),
    ...(own.length > 0 ? [make('p', '', 'On this device:')] : []),
    make(
      'ul',
      'vehicle-kept',
      ...own.map((record) =>
        make(
          'li',
          '',
          button('', lineOf(record), () => void openKept(record.id, place)),
        ),
      ),
    ),
    make('p', '', all),
  );
  // Whoever works by keys goes on where the button was.
  if (hasFocus) heading.focus({ preventScroll: true });
}

function begin(place: Place): void {
  place.tell('');
  // Where a browser grants it, it does not clear the records when the device runs short of room.
  void navigator.storage?.persist?.();
  const whole = { record: begunRecord(place.keeper), photographs: [] };
  void keepWhole(whole, device).then((problem) => place.tell(problem ?? ''));
  showRecord(whole, place).focus();
}

async function openFile(file: File, place: Place): Promise<void> {
  if (!isFree(place)) return;
  const found = await recordIn(file);
  if (typeof found === 'string') return place.tell(found);
  const { guide } = found.record;
  if (guide.id !== place.keeper.page.guide)
    return place.tell(`This record belongs to another guide: “${guide.title}”. Nothing was changed.`);
  place.tell((await keepWhole(found, device)) ?? '');
  takeUp(found, place).focus();
}

async function openKept(id: string, place: Place): Promise<void> {
  if (!isFree(place)) return;
  place.tell('');
  try {
    const whole = await device.read(id);
    if (whole) takeUp(whole, place).focus();
  } catch (error) {
    place.tell(refusalWords(error));
  }
}

/** What is ticked here and belongs to no record must not be lost to one that is opened. */
function isFree({ keeper, tell }: Place): boolean {
  if (!isBegun(keeper.now())) return true;
  tell(
    'What is ticked on this page belongs to no record yet. Begin one with it and close that, or start this page again, below.',
  );
  return false;
}

/** Opens a record with what was ticked and typed in. */
function takeUp(whole: WholeRecord, place: Place): HTMLElement {
  const { keeper } = place;
  const progress = progressOf(whole.record);
  if (progress) {
    keeper.picker.show(progress.build);
    keeper.change(() => keeper.fitted(progress));
  }
  return showRecord(whole, place);
}

/** Shows a record to be written in; returns its heading. */
function showRecord(whole: WholeRecord, place: Place): HTMLElement {
  const { keeper, tell, body } = place;
  const { page } = keeper;
  const records = recordKeeper(whole, device, () =>
    leave('The record was taken off this device in another tab. What is ticked on this page stays.'),
  );
  const cameras = evidenceCameras(records);
  const leave = (words: string): void => {
    unfollow();
    records.end();
    for (const camera of cameras) camera.remove();
    noteOpenRecord(page, null);
    fillCover(records.now().record.vehicle.map((line) => ({ ...line, text: '' })));
    tell(words);
    void showShelf(place);
  };
  const { panel, heading } = recordPanel(records, keeper, {
    close: () => {
      leave('Closed. The record stays on this device.');
      keeper.change(() => fresh(page));
    },
    drop: () => {
      void device.drop(whole.record.id).then(
        () => leave('Taken off this device. What is ticked on this page stays.'),
        (error: unknown) => tell(refusalWords(error)),
      );
    },
  });
  records.onChange(({ record }) => fillCover(record.vehicle));
  noteOpenRecord(page, whole.record.id);
  body.replaceChildren(panel);
  const unfollow = follow(keeper, records, () =>
    leave('The record was closed as it stood, since this page was started again.'),
  );
  return heading;
}

function begunRecord(keeper: Keeper): KeptRecord {
  const { page } = keeper;
  const now = new Date().toISOString();
  const vehicle = [...vehicleLines()];
  return {
    form: VEHICLE_RECORD_FORM,
    version: VEHICLE_RECORD_VERSION,
    id: randomId(16),
    begun: now,
    saved: now,
    guide: { id: page.guide, title: page.title },
    vehicle,
    intake: [...intakeLines(page)],
    work: [workOn(keeper, keeper.now(), now)],
    signatures: signatureLines(page),
    rechecks: recheckLines(keeper, { vehicle, rechecks: [], begun: now }),
  };
}
