import type { Finding, Note } from '../diagnostics/finding.ts';
import { finding } from '../diagnostics/rule-card.ts';
import type { Violation } from '../model/violation.ts';
import { actorsOn } from './arrange.ts';
import type { VisitNode, VisitNodes } from './nodes.ts';
import type { VisitRequest } from './request.ts';
import { visitUnorderable } from './rules.ts';

/**
 * Tells the fewest steps that cannot be ordered, with the places of all: the one that shows the fault, and those of
 * another guide that have their hands on the same thing.
 *
 * @param told what the rules of the dry run say of it
 */
export function unordered(
  request: VisitRequest,
  fault: Violation,
  told: Finding | undefined,
  { nodes }: VisitNodes,
  things: ReadonlySet<string>,
): Finding {
  const [at = request.at] = request.guides.map((one) => one.at);
  const all = [...nodes.values()];
  const shows = all.find(({ step }) => step !== null && step.id === fault.step?.id);
  const others = shows ? actorsOn(things, all).filter((one) => isOfOthers(one, shows)) : [];
  const [first, last] = [others[0], others.at(-1)];
  const steps = [shows, first, ...(last === first ? [] : [last])].flatMap((node) => node ?? []);
  const notes: readonly Note[] = [
    ...steps.flatMap(({ step }) => (step ? [{ message: `the step “${step.titleText}”`, at: step.at }] : [])),
    ...(told ? [{ message: told.message, at: told.at }, ...told.notes] : []),
  ];
  const message =
    steps.length > 1
      ? `no order of these guides is possible: ${steps.map(({ step }) => `“${step?.titleText}”`).join(', ')} exclude each other; let both place one procedure for what they share, or plan two visits`
      : 'these guides cannot be one job; plan two visits';
  return finding(visitUnorderable, at, message, { notes });
}

function isOfOthers(one: VisitNode, other: VisitNode): boolean {
  return ![...one.places.keys()].some((guide) => other.places.has(guide));
}
