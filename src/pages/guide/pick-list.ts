import { whereUsed } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { GatherSupply, Job, Plan } from '../../model/job.ts';
import { packsFor } from '../../trade/packs.ts';
import { convert, formatQuantity } from '../../units/format.ts';
import { commaSeparated } from '../frame/csv.ts';
import { fixingWords } from '../overview/gather.ts';

/** The file beside a guide's page in which its pick list stands. */
export const PICK_LIST = 'pick-list.csv';

/** The columns of a pick list, in their order. */
const columns = [
  'build',
  'list',
  'id',
  'name',
  'detail',
  'count',
  'quantity',
  'unit',
  'packs',
  'pack',
] as const;

type PickRow = { readonly [column in (typeof columns)[number]]: string };

/**
 * What a parts counter and a cart fetch for a guide, a line for each thing and build: comma-separated values after
 * RFC 4180, with a heading. Packs are whole ones; a quantity stands in the unit in which the guide declares it.
 */
export function pickList(guide: Guide, job: Job): string {
  const rows = job.plans.flatMap((plan) => rowsOf(plan, guide, job));
  return commaSeparated([[...columns], ...rows.map((row) => columns.map((column) => row[column]))]);
}

function rowsOf(plan: Plan, guide: Guide, job: Job): readonly PickRow[] {
  const build = [plan.statement, plan.found].filter((part) => part !== '').join('; ') || 'every build';
  const row = (list: string, id: string, own: Partial<PickRow>): readonly PickRow[] => {
    const item = guide.items.get(id);
    if (!item) return [];
    return [{ ...empty, build, list, id, name: item.noun.label, detail: fixingWords(item) ?? '', ...own }];
  };
  const { kit, supplies, tools, wear } = plan.gather;
  return [
    ...kit.flatMap(({ item, count }) => row('kit', item, { count: String(count) })),
    ...whereUsed(supplies, (gather) => gather.supplies, job).flatMap((line) =>
      row('supply', line.item, amounts(line, guide.items.get(line.item))),
    ),
    ...whereUsed(tools, (gather) => gather.tools, job).flatMap(({ item, atOnce }) =>
      row('tool', item, { count: String(Math.max(1, atOnce)) }),
    ),
    ...wear.flatMap(({ item }) => row('wear', item, {})),
  ];
}

const empty: PickRow = {
  build: '',
  list: '',
  id: '',
  name: '',
  detail: '',
  count: '',
  quantity: '',
  unit: '',
  packs: '',
  pack: '',
};

/** How much of a supply, and in how many whole packs it comes. */
function amounts({ declared }: GatherSupply, item: Item | undefined): Partial<PickRow> {
  if (!declared) return {};
  const own = { quantity: String(Number(convert(declared, declared.unit).toFixed(6))), unit: declared.unit };
  const pack = item?.kind === 'supply' ? item.pack?.value : undefined;
  const packs = pack ? packsFor(declared, pack) : null;
  return pack && packs !== null ? { ...own, packs: String(packs), pack: formatQuantity(pack) } : own;
}
