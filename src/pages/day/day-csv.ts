import { convert, formatQuantity } from '../../units/format.ts';
import type { DayLine, DayList } from '../../visit/index.ts';
import { commaSeparated } from '../frame/csv.ts';

/** The columns of the list, in their order. */
const columns = [
  'list',
  'id',
  'name',
  'part number',
  'count',
  'quantity',
  'unit',
  'packs',
  'pack',
  'at hand',
  'short',
  'jobs',
] as const;

type DayCells = { readonly [column in (typeof columns)[number]]?: string };

/**
 * What a parts counter and a cart fetch for a day, a line for each thing over all jobs: comma-separated values after
 * RFC 4180, with a heading. Packs are whole ones; jobs are numbered in the order of the day.
 */
export function dayInCsv({ boxes, supplies, tools, wear }: DayList): string {
  const line = (list: string, { id, name, jobs }: DayLine, own: DayCells): DayCells => ({
    list,
    id,
    name,
    jobs: jobs.map((job) => job + 1).join(' '),
    ...own,
  });
  const rows: readonly DayCells[] = [
    ...boxes.map((box) =>
      line('box', box, { count: String(box.jobs.length), 'part number': box.partNumber ?? '' }),
    ),
    ...supplies.map((supply) => {
      const { sum, pack, packs } = supply;
      return line('supply', supply, {
        ...(sum && { quantity: String(Number(convert(sum, sum.unit).toFixed(6))), unit: sum.unit }),
        ...(pack && { pack: formatQuantity(pack) }),
        ...(packs !== null && { packs: String(packs) }),
      });
    }),
    ...tools.map((tool) =>
      line('tool', tool, {
        count: String(tool.wanted),
        'at hand': String(tool.atHand),
        short: String(tool.short),
      }),
    ),
    ...wear.map((one) => line('wear', one, {})),
  ];
  return commaSeparated([[...columns], ...rows.map((row) => columns.map((column) => row[column] ?? ''))]);
}
