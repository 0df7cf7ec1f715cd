import { listed } from '../../job/index.ts';
import { formatQuantity } from '../../units/format.ts';
import type { DayLine, DayList, DaySupply, DayTool } from '../../visit/index.ts';

/** A part of the list for the counter, in words: every way to print it reads these. */
interface DaySection {
  readonly title: string;
  /** What is said of the whole part; empty where the title does. */
  readonly note: string;
  readonly rows: readonly DayRow[];
}

/** A line of the list. */
interface DayRow {
  /** "2 packs", "3": what is counted; empty where one is meant. */
  readonly amount: string;
  readonly name: string;
  readonly detail: string;
  /** "jobs 1 and 3". */
  readonly jobs: string;
}

/** The list for the counter, part by part; parts without a line are left out. */
export function daySections({ boxes, supplies, tools, wear, atOnce }: DayList): readonly DaySection[] {
  const short = tools.filter((tool) => tool.short > 0);
  const sections: readonly DaySection[] = [
    {
      title: 'Boxes',
      note: '',
      rows: boxes.map((box) => ({
        amount: String(box.jobs.length),
        name: box.name,
        detail: [box.partNumber && `part ${box.partNumber}`, box.revision && `guide revision ${box.revision}`]
          .filter((part) => part)
          .join(', '),
        jobs: jobWords(box),
      })),
    },
    {
      title: 'Supplies',
      note: 'In whole packs for the whole day; what is open already is not counted.',
      rows: supplies.map((supply) => ({
        amount: supplyAmount(supply),
        name: supply.name,
        detail: supplySum(supply),
        jobs: jobWords(supply),
      })),
    },
    {
      title: 'Tools that are short',
      note: `With ${numberWords[atOnce] ?? atOnce} vehicles under way at once more of these are wanted than there are: let one job wait for the other, or fetch more.`,
      rows: short.map((tool) => ({
        amount: `${tool.short} more`,
        name: tool.name,
        detail: `${tool.wanted} wanted, ${tool.atHand} at hand`,
        jobs: jobWords(tool),
      })),
    },
    {
      title: 'Other tools',
      note: '',
      rows: tools
        .filter((tool) => tool.short === 0)
        .map((tool) => ({ amount: toolAmount(tool), name: tool.name, detail: '', jobs: jobWords(tool) })),
    },
    {
      title: 'To wear',
      note: '',
      rows: wear.map((line) => ({ amount: '', name: line.name, detail: '', jobs: jobWords(line) })),
    },
  ];
  return sections.filter(({ rows }) => rows.length > 0);
}

const numberWords: readonly string[] = ['none', 'one', 'two', 'three', 'four'];

/** The jobs of a day: "1. Roof vent and side awning (led, lining)", and what is not known of it. */
export function jobLines({ jobs }: DayList): readonly string[] {
  return jobs.map(({ title, build, isOpen }, place) => {
    const open = isOpen ? '; its build is not all said: the most that any build takes is listed' : '';
    return `${place + 1}. ${title}${build === '' ? '' : ` (${build})`}${open}`;
  });
}

function toolAmount({ wanted }: DayTool): string {
  return wanted > 1 ? String(wanted) : '';
}

function supplyAmount({ packs, sum }: DaySupply): string {
  if (packs !== null) return `${packs} ${packs === 1 ? 'pack' : 'packs'}`;
  return sum ? formatQuantity(sum) : 'as needed';
}

/** "310 ml a pack; 260 ml + 40 ml = 300 ml". */
function supplySum({ parts, sum, pack, packs }: DaySupply): string {
  const words = parts.map((part) => (part ? formatQuantity(part) : 'not stated'));
  const alone = packs === null ? '' : words[0];
  const total = parts.length > 1 ? `${words.join(' + ')}${sum ? ` = ${formatQuantity(sum)}` : ''}` : alone;
  return [pack && `${formatQuantity(pack)} a pack`, total].filter((part) => part).join('; ');
}

function jobWords({ jobs }: DayLine): string {
  const numbers = [...new Set(jobs)].map((job) => String(job + 1));
  return `${numbers.length === 1 ? 'job' : 'jobs'} ${listed(numbers)}`;
}
