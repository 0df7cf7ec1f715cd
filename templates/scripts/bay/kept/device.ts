import type { BayData } from '../../../../src/pages/guide/bay-data.ts';
import type { Progress } from './progress.ts';
import { progressText, readProgress } from './progress-text.ts';

/** Progress as the device keeps it. */
export interface Found {
  /** Of the guide as it stands on this page; `null` where there is none. */
  readonly here: Progress | null;
  /** Of another edition of it, the latest where there are several. */
  readonly other: Progress | null;
  /** What went wrong, as a line for the technician. */
  readonly problem: string | null;
}

const unreadable =
  'What this device had kept for this guide cannot be read, so nothing is ticked. The next tick takes its place.';
const denied =
  'This device keeps nothing for this page: its storage is switched off. Ticks and readings last until the page is closed; take them along as text, below.';
const full =
  'This device has no room left, so the latest ticks and readings are not kept. They last until the page is closed; take them along as text, below.';

/** The key of a guide's progress: one store may serve all files of the device, so the guide stands in it. */
export function keyOf({ guide, fingerprint }: Pick<BayData, 'guide' | 'fingerprint'>): string {
  return `${prefixOf(guide)}${fingerprint}`;
}

function prefixOf(guide: string): string {
  return `baybook progress ${guide} `;
}

/** Looks for progress of this guide. Never throws, whatever the storage holds or refuses. */
export function findProgress(page: BayData): Found {
  try {
    const text = localStorage.getItem(keyOf(page));
    const here = text === null ? null : readProgress(text);
    const ours = here?.guide === page.guide && here.fingerprint === page.fingerprint ? here : null;
    const problem = text !== null && !ours ? unreadable : null;
    return { here: ours, other: ours || problem ? null : latestOther(page), problem };
  } catch {
    return { here: null, other: null, problem: denied };
  }
}

function latestOther(page: BayData): Progress | null {
  const found = otherKeys(page).flatMap((key) => readProgress(localStorage.getItem(key) ?? '') ?? []);
  const ours = found.filter(({ guide }) => guide === page.guide);
  return ours.toSorted((a, b) => b.saved - a.saved)[0] ?? null;
}

function otherKeys(page: BayData): readonly string[] {
  return Object.keys(localStorage).filter(
    (key) => key.startsWith(prefixOf(page.guide)) && key !== keyOf(page),
  );
}

/** Keeps progress, in the place of that of other editions; returns a line where the device refuses. */
export function keepProgress(progress: Progress, page: BayData): string | null {
  try {
    localStorage.setItem(keyOf(page), progressText(progress));
    for (const key of otherKeys(page)) localStorage.removeItem(key);
    return null;
  } catch (error) {
    return error instanceof DOMException && error.name === 'QuotaExceededError' ? full : denied;
  }
}
