import { h } from 'hastscript';
import { compactStyle } from '../../html/compact-style.ts';
import { stringify } from '../../html/stringify.ts';
import type { DayList } from '../../visit/index.ts';
import { daySections, jobLines } from './day-rows.ts';

/** Black on white, one sheet after another; a line never breaks over two sheets. */
const style = compactStyle(`
@page { size: auto; margin: 15mm; }
body { font: 11pt/1.35 system-ui, sans-serif; color: #000; background: #fff; margin: 1rem auto; max-width: 48rem; padding: 0 1rem; }
h1 { font-size: 16pt; margin: 0 0 0.5rem; }
h2 { font-size: 12pt; margin: 1.2rem 0 0.2rem; break-after: avoid; }
p, ol { margin: 0 0 0.4rem; }
section p { break-after: avoid; }
table { border-collapse: collapse; width: 100%; }
thead { display: table-header-group; }
tr { break-inside: avoid; }
th, td { border-bottom: 0.2mm solid #555; padding: 1mm 2mm 1mm 0; text-align: left; vertical-align: top; }
th { font-weight: 600; font-size: 9pt; }
td.tick { width: 6mm; }
td.tick span { display: block; width: 4mm; height: 4mm; border: 0.3mm solid #000; }
td.amount { width: 22mm; white-space: nowrap; font-weight: 600; }
td.jobs { width: 24mm; }
.detail { display: block; font-size: 9.5pt; }
@media print { body { margin: 0; max-width: none; padding: 0; } }
`);

/** The list for the counter as one page that needs nothing else, to print and tick off. */
export function dayPage(title: string, day: DayList): string {
  const sections = daySections(day).map(({ title: heading, note, rows }) =>
    h('section', [
      h('h2', heading),
      ...(note === '' ? [] : [h('p', note)]),
      h('table', [
        h('thead', [
          h('tr', [
            h('th', { scope: 'col' }, 'Got'),
            h('th', { scope: 'col' }, 'How many'),
            h('th', { scope: 'col' }, 'What'),
            h('th', { scope: 'col' }, 'For'),
          ]),
        ]),
        h(
          'tbody',
          rows.map(({ amount, name, detail, jobs }) =>
            h('tr', [
              h('td', { className: 'tick' }, [h('span')]),
              h('td', { className: 'amount' }, amount),
              h('td', [name, ...(detail === '' ? [] : [h('span', { className: 'detail' }, detail)])]),
              h('td', { className: 'jobs' }, jobs),
            ]),
          ),
        ),
      ]),
    ]),
  );
  const page = h('html', { lang: 'en' }, [
    h('head', [
      h('meta', { charSet: 'utf-8' }),
      h('meta', { name: 'viewport', content: 'width=device-width, initial-scale=1' }),
      h('title', title),
      h('style', style),
    ]),
    h('body', [
      h('h1', title),
      h(
        'ol',
        jobLines(day).map((line) => h('li', line.replace(/^\d+\. /, ''))),
      ),
      ...sections,
    ]),
  ]);
  return `<!doctype html>\n${stringify([page]).html}\n`;
}
