import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';

const months = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
];

/** `2026-10-02` as `2 October 2026`; what is no ISO date is printed as written. */
export function dateWords(iso: string): string {
  const [, year, month, day] = /^(\d{4})-(\d{2})-(\d{2})$/.exec(iso) ?? [];
  const name = months[Number(month) - 1];
  return name ? `${Number(day)}\u00a0${name} ${year}` : iso;
}

/** The first twelve characters of a fingerprint in groups of four, as people compare it: `3f2a 9c04 b7d1`. */
export function shortFingerprint(fingerprint: string): string {
  return (fingerprint.slice(0, 12).match(/.{1,4}/g) ?? []).join('\u00a0');
}

/** "revision 3, 3f2a 9c04 b7d1": which edition this is, at the foot of each printed sheet. */
export function identityWords(
  { revision }: Pick<Guide, 'revision'>,
  { fingerprint }: Pick<Job, 'fingerprint'>,
): string {
  const print = shortFingerprint(fingerprint);
  return revision ? `revision ${revision.value}, ${print}` : print;
}
