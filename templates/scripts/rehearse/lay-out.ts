import type { CribEntry } from '../../../src/pages/rehearsal/crib-data.ts';
import type { LaidOut, RehearsalData } from '../../../src/pages/rehearsal/rehearsal-data.ts';

/** Something that may be laid out. */
export interface Candidate {
  readonly id: string;
  readonly kind: LaidOut['kind'];
  readonly label: string;
  /** Whether the guide needs it in this build. */
  readonly needed: boolean;
}

/** How many things are laid among those that the guide needs, of each kind. */
const BESIDE: { readonly [kind in LaidOut['kind']]: number } = { tool: 7, supply: 3, wear: 2 };

/**
 * What the guide needs, among other things that the shop owns, in the order of the alphabet. Whatever could be
 * defended stays away: what serves as well, what goes on the same fasteners, another torque wrench.
 */
export function candidates(
  data: RehearsalData,
  plan: number,
  crib: readonly CribEntry[],
): readonly Candidate[] {
  const needed = data.plans[plan]?.layOut ?? [];
  const own = new Set(Object.keys(data.names));
  const serves = new Set(needed.flatMap(({ or }) => or));
  const drives = new Set(data.drives);
  const labels = new Set(needed.map(({ label }) => label));
  const beside = (kind: LaidOut['kind']) => {
    const others = crib.filter(
      (entry) =>
        entry.kind === kind &&
        !own.has(entry.id) &&
        !serves.has(entry.id) &&
        !labels.has(entry.label) &&
        !entry.measures &&
        (entry.drive === null || !drives.has(entry.drive)),
    );
    const stride = Math.max(1, Math.floor(others.length / BESIDE[kind]));
    return others.filter((_, place) => place % stride === 0).slice(0, BESIDE[kind]);
  };
  return [
    ...needed.map(({ id, kind, label }) => ({ id, kind, label, needed: true })),
    ...(['wear', 'tool', 'supply'] as const)
      .flatMap(beside)
      .map(({ id, kind, label }) => ({ id, kind, label, needed: false })),
  ].toSorted((a, b) => (a.label < b.label ? -1 : 1));
}

/** What a step has in hand and does not lie ready. */
export function forgotten(
  data: RehearsalData,
  plan: number,
  step: string | null,
  laid: ReadonlySet<string>,
): readonly LaidOut[] {
  if (step === null) return [];
  const uses = new Set(data.plans[plan]?.uses[step]);
  return (data.plans[plan]?.layOut ?? []).filter(
    ({ id, or }) => uses.has(id) && !laid.has(id) && !or.some((other) => laid.has(other)),
  );
}
