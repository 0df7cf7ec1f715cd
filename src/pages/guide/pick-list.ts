import type { Guide } from '../../model/guide.ts';
import type { Item } from '../../model/item.ts';
import type { GatherSupply, Job, Plan } from '../../model/job.ts';
import { convert, formatQuantity } from '../../units/format.ts';
import type { Quantity } from '../../units/quantity.ts';
import { fixingWords, whereUsed } from '../overview/gather.ts';

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
  const lines = [[...columns], ...rows.map((row) => columns.map((column) => row[column]))];
  return lines.map((cells) => `${cells.map(cell).join(',')}\r\n`).join('');
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
  if (!pack || pack.dimension !== declared.dimension || pack.base <= 0) return own;
  return { ...own, packs: String(packsFor(declared, pack)), pack: formatQuantity(pack) };
}

/** Whole packs; a hair over a whole number, as arithmetic leaves it, asks for no other pack. */
function packsFor(declared: Quantity, pack: Quantity): number {
  return Math.max(1, Math.ceil(declared.base / pack.base - 1e-9));
}

function cell(text: string): string {
  const plain = text.replaceAll('\u00a0', ' ');
  return /[",\r\n]/.test(plain) ? `"${plain.replaceAll('"', '""')}"` : plain;
}
