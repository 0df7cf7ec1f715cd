import type { DayList } from '../../visit/index.ts';
import { daySections, jobLines } from './day-rows.ts';

/** The list for the counter as text for a terminal, where a blank is a blank. */
export function dayInText(title: string, day: DayList): string {
  const parts = daySections(day).map(({ title: heading, note, rows }) => {
    const lines = rows.map(({ amount, name, detail, jobs }) => {
      const said = [amount, name].filter((part) => part !== '').join('  ');
      return `  ${said}${detail === '' ? '' : `, ${detail}`} (${jobs})`;
    });
    return [heading, ...(note === '' ? [] : [`  ${note}`]), ...lines].join('\n');
  });
  return [[title, ...jobLines(day).map((line) => `  ${line}`)].join('\n'), ...parts]
    .join('\n\n')
    .replaceAll('\u00a0', ' ');
}
