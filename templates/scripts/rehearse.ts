import type { CribEntry } from '../../src/pages/rehearsal/crib-data.ts';
import type { RehearsalData } from '../../src/pages/rehearsal/rehearsal-data.ts';
import { startRehearsal } from './rehearse/screen.ts';
import { openSession } from './rehearse/session.ts';
import { speaker } from './rehearse/words.ts';

/** What this script does without a page: it opens a rehearsal, and says what it finds. */
export interface Rehearsing {
  readonly openSession: typeof openSession;
  readonly speaker: typeof speaker;
}

declare global {
  /** Set by the data that lie beside the page. */
  var rehearsed: RehearsalData | undefined;
  /** Set by the list of what the shop owns. */
  var shopCrib: readonly CribEntry[] | undefined;
  var rehearsing: Rehearsing | undefined;
}

globalThis.rehearsing = { openSession, speaker };

const root = globalThis.document?.getElementById('rehearse');
if (root && globalThis.rehearsed) {
  document.querySelector<HTMLElement>('.rehearse-off')?.remove();
  startRehearsal(root, globalThis.rehearsed, globalThis.shopCrib ?? []);
}
