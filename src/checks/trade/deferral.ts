import type { Note } from '../../diagnostics/finding.ts';
import type { Guide } from '../../model/guide.ts';

/** What every finding about a rating or a circuit says besides: Baybook reckons, others decide. */
export function deferral({ words }: Pick<Guide, 'words'>): Note {
  return { message: `the ${words.vehicle} maker’s data and the local code govern` };
}
