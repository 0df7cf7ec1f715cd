import type { Guide, Step } from '../../model/guide.ts';
import type { Verb } from '../../model/inline.ts';
import type { Violation } from '../../model/violation.ts';
import { ownPlace } from '../actions/own-place.ts';
import type { Fault } from './ledger.ts';
import type { PlayedStep, Script } from './script.ts';

/** What would have mended a fault, had it come before: one of some actions on one thing. */
interface Remedy {
  readonly id: string;
  readonly verbs: readonly Verb[];
}

/** Where a later step does what a fault asks for; `null` where none does. */
export function laterRemedy(
  fault: Fault,
  { scenes }: Script,
  guide: Guide,
  stepOf: (played: PlayedStep | null) => Step | null,
): Violation['later'] {
  const remedy = remedyOf(fault);
  if (!remedy) return null;
  const moves = scenes.flatMap((scene) => scene.moves);
  const first = moves.findIndex(({ action, step }) =>
    fault.action ? action === fault.action && step === fault.step : step === fault.step,
  );
  const later = moves
    .slice(first + 1)
    .find(({ action }) => remedy.verbs.includes(action.verb) && action.target.value === remedy.id);
  if (!later) return null;
  const { action } = later;
  const step = stepOf(later.step);
  const isDerived = step?.origins.some(({ kind }) => kind === 'reverse') ?? false;
  return { verb: action.verb, item: remedy.id, at: step && isDerived ? ownPlace(step, guide) : action.at };
}

function remedyOf(fault: Fault): Remedy | null {
  switch (fault.kind) {
    case 'still-held':
    case 'still-connected':
    case 'still-covered':
      return { id: fault.by, verbs: ['remove', 'disconnect', 'move-aside'] };
    case 'place-taken':
      return { id: fault.by, verbs: ['remove'] };
    case 'nothing-to-hold':
    case 'nothing-to-connect':
    case 'stack-open':
      return { id: fault.part, verbs: ['refit', 'fit', 'bond', 'move-back', 'start'] };
    case 'never-lifted':
      return { id: fault.part, verbs: ['remove', 'move-aside'] };
    case 'needs-unmet':
      return { id: fault.need, verbs: ['set', 'measure'] };
    case 'coat-missing':
      return { id: fault.supply, verbs: ['apply'] };
    case 'wrong-state':
      return { id: fault.item, verbs: fault.action ? (before[fault.action.verb] ?? []) : [] };
    default:
      return null;
  }
}

/** What comes before an action that undoes, or that ends what another began. */
const before: { readonly [V in Verb]?: readonly Verb[] } = {
  refit: ['remove'],
  connect: ['disconnect'],
  'move-back': ['move-aside'],
  'take-off': ['apply'],
  clear: ['set'],
  tighten: ['start', 'refit', 'fit', 'loosen'],
};
