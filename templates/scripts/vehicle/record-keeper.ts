import { type Device, refusalWords } from './device.ts';
import type { KeptRecord, Photograph, WholeRecord } from './kept.ts';

/** Holds the record that is open, keeps each change on the device, and has everything drawn again. */
export interface RecordKeeper {
  readonly now: () => WholeRecord;
  readonly change: (edit: (record: KeptRecord) => KeptRecord) => void;
  readonly add: (photograph: Photograph) => void;
  readonly drop: (photograph: string) => void;
  /** Has something drawn now, and after each change. */
  readonly onChange: (draw: (whole: WholeRecord, problem: string | null) => void) => void;
}

/** A device that refuses changes nothing of the work: the record then lasts as long as the page. */
export function recordKeeper(begun: WholeRecord, device: Device): RecordKeeper {
  let whole = begun;
  let problem: string | null = null;
  const draws: ((whole: WholeRecord, problem: string | null) => void)[] = [];
  const draw = (): void => {
    for (const one of draws) one(whole, problem);
  };
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
