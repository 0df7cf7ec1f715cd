import type { BayData } from '../../../../src/pages/guide/bay-data.ts';

const keyOf = ({ guide }: Pick<BayData, 'guide'>) => `baybook record ${guide}`;

/** The id of the record that is open on the page of a guide; `null` for none. Never throws. */
export function openRecordOf(page: Pick<BayData, 'guide'>): string | null {
  try {
    return localStorage.getItem(keyOf(page));
  } catch {
    return null;
  }
}

/** Notes which record is open, so that the page opens with it again. A device that refuses opens without it. */
export function noteOpenRecord(page: Pick<BayData, 'guide'>, id: string | null): void {
  try {
    if (id === null) localStorage.removeItem(keyOf(page));
    else localStorage.setItem(keyOf(page), id);
  } catch {
    // What the device keeps is told where the record itself is kept.
  }
}
