import { type Device, refusalWords } from './device.ts';
import type { KeptRecord, Photograph, WholeRecord } from './kept.ts';

/** Holds the record that is open, keeps each change on the device, and has everything drawn again. */
export interface RecordKeeper {
  readonly now: () => WholeRecord;
  readonly change: (edit: (record: KeptRecord) => KeptRecord) => void;
  readonly add: (photograph: Photograph) => void;
  readonly drop: (photograph: string) => void;
  /** Has something drawn now, and after each change, on this page or in another tab. */
  readonly onChange: (draw: (whole: WholeRecord, problem: string | null) => void) => void;
  /** Has something done after each change on this page. */
  readonly onEdit: (act: () => void) => void;
  /** Ends it: what another tab does to the record is no longer shown. */
  readonly end: () => void;
}

/**
 * A device that refuses changes nothing of the work: the record then lasts as long as the page.
 *
 * @param taken is called where another tab has taken the record off the device
 */
export function recordKeeper(begun: WholeRecord, device: Device, taken: () => void): RecordKeeper {
  let whole = begun;
  let problem: string | null = null;
  const draws: ((whole: WholeRecord, problem: string | null) => void)[] = [];
  const acts: (() => void)[] = [];
  const draw = (): void => {
    for (const one of draws) one(whole, problem);
  };
  // Each change is kept at once, so what another tab has kept holds all of this page too.
  const look = async (): Promise<void> => {
    const before = whole;
    const found = await device.read(whole.record.id);
    if (!found) return taken();
    // Written in meanwhile: what is kept has that too by now, or will have it when it is read again.
    if (whole !== before) return look();
    whole = found;
    draw();
  };
  const end = device.onOtherTab(begun.record.id, () => {
    // What this page could not keep must not give way to what is kept.
    if (problem === null) void look().catch(() => {});
  });
  const kept = (work: Promise<void>): void => {
    work.then(
      () => {},
      (error: unknown) => {
        problem = refusalWords(error);
        draw();
      },
    );
  };
  const change = (edit: (record: KeptRecord) => KeptRecord): void => {
    whole = { ...whole, record: { ...edit(whole.record), saved: new Date().toISOString() } };
    kept(device.keep(whole.record));
    draw();
    for (const act of acts) act();
  };
  return {
    now: () => whole,
    change,
    add: (photograph) => {
      whole = { ...whole, photographs: [...whole.photographs, photograph] };
      kept(device.keepPhotograph(whole.record.id, photograph));
      change((record) => record);
    },
    drop: (id) => {
      whole = { ...whole, photographs: whole.photographs.filter((one) => one.id !== id) };
      kept(device.dropPhotograph(whole.record.id, id));
      change((record) => record);
    },
    onChange: (one) => {
      draws.push(one);
      one(whole, problem);
    },
    onEdit: (act) => acts.push(act),
    end,
  };
}

/** Keeps a whole record that came in, with all its photographs; returns why the device refuses, or `null`. */
export async function keepWhole(
  { record, photographs }: WholeRecord,
  device: Device,
): Promise<string | null> {
  try {
    for (const photograph of photographs) await device.keepPhotograph(record.id, photograph);
    await device.keep(record);
    return null;
  } catch (error) {
    return refusalWords(error);
  }
}
