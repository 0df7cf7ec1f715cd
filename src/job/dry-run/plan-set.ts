/**
 * A set of plans: the bit `1n << n` stands for the plan at position `n`. A guide is played once for all plans,
 * since most of it is alike in all of them.
 */
export type PlanSet = bigint;

export const noPlan: PlanSet = 0n;

/** All of so many plans. */
export function everyPlan(count: number): PlanSet {
  return (1n << BigInt(count)) - 1n;
}

/** The plans for which something is true. */
export function plansWhere(count: number, isTrue: (plan: number) => boolean): PlanSet {
  let set = noPlan;
  for (let plan = 0; plan < count; plan += 1) if (isTrue(plan)) set |= 1n << BigInt(plan);
  return set;
}

/** For each plan, whether it is in a set. */
export type MembersOf = (set: PlanSet) => readonly boolean[];

/** Spells sets of so many plans out, each set once: a guide has few of them, and they recur. */
export function membership(count: number): MembersOf {
  const known = new Map<PlanSet, readonly boolean[]>();
  return (set) => {
    const earlier = known.get(set);
    if (earlier) return earlier;
    const digits = set.toString(2).padStart(count, '0');
    const members = Array.from({ length: count }, (_, plan) => digits[count - 1 - plan] === '1');
    known.set(set, members);
    return members;
  };
}
