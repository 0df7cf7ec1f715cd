import type { Shop } from '../../model/shop.ts';
import { writtenDrive } from '../../trade/drives.ts';
import type { LaidOut } from './rehearsal-data.ts';

/** Something that the shop owns, among which a rehearsal hides what a guide needs. */
export interface CribEntry {
  readonly id: string;
  readonly kind: LaidOut['kind'];
  readonly label: string;
  /** As an author writes it: `T25`. */
  readonly drive: string | null;
  /** Whether it measures a torque. */
  readonly measures: boolean;
}

/** All that the shop owns and uses up, in the order of its lists. */
export function cribData({ crib, supplies }: Pick<Shop, 'crib' | 'supplies'>): readonly CribEntry[] {
  return [...crib.values(), ...supplies.values()].map((item) => ({
    id: item.id,
    kind: item.kind,
    label: item.noun.label,
    drive: item.kind === 'tool' && item.drive ? writtenDrive(item.drive.value) : null,
    measures: item.kind === 'tool' && item.range !== null,
  }));
}
