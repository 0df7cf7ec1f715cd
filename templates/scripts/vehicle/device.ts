import { vehicleRecordSchema } from '../../../src/vehicle/record.ts';
import { type KeptRecord, type Photograph, randomId, type WholeRecord } from './kept.ts';

/** The records that this device keeps. Every call may be refused; `refusalWords` says why. */
export interface Device {
  /** The latest first. */
  readonly list: () => Promise<readonly KeptRecord[]>;
  readonly read: (id: string) => Promise<WholeRecord | null>;
  readonly keep: (record: KeptRecord) => Promise<void>;
  readonly keepPhotograph: (record: string, photograph: Photograph) => Promise<void>;
  readonly dropPhotograph: (record: string, photograph: string) => Promise<void>;
  /** Takes a record off the device: only ever because a person has said so. */
  readonly drop: (id: string) => Promise<void>;
  /** Has something done each time that another tab has kept a record or taken it off; returns what ends that. */
  readonly onOtherTab: (id: string, look: () => void) => () => void;
}

const NAME = 'baybook vehicle records';

let opened: Promise<IDBDatabase> | null = null;

/** Each record has a key of its own, apart from any guide: a guide that changes takes none away. */
function open(): Promise<IDBDatabase> {
  opened ??= new Promise<IDBDatabase>((resolve, reject) => {
    const request = indexedDB.open(NAME, 1);
    request.onupgradeneeded = () => {
      request.result.createObjectStore('records', { keyPath: 'id' });
      request.result.createObjectStore('photographs', { keyPath: ['record', 'id'] });
    };
    request.onsuccess = () => resolve(request.result);
    request.onerror = () => reject(request.error);
    request.onblocked = () => reject(new Error('blocked'));
  });
  opened.catch(() => {
    opened = null;
  });
  return opened;
}

type StoreName = 'records' | 'photographs';

/** Does something in one transaction, and waits until it is on the device. */
async function within<T>(
  names: readonly StoreName[],
  mode: IDBTransactionMode,
  work: (store: (name: StoreName) => IDBObjectStore) => IDBRequest<T>,
): Promise<T> {
  const transaction = (await open()).transaction([...names], mode);
  return new Promise((resolve, reject) => {
    const request = work((name) => transaction.objectStore(name));
    transaction.oncomplete = () => resolve(request.result);
    transaction.onabort = () => reject(transaction.error ?? request.error);
    transaction.onerror = () => reject(transaction.error ?? request.error);
  });
}

/** All photographs of one record: their keys begin with it, and a list comes after every text. */
const ofRecord = (id: string) => IDBKeyRange.bound([id], [id, []]);

const CHANGED = 'baybook record changed';

/** Tells the other tabs that a record is kept otherwise now, as a database tells nobody. */
function tellOtherTabs(id: string): void {
  try {
    localStorage.setItem(CHANGED, `${id} ${randomId(4)}`);
  } catch {
    // A tab that hears nothing goes on with what it has.
  }
}

/** The records in this browser's database. */
export const device: Device = {
  list: async () => {
    const found = await within<unknown[]>(['records'], 'readonly', (store) => store('records').getAll());
    return found.flatMap((one) => keptRecord(one) ?? []).sort((a, b) => (a.saved < b.saved ? 1 : -1));
  },
  read: async (id) => {
    const record = keptRecord(
      await within<unknown>(['records'], 'readonly', (store) => store('records').get(id)),
    );
    if (!record) return null;
    const photographs = await within<(Photograph & { readonly record: string })[]>(
      ['photographs'],
      'readonly',
      (store) => store('photographs').getAll(ofRecord(id)),
    );
    const inOrder = photographs.toSorted((a, b) => (a.taken < b.taken ? -1 : 1));
    return { record, photographs: inOrder.map(({ record: _, ...photograph }) => photograph) };
  },
  keep: async (record) => {
    await within(['records'], 'readwrite', (store) => store('records').put(record));
    tellOtherTabs(record.id);
  },
  keepPhotograph: async (record, photograph) => {
    await within(['photographs'], 'readwrite', (store) =>
      store('photographs').put({ ...photograph, record }),
    );
  },
  dropPhotograph: async (record, photograph) => {
    await within(['photographs'], 'readwrite', (store) => store('photographs').delete([record, photograph]));
  },
  drop: async (id) => {
    await within(['records', 'photographs'], 'readwrite', (store) => {
      store('photographs').delete(ofRecord(id));
      return store('records').delete(id);
    });
    tellOtherTabs(id);
  },
  onOtherTab: (id, look) => {
    const heard = ({ key, newValue }: StorageEvent): void => {
      if (key === CHANGED && newValue?.startsWith(`${id} `)) look();
    };
    window.addEventListener('storage', heard);
    return () => window.removeEventListener('storage', heard);
  },
};

function keptRecord(plain: unknown): KeptRecord | null {
  const read = vehicleRecordSchema.safeParse({ ...(plain ?? {}), photographs: [] });
  if (!read.success) return null;
  const { photographs: _, ...record } = read.data;
  return record;
}

/** Why the device does not keep something, and what to do, for the technician. */
export function refusalWords(error: unknown): string {
  const isFull = error instanceof DOMException && error.name === 'QuotaExceededError';
  const why = isFull
    ? 'This device has no room left, so the latest of this record is not kept.'
    : 'This device keeps no records for this page: its storage is switched off.';
  return `${why} It lasts until the page is closed: save the record as a file before that. The job goes on.`;
}
