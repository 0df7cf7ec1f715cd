import type { Rule } from '../rule.ts';
import { engineUnguarded } from './engine-unguarded.ts';
import { messageIncomplete } from './message-incomplete.ts';
import { messageLate } from './message-late.ts';
import { messageOneWay } from './message-one-way.ts';
import { messageRepeated } from './message-repeated.ts';
import { movementUnstated } from './movement-unstated.ts';
import { signalWordForeign } from './signal-word-foreign.ts';
import { signalWordTooStrong } from './signal-word-too-strong.ts';
import { signalWordTooWeak } from './signal-word-too-weak.ts';
import { wearUndeclared } from './wear-undeclared.ts';
import { workUnguarded } from './work-unguarded.ts';
import { workUnprepared } from './work-unprepared.ts';
import { workUnsigned } from './work-unsigned.ts';

/** Safety: messages that say enough, soon enough and not too often, what to wear, and work that wants care. */
export const safetyRules: readonly Rule[] = [
  engineUnguarded,
  messageIncomplete,
  messageLate,
  messageOneWay,
  messageRepeated,
  movementUnstated,
  signalWordForeign,
  signalWordTooStrong,
  signalWordTooWeak,
  wearUndeclared,
  workUnguarded,
  workUnprepared,
  workUnsigned,
];
