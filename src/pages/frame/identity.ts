import { whenInWords } from '../../job/builds/build-words.ts';
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

/** "revision 3, 2 October 2026"; empty where the guide states neither. */
export function editionWords({ revision, updated }: Pick<Guide, 'revision' | 'updated'>): string {
  const parts = [revision ? `revision ${revision.value}` : null, updated ? dateWords(updated.value) : null];
  return parts.filter((part) => part !== null).join(', ');
}

/** Digits of a step's fingerprint that tell it from what it was before: a page has some hundred steps at the most. */
const STEP_DIGITS = 16;

/** By what the page's scripts know a step again in another edition. */
export function stepPrint(id: string, { stepFingerprints }: Pick<Job, 'stepFingerprints'>): string {
  return (stepFingerprints.get(id) ?? '').slice(0, STEP_DIGITS);
}

/** The builds that the guide itself is limited to; undefined where it is for all that the platform has. */
export function buildsFor({ builds, file }: Pick<Guide, 'builds' | 'file'>): string | undefined {
  const own = builds.impossible.find(({ at }) => at.file === file);
  return own?.value.kind === 'not' ? whenInWords(own.value.of, builds.options) : undefined;
}

/** The build at the head of each printed sheet of a guide that reads alike for all its builds; `null` where it does not. */
export function oneBuildWords(
  guide: Pick<Guide, 'builds' | 'file'>,
  { plans }: Pick<Job, 'plans'>,
): string | null {
  return plans.length < 2 ? (buildsFor(guide) ?? 'all') : null;
}
