import { h } from 'hastscript';
import { expect, it } from 'vitest';
import { stringify } from '../../src/html/stringify.ts';
import { withTableHeads } from '../../src/html/table-heads.ts';

const row = (tag: 'td' | 'th', ...cells: string[]) => h('tr', ...cells.map((cell) => h(tag, cell)));

const table = (heads: string[], ...rows: string[][]) =>
  h('table', h('thead', row('th', ...heads)), h('tbody', ...rows.map((cells) => row('td', ...cells))));

const html = (node: ReturnType<typeof h>) => stringify(withTableHeads([h('div', node)])).html;

it('names in each cell of a wide table the column that it stands in', () => {
  expect(html(table(['Code', 'Lamps', ''], ['H', 'halogen', 'plug']))).toBe(
    '<div><table class="as-lines"><thead><tr><th>Code</th><th>Lamps</th><th></th></tr></thead>' +
      '<tbody><tr><td data-head="Code">H</td><td data-head="Lamps">halogen</td><td>plug</td></tr></tbody></table></div>',
  );
});

it('leaves a table of two columns, and one without heads, as it is', () => {
  const narrow = table(['Code', 'Lamps'], ['H', 'halogen']);
  expect(html(narrow)).toBe(stringify([h('div', narrow)]).html);
  const bare = h('table', h('tbody', row('td', 'a', 'b', 'c')));
  expect(html(bare)).toBe(stringify([h('div', bare)]).html);
});
