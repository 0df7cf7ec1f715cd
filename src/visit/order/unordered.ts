import type { Finding, Note } from '../../diagnostics/finding.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { placedInStep } from '../../job/actions/walk.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { Span } from '../../source/span.ts';
import type { VisitRequest } from '../request/request.ts';
import { visitUnorderable } from '../rules.ts';
import { actorsOn, thingsOf } from './arrange.ts';
import type { VisitNode, VisitNodes } from './nodes.ts';

/** A visit in an order that the rules refuse, and what they say of it. */
export interface RefusedVisit {
  readonly guide: Guide;
  readonly job: Job;
  readonly errors: readonly Finding[];
  readonly nodes: VisitNodes;
}

/** Two steps of different guides of which one cannot be done after the other, and why. */
interface Clash {
  readonly shows: VisitNode;
  readonly cause: VisitNode;
  readonly told: Finding;
}

/**
 * Tells the fewest steps that cannot be ordered, each with its place: the one that shows the fault and the one of
 * another guide that brings it about, as each order of the guides shows it.
 *
 * @param refused one at least, of every order of the guides in a row
 */
export function unordered({ guides, at: whole }: VisitRequest, refused: readonly RefusedVisit[]): Finding {
  const [at = whole] = guides.map((one) => one.at);
  const clashes = new Map<string, Clash>();
  for (const one of refused) {
    const clash = clashOf(one);
    if (clash) clashes.set(`${clash.shows.id} ${clash.cause.id}`, clash);
  }
  const told = [...clashes.values()].slice(0, 2);
  const [error] = refused.flatMap(({ errors }) => errors);
  if (told.length === 0) {
    const notes = error ? [{ message: error.message, at: error.at }, ...error.notes] : [];
    return finding(visitUnorderable, at, 'these guides cannot be one job; plan two visits', { notes });
  }
  const notes = told.flatMap(({ shows, cause, told: why }): Note[] => [
    { message: `“${titleOf(shows)}” cannot come after “${titleOf(cause)}”: ${why.message}`, at: why.at },
    { message: `the step “${titleOf(cause)}”`, at: cause.step?.at ?? why.at },
    ...why.notes,
  ]);
  const steps = [...new Set(told.flatMap(({ shows, cause }) => [shows, cause]))];
  const message = `no order of these guides is possible: ${steps.map((step) => `“${titleOf(step)}”`).join(', ')} exclude each other; let both place one procedure for what they share, or plan two visits`;
  return finding(visitUnorderable, at, message, { notes });
}

function clashOf({ guide, job, errors, nodes: { nodes } }: RefusedVisit): Clash | null {
  const all = [...nodes.values()];
  const [fault] = job.violations;
  const told = errors.find(({ at }) => fault && isWithin(at, fault.at)) ?? errors[0];
  if (!told) return null;
  const shows = all.find((one) => (fault?.step ? one.step?.id === fault.step.id : isAt(one, told.at)));
  if (!shows) return null;
  const others = all.filter((one) => isOfOthers(one, shows));
  const named = others.find((one) => told.notes.some((note) => note.at && isAt(one, note.at)));
  const cause = named ?? (fault && actorsOn(thingsOf(fault, guide), others).at(-1));
  return cause ? { shows, cause, told } : null;
}

/** Whether a place lies in what is done in a step. */
function isAt({ step }: VisitNode, at: Span): boolean {
  return step !== null && placedInStep(step).some(({ node }) => isWithin(at, node.at));
}

function isWithin(inner: Span, { file, start, end }: Span): boolean {
  return inner.file === file && start <= inner.start && inner.end <= end;
}

function titleOf({ step }: VisitNode): string {
  return step?.titleText ?? '';
}

function isOfOthers(one: VisitNode, other: VisitNode): boolean {
  return ![...one.places.keys()].some((guide) => other.places.has(guide));
}
