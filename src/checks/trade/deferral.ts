import type { Note } from '../../diagnostics/finding.ts';

/** What every finding about a rating or a circuit says besides: Baybook reckons, others decide. */
export const deferral: Note = { message: 'the vehicle maker’s data and the local code govern' };
