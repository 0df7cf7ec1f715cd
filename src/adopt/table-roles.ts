import { isInstruction, numberWritten } from './words.ts';

/** What the columns of a table hold, each by its index; -1 where there is none. */
export interface TableRoles {
  /** Whether the first row names the columns. */
  readonly headed: boolean;
  readonly number: number;
  readonly work: number;
  readonly title: number;
  readonly torque: number;
  readonly tool: number;
  readonly time: number;
  readonly count: number;
  readonly name: number;
}

const heads: { readonly [role in Exclude<keyof TableRoles, 'headed'>]: RegExp } = {
  number: /^(?:step|no\.?|nr\.?|#|item|pos\.?|ref\.?|step no\.?)$/i,
  work: /^(?:what to do|work|action|instructions?|task|operation|procedure|how|description of work|to do)$/i,
  title: /^(?:title|heading|stage)$/i,
  torque: /\btorque\b|^tighten(?:ing)?$/i,
  tool: /^tools?$/i,
  time: /^(?:time|minutes|duration)$/i,
  count: /^(?:qty\.?|quantity|count|number|pcs\.?|amount|how many)$/i,
  name: /^(?:part|parts|description|component|name|item|article)$/i,
};

/** Tells the columns of a table by the names in its first row, or else by what stands in them. */
export function tableRoles(rows: readonly (readonly string[])[]): TableRoles {
  const [first = [], ...others] = rows;
  const named = (role: keyof typeof heads) => first.findIndex((cell) => heads[role].test(cell.trim()));
  const headed =
    rows.length > 1 && first.every((cell) => cell.length < 30) && (named('work') >= 0 || named('count') >= 0);
  const width = Math.max(0, ...rows.map((cells) => cells.length));
  const columns = Array.from({ length: width }, (_, index) => index);
  const mostly = (fits: (cell: string) => boolean) =>
    columns.find((index) => {
      const cells = rows.map((row) => row[index] ?? '').filter((cell) => cell !== '');
      return cells.length > 0 && cells.filter(fits).length * 2 > cells.length;
    }) ?? -1;
  if (headed) {
    const number = named('number');
    const name = first.findIndex((cell, index) => index !== number && heads.name.test(cell.trim()));
    const described = named('work') < 0 && name < 0 ? number : name;
    return {
      headed,
      number,
      work: named('work') >= 0 || named('count') >= 0 ? named('work') : described,
      title: named('title'),
      torque: named('torque'),
      tool: named('tool'),
      time: named('time'),
      count: named('count'),
      name: described,
    };
  }
  const work = mostly(isInstruction);
  const isCount = (cell: string) => numberWritten(cell.replace(/^x\s*|\s*x$/i, '')) !== null;
  const count = work < 0 ? mostly(isCount) : -1;
  const none = { title: -1, torque: -1, tool: -1, time: -1 };
  const name =
    work < 0
      ? columns.find(
          (index) => index !== count && others.concat([first]).some((row) => /\p{L}/u.test(row[index] ?? '')),
        )
      : -1;
  return {
    headed,
    number: work < 0 ? -1 : mostly((cell) => /^\W*\d{1,2}\W*$/.test(cell)),
    work,
    count,
    name: name ?? -1,
    ...none,
  };
}
