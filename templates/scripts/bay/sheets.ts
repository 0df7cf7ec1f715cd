import type { Field } from './field.ts';
import type { Keeper } from './kept/keeper.ts';

/** A cell of a sheet that is printed, and the fields whose values it is filled with. */
interface Filled {
  readonly cell: HTMLElement;
  readonly fields: readonly Field[];
}

/** Fills the torque log and the readings of the hand-over sheet with what was typed in at the steps. */
export function fillSheets(fields: readonly Field[], keeper: Keeper): void {
  const filled = [...torqueCells(fields), ...readingCells(fields)];
  keeper.onChange(({ values }) => {
    for (const { cell, fields: from } of filled) {
      // Of a value that is taken twice, the later stands.
      const bySide = new Map(
        from.flatMap(({ key, input }): [string, string][] => {
          const text = values.get(key)?.text;
          return text ? [[input.dataset.side ?? '', text]] : [];
        }),
      );
      cell.textContent = [...bySide]
        .map(([side, text]) => (side === '' ? text : `${side} ${text}`))
        .join(', ');
    }
  });
}

/** The log has a row for each line of a torque, in the same order. */
function torqueCells(fields: readonly Field[]): readonly Filled[] {
  return [...document.querySelectorAll<HTMLElement>('[data-torque-log]')].map((cell, index) => ({
    cell,
    fields: fields.filter(({ input }) => input.dataset.line === String(index)),
  }));
}

function readingCells(fields: readonly Field[]): readonly Filled[] {
  return [...document.querySelectorAll<HTMLElement>('[data-found]')].map((cell) => ({
    cell,
    fields: fields.filter(({ input }) => input.dataset.reading === cell.dataset.found),
  }));
}
