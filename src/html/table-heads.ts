import type { Element, ElementContent } from 'hast';

/** Columns from which a table is too wide for a phone. */
const MANY = 3;

/**
 * Says in each cell of a wide table what stands at the head of its column, so that a narrow screen can set the row as
 * lines: class `as-lines` on the table, `data-head` on the cell. A narrow table, and one without heads, stays as it is.
 */
export function withTableHeads(nodes: readonly ElementContent[]): ElementContent[] {
  return nodes.map((node) => {
    if (node.type !== 'element') return node;
    if (node.tagName !== 'table') return { ...node, children: withTableHeads(node.children) };
    const heads = within(node, 'thead').flatMap((row) => cellsOf(row).map(textOf));
    if (heads.length < MANY) return node;
    for (const row of within(node, 'tbody')) {
      for (const [column, cell] of cellsOf(row).entries()) {
        const head = heads[column] ?? '';
        if (head !== '') cell.properties.dataHead = head;
      }
    }
    return { ...node, properties: { ...node.properties, className: ['as-lines'] } };
  });
}

function within(table: Element, part: 'thead' | 'tbody'): readonly Element[] {
  return elements(table).flatMap((one) => (one.tagName === part ? elements(one) : []));
}

const cellsOf = (row: Element) => elements(row).filter(({ tagName }) => tagName === 'td' || tagName === 'th');

const elements = ({ children }: Element) =>
  children.filter((child): child is Element => child.type === 'element');

function textOf({ children }: Element): string {
  return children
    .map((child) => (child.type === 'element' ? textOf(child) : child.type === 'text' ? child.value : ''))
    .join('')
    .trim();
}
