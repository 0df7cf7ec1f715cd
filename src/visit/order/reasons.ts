import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { OrderReason, Visit } from '../../model/visit.ts';
import type { Before } from './graph.ts';

/** What has decided the order of a visit besides the orders of its guides. */
interface Deciders {
  readonly dirt: readonly Before[];
  readonly ledger: readonly Before[];
  readonly repeated: readonly string[];
}

/** Why steps of a visit stand where they do, in the order of doing. */
export function orderReasons(
  guide: Guide,
  job: Job,
  { dirt, ledger, repeated }: Deciders,
): readonly OrderReason[] {
  const order = guide.sections.flatMap(({ steps }) => steps.map(({ id }) => id));
  const place = new Map(order.map((id, index) => [id, index]));
  const at = (id: string) => place.get(id) ?? order.length;
  const reasons: OrderReason[] = [];
  for (const step of new Set(dirt.map(({ first }) => first))) {
    const others = dirt.filter(({ first }) => first === step).map(({ second }) => second);
    const [other] = others.sort((a, b) => at(a) - at(b));
    if (other !== undefined) reasons.push({ kind: 'dirty-first', steps: [step], other });
  }
  for (const { first, second } of ledger) reasons.push({ kind: 'ledger', steps: [first], other: second });
  reasons.push(...fills(order, job, guide.visit));
  if (repeated.length > 0)
    reasons.push({ kind: 'repeated', steps: [...repeated].sort((a, b) => at(a) - at(b)), other: null });
  return reasons.sort((a, b) => at(a.steps[0] ?? '') - at(b.steps[0] ?? ''));
}

/** Steps of other guides that stand right behind one after which its own guide has to wait. */
function fills(order: readonly string[], job: Job, visit: Visit | null): readonly OrderReason[] {
  const waits = new Set(
    job.plans.flatMap(({ steps }) =>
      steps.flatMap(({ id, wait, after }) => [
        ...(wait > 0 ? [id] : []),
        ...after.flatMap((link) => (link.wait > 0 ? [link.step] : [])),
      ]),
    ),
  );
  return order.flatMap((id, index): readonly OrderReason[] => {
    if (!waits.has(id)) return [];
    const own = new Set(visit?.steps.get(id)?.guides);
    const behind = order.slice(index + 1);
    const end = behind.findIndex((one) => visit?.steps.get(one)?.guides.some((guide) => own.has(guide)));
    const steps = end < 0 ? behind : behind.slice(0, end);
    return steps.length === 0 ? [] : [{ kind: 'fills-wait', steps, other: id }];
  });
}
