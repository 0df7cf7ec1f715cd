import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Schedule, ScheduledTask } from '../model/schedule.ts';
import type { TradeWords } from '../trade/words.ts';
import { DAY } from '../units/estimate.ts';
import { clockOf, type TimeScale, timeScale } from './time-scale.ts';

/** Sizes in units of the drawing: one is a pixel on a phone and about 0.25 mm in print. */
const WIDTH = 360;
const ROW = 18;
const BAR = 12;
const AXIS = 22;
const LEGEND = 36;
/** The bars stand between the step's number and its minutes. */
const LEFT = 34;
const RIGHT = 282;
/** Where the minutes end: browsers round the widths of letters, and none may stand over the edge. */
const MINUTES = WIDTH - 2;
/** Most rows of one drawing, so that it fits on a sheet. */
const MOST_ROWS = 40;

/**
 * A schedule as drawings, one below the other: a row for each step, or each side of one, with its number on the
 * left, its minutes on the right and its bar between. Where the job takes more than a day, the day and the hour at
 * which the step begins stand on the right. A bar has a lane for each person, the first technician's
 * on top; a lane is filled where that person works, a broken line is a wait. Everything is in the text's colour,
 * so it reads in black and white. A step's number carries the step's id, by which a page's script can renumber it.
 *
 * @param titleOf what a step is called, by its id, for the drawing in words
 */
export function scheduleCharts(
  schedule: Schedule,
  titleOf: (step: string) => string,
  words: TradeWords,
): readonly Element[] {
  const scale = timeScale(
    schedule.tasks.map(({ start, finish }) => ({ from: start, to: finish })),
    schedule.elapsed.mean,
  );
  const overDay = schedule.elapsed.mean > DAY;
  const lanes = Math.max(schedule.crew, ...schedule.tasks.map(({ people }) => people));
  const parts = Array.from({ length: Math.ceil(schedule.tasks.length / MOST_ROWS) }, (_, index) =>
    schedule.tasks.slice(index * MOST_ROWS, (index + 1) * MOST_ROWS),
  );
  return parts.map((tasks) => chart(tasks, { schedule, scale, overDay, lanes, titleOf, words }));
}

interface Sheet {
  readonly schedule: Schedule;
  readonly scale: TimeScale;
  /** Whether the job takes more than a day, so that times are told by day and hour. */
  readonly overDay: boolean;
  readonly lanes: number;
  readonly titleOf: (step: string) => string;
  readonly words: TradeWords;
}

function chart(tasks: readonly ScheduledTask[], sheet: Sheet): Element {
  const bottom = AXIS + tasks.length * ROW;
  const height = bottom + LEGEND;
  return s(
    'svg',
    {
      className: ['schedule-chart'],
      viewBox: `0 0 ${WIDTH} ${height}`,
      width: WIDTH,
      height,
      role: 'img',
      ariaLabel: spoken(tasks, sheet),
      fill: 'currentColor',
      'font-size': 11,
    },
    axis(sheet, bottom),
    ...rowsOf(tasks, sheet),
    legend(sheet, bottom),
  );
}

/** The drawing in words: every row with its minutes, or with when it begins. */
function spoken(
  tasks: readonly ScheduledTask[],
  { schedule: { crew }, overDay, titleOf, words }: Omit<Sheet, 'scale' | 'lanes'>,
): string {
  const rows = tasks.map((task) => {
    const side = task.side === null ? '' : `, ${words[task.side]} side`;
    return `${titleOf(task.step)}${side}, ${timesOf(task, overDay)}`;
  });
  const who = crew === 1 ? 'one technician' : `${crew} technicians`;
  return `Schedule for ${who}, ${overDay ? 'when each step begins' : 'in minutes'}: ${rows.join('; ')}`;
}

/** Where a task stands. */
interface Row {
  readonly task: ScheduledTask;
  readonly middle: number;
  /** Where its bar begins and ends. */
  readonly from: number;
  readonly to: number;
}

/** All bars as one path, all hands as another, and so on: a page may hold many charts. */
function rowsOf(tasks: readonly ScheduledTask[], { scale, overDay, lanes, words }: Sheet): Element[] {
  const rows = tasks.map((task, index) => ({
    task,
    middle: AXIS + index * ROW + ROW / 2,
    from: xOf(scale, task.start),
    to: xOf(scale, task.finish),
  }));
  const waits = rows.filter(({ task }) => task.wait > 0);
  const endOf = ({ task }: Row) => xOf(scale, task.finish + task.wait);
  const filled = rows.flatMap((row) => hands(row, lanes)).join('');
  const outlined = rows.map(bar).join('');
  const stroke = { stroke: 'currentColor', 'stroke-width': 1 };
  return [
    // Where everyone works in every bar, one path is filled and outlined.
    ...(filled === outlined
      ? [s('path', { className: ['chart-hands', 'chart-bars'], d: filled, ...stroke })]
      : [
          s('path', { className: 'chart-hands', d: filled }),
          s('path', { className: 'chart-bars', d: outlined, fill: 'none', ...stroke }),
        ]),
    ...(waits.length > 0
      ? [
          s('path', {
            className: 'chart-waits',
            d: waits.map((row) => `M${row.to} ${row.middle}H${endOf(row)}`).join(''),
            ...line(1.5),
            'stroke-dasharray': '4 3',
          }),
          s('g', { className: 'chart-wait-lengths' }, ...waits.map((row) => waitLength(row, endOf(row)))),
        ]
      : []),
    s('g', { className: 'chart-steps', ...bold }, ...rows.map((row) => named(row, words))),
    s(
      'g',
      { className: 'chart-minutes', ...bold, 'text-anchor': 'end' },
      ...rows.map((row) => lettered(row, { x: MINUTES }, [timesOf(row.task, overDay)])),
    ),
  ];
}

const bold = { 'font-size': 12, 'font-weight': 700 };

const line = (width: number) => ({ fill: 'none', stroke: 'currentColor', 'stroke-width': width });

/** A text of a row; in bold where what runs late ends late. */
function lettered(
  { task, middle }: Row,
  place: { readonly x?: number; readonly dataStep?: string },
  words: readonly (Element | string)[],
): Element {
  const weight = task.critical ? {} : { 'font-weight': 400 };
  return s('text', { ...place, y: middle + 4, ...weight }, ...words);
}

function bar({ middle, from, to }: Row): string {
  return box(from, middle - BAR / 2, widthOf(from, to), BAR);
}

function hands({ task, middle, from, to }: Row, lanes: number): readonly string[] {
  const lane = BAR / lanes;
  return task.hands.map((person) =>
    box(from, round(middle - BAR / 2 + (person - 1) * lane), widthOf(from, to), round(lane)),
  );
}

function widthOf(from: number, to: number): number {
  return round(Math.max(2, to - from));
}

function box(x: number, y: number, width: number, height: number): string {
  return `M${x} ${y}h${width}v${height}h${-width}z`;
}

/** How long a wait is: behind it where there is room, else before the bar. */
function waitLength({ task, middle, from }: Row, end: number): Element {
  const label = lengthOf(task.wait);
  const fitsBehind = end + 4 + label.length * 6 <= RIGHT;
  const place = fitsBehind ? { x: round(end + 4) } : { x: round(from - 4), 'text-anchor': 'end' };
  return s('text', { ...place, y: middle + 4 }, label);
}

function lengthOf(minutes: number): string {
  const [amount, unit] = minutes >= 120 ? [minutes / 60, 'h'] : [minutes, 'min'];
  return `${Number(amount.toFixed(1))}\u00a0${unit}`;
}

function axis({ scale, overDay }: Sheet, bottom: number): Element {
  const at = scale.ticks.map((minute) => ({ minute, x: xOf(scale, minute) }));
  const lettering = at.map(({ minute, x }) => ({ x, text: overDay ? clockOf(minute) : String(minute) }));
  return s(
    'g',
    { className: 'chart-axis', 'text-anchor': 'middle' },
    s('path', { d: at.map(({ x }) => `M${x} ${AXIS - 6}V${bottom}`).join(''), ...line(0.5) }),
    ...apart(lettering).map(({ x, text }) => s('text', { x, y: AXIS - 9 }, text)),
    s('text', { x: MINUTES, y: AXIS - 9, 'text-anchor': 'end' }, overDay ? 'begins' : 'min'),
    ...scale.breaks.map(({ from, to }) => breakMark((xOf(scale, from) + xOf(scale, to)) / 2)),
  );
}

interface Lettered {
  readonly x: number;
  readonly text: string;
}

/** The letterings that do not run into one that stands before them, nor into what stands at the right. */
function apart(all: readonly Lettered[]): readonly Lettered[] {
  const half = ({ text }: Lettered) => text.length * 3.5;
  const kept: Lettered[] = [];
  for (const one of all) {
    const last = kept.at(-1);
    const clear = (!last || one.x - half(one) > last.x + half(last)) && one.x + half(one) < MINUTES - 44;
    if (clear) kept.push(one);
  }
  return kept;
}

/** Two slanted strokes across the axis: what lies between is not to scale. */
function breakMark(x: number): Element {
  const stroke = (offset: number) => `M${round(x + offset - 2)} ${AXIS}L${round(x + offset + 2)} ${AXIS - 8}`;
  return s('path', { className: 'chart-break', d: stroke(-2) + stroke(2), ...line(1.5) });
}

/** What the lanes and the bold numbers mean. */
function legend({ schedule: { crew }, lanes }: Sheet, top: number): Element {
  const people = Array.from({ length: lanes }, (_, person) => {
    if (person >= crew) return 'helper';
    return crew === 1 ? 'technician' : `technician ${person + 1}`;
  });
  const names = [...new Set(people)].join(', ');
  return s(
    'g',
    { className: 'chart-legend' },
    s('text', { y: top + 14, 'font-weight': 700 }, 'bold: what runs late here ends late'),
    ...(lanes > 1 ? [s('text', { y: top + 28 }, `bars, from the top: ${names}`)] : []),
  );
}

/** The step's number, as a page's script finds it, and its side. */
function named(row: Row, words: TradeWords): Element {
  const { step, number, side } = row.task;
  // A proof has no number of its own.
  if (number === null) return lettered(row, {}, ['proof']);
  if (side === null) return lettered(row, { dataStep: step }, [String(number)]);
  const marked = s('tspan', { dataStep: step }, String(number));
  return lettered(row, {}, [marked, `\u00a0${[...words[side]][0]?.toUpperCase()}`]);
}

/** The nearest whole minutes, or the day and the hour at which it begins: the bar tells the rest. */
function timesOf({ start, finish }: ScheduledTask, overDay: boolean): string {
  if (overDay) return clockOf(start);
  return `${Math.round(start)}–${Math.round(finish)}`;
}

function xOf(scale: TimeScale, minute: number): number {
  return round(LEFT + scale.at(minute) * (RIGHT - LEFT));
}

function round(value: number): number {
  return Number(value.toFixed(1));
}
