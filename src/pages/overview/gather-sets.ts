import type { Item } from '../../model/item.ts';
import { mergeDrives } from '../../trade/drive-sets.ts';
import { type Drive, writtenDrive } from '../../trade/drives.ts';
import type { GatherRow } from './list-views.ts';

/** A row for one size of a tool, such as "T25 bit". */
interface SizedRow {
  readonly row: GatherRow;
  readonly drive: Drive;
  /** "T25", "7 mm". */
  readonly size: string;
  /** "bit" and "bits". */
  readonly noun: string;
  readonly plural: string;
}

/**
 * Merges rows of tools that differ by their size alone into sets: "T25, T30 bits". Each size keeps its anchor and
 * the step that needs it first. Only rows that stand for the same builds are merged, and none about which more is
 * said; the set stands where the first of them stood.
 */
export function mergeSets(
  rows: readonly GatherRow[],
  items: ReadonlyMap<string, Item>,
): readonly GatherRow[] {
  const sets = setsOf([...items.values()].flatMap((item) => sizedRow(item, rows) ?? []));
  const merged = new Map(sets.flatMap((set) => set.map(({ row }) => [row, set] as const)));
  return rows.flatMap((row) => {
    const set = merged.get(row);
    if (!set) return [row];
    return set.every((one) => rows.indexOf(one.row) >= rows.indexOf(row)) ? [setRow(row, set)] : [];
  });
}

function sizedRow(item: Item, rows: readonly GatherRow[]): SizedRow | null {
  const row = rows.find(({ item: id }) => id === item.id);
  if (!row || item.kind !== 'tool' || !item.drive) return null;
  if (row.detail !== null || row.amount.length > 0 || item.noun.label.includes(',')) return null;
  const drive = item.drive.value;
  const size = 'across' in drive ? drive.size : writtenDrive(drive);
  const { label, plural } = item.noun;
  if (!label.startsWith(`${size} `) || !plural.startsWith(`${size} `)) return null;
  return { row, drive, size, noun: label.slice(size.length + 1), plural: plural.slice(size.length + 1) };
}

/** Two or more of a kind, smallest first. */
function setsOf(sized: readonly SizedRow[]): readonly (readonly SizedRow[])[] {
  const alike = new Map<string, SizedRow[]>();
  for (const one of sized) {
    const key = JSON.stringify([one.noun, one.row.plans]);
    alike.set(key, [...(alike.get(key) ?? []), one]);
  }
  return [...alike.values()]
    .flatMap((group) =>
      mergeDrives(group.map(({ drive }) => drive)).map(({ drives }) =>
        drives.flatMap((drive) => group.filter((one) => one.drive === drive)),
      ),
    )
    .filter((set) => set.length > 1);
}

function setRow(first: GatherRow, set: readonly SizedRow[]): GatherRow {
  const unit = [' mm', ' in'].find((end) => set.every(({ size }) => size.endsWith(end))) ?? '';
  const sizes = set.map(({ size }) => size.slice(0, size.length - unit.length)).join(', ');
  return {
    ...first,
    name: `${sizes}${unit.replace(' ', '\u00a0')} ${set[0]?.plural ?? ''}`,
    page: null,
    picture: null,
    first: [],
    sizes: set.map(({ row, size }) => ({
      id: row.id,
      size: size.replaceAll(' ', '\u00a0'),
      page: row.page,
      picture: row.picture,
      first: row.first,
    })),
  };
}
