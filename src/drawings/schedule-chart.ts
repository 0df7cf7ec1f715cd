import type { Element } from 'hast';
import { s } from 'hastscript';
import type { Schedule, ScheduledTask } from '../model/schedule.ts';
import { type TimeScale, timeScale } from './time-scale.ts';

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
 * left, its minutes on the right and its bar between. A bar has a lane for each person, the first technician's
 * on top; a lane is filled where that person works, a broken line is a wait. Everything is in the text's colour,
 * so it reads in black and white. A step's number carries the step's id, by which a page's script can renumber it.
 *
 * @param titleOf what a step is called, by its id, for the drawing in words
 */
export function scheduleCharts(schedule: Schedule, titleOf: (step: string) => string): readonly Element[] {
  const scale = timeScale(
    schedule.tasks.map(({ start, finish }) => ({ from: start, to: finish })),
    schedule.elapsed.mean,
  );
  const lanes = Math.max(schedule.crew, ...schedule.tasks.map(({ people }) => people));
  const parts = Array.from({ length: Math.ceil(schedule.tasks.length / MOST_ROWS) }, (_, index) =>
    schedule.tasks.slice(index * MOST_ROWS, (index + 1) * MOST_ROWS),
  );
  return parts.map((tasks) => chart(tasks, { schedule, scale, lanes, titleOf }));
}

interface Sheet {
  readonly schedule: Schedule;
  readonly scale: TimeScale;
  readonly lanes: number;
  readonly titleOf: (step: string) => string;
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
    },
    ...axis(sheet.scale, bottom),
    ...tasks.flatMap((task, row) => rowOf(task, AXIS + row * ROW, sheet)),
    ...legend(sheet, bottom),
  );
}

/** The drawing in words: every row with its minutes. */
function spoken(
  tasks: readonly ScheduledTask[],
  { schedule: { crew }, titleOf }: Pick<Sheet, 'schedule' | 'titleOf'>,
): string {
  const rows = tasks.map((task) => {
    const side = task.side === null ? '' : `, ${task.side} side`;
    return `${titleOf(task.step)}${side}, ${minutesOf(task)}`;
  });
  const who = crew === 1 ? 'one technician' : `${crew} technicians`;
  return `Schedule for ${who}, in minutes: ${rows.join('; ')}`;
}

function rowOf(task: ScheduledTask, top: number, { scale, lanes }: Sheet): Element[] {
  const middle = top + ROW / 2;
  const [from, to] = [xOf(scale, task.start), xOf(scale, task.finish)];
  const weight = task.critical ? 700 : 400;
  const lettering = { y: middle + 4, 'font-size': 12, 'font-weight': weight, fill: 'currentColor' };
  return [
    s('text', { className: 'chart-step', x: 0, ...lettering }, nameOf(task)),
    ...bar(task, { x: from, y: middle - BAR / 2, width: Math.max(2, to - from) }, lanes),
    ...(task.wait > 0
      ? wait(task.wait, { from, to, end: xOf(scale, task.finish + task.wait), y: middle })
      : []),
    s(
      'text',
      { className: 'chart-minutes', x: MINUTES, 'text-anchor': 'end', ...lettering },
      minutesOf(task),
    ),
  ];
}

interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
}

function bar(task: ScheduledTask, { x, y, width }: Box, lanes: number): Element[] {
  const lane = BAR / lanes;
  const filled = task.hands.map((person) =>
    s('rect', {
      className: 'chart-hand',
      x,
      y: round(y + (person - 1) * lane),
      width: round(width),
      height: round(lane),
      fill: 'currentColor',
    }),
  );
  const rim = { fill: 'none', stroke: 'currentColor', 'stroke-width': 1 };
  return [...filled, s('rect', { className: 'chart-bar', x, y, width: round(width), height: BAR, ...rim })];
}

interface WaitPlace {
  /** Where the bar begins and ends, and where the wait does. */
  readonly from: number;
  readonly to: number;
  readonly end: number;
  readonly y: number;
}

/** A broken line with its length: behind it where there is room, else before the bar. */
function wait(minutes: number, { from, to, end, y }: WaitPlace): Element[] {
  const look = { stroke: 'currentColor', 'stroke-width': 1.5, 'stroke-dasharray': '4 3' };
  const label = lengthOf(minutes);
  const fitsBehind = end + 4 + label.length * 6 <= RIGHT;
  const place = fitsBehind ? { x: round(end + 4) } : { x: round(from - 4), 'text-anchor': 'end' };
  return [
    s('line', { className: 'chart-wait', x1: to, x2: end, y1: y, y2: y, ...look }),
    s(
      'text',
      { className: 'chart-wait-length', ...place, y: y + 4, 'font-size': 11, fill: 'currentColor' },
      label,
    ),
  ];
}

function lengthOf(minutes: number): string {
  const [amount, unit] = minutes >= 120 ? [minutes / 60, 'h'] : [minutes, 'min'];
  return `${Number(amount.toFixed(1))}\u00a0${unit}`;
}

function axis(scale: TimeScale, bottom: number): Element[] {
  const narrow = { stroke: 'currentColor', 'stroke-width': 0.5 };
  const ticks = scale.ticks.flatMap((minute) => {
    const x = xOf(scale, minute);
    const lettering = { 'font-size': 11, 'text-anchor': 'middle', fill: 'currentColor' };
    return [
      s('line', { className: 'chart-tick', x1: x, x2: x, y1: AXIS - 6, y2: bottom, ...narrow }),
      s('text', { className: 'chart-minute', x, y: AXIS - 9, ...lettering }, String(minute)),
    ];
  });
  return [
    s(
      'text',
      { x: MINUTES, y: AXIS - 9, 'font-size': 11, 'text-anchor': 'end', fill: 'currentColor' },
      'min',
    ),
    ...ticks,
    ...scale.breaks.map(({ from, to }) => breakMark((xOf(scale, from) + xOf(scale, to)) / 2)),
  ];
}

/** Two slanted strokes across the axis: what lies between is not to scale. */
function breakMark(x: number): Element {
  const stroke = (offset: number) => `M${round(x + offset - 2)} ${AXIS}L${round(x + offset + 2)} ${AXIS - 8}`;
  return s('path', {
    className: 'chart-break',
    d: stroke(-2) + stroke(2),
    fill: 'none',
    stroke: 'currentColor',
    'stroke-width': 1.5,
  });
}

/** What the lanes and the bold numbers mean. */
function legend({ schedule: { crew }, lanes }: Sheet, top: number): Element[] {
  const people = Array.from({ length: lanes }, (_, person) => {
    if (person >= crew) return 'helper';
    return crew === 1 ? 'technician' : `technician ${person + 1}`;
  });
  const lettering = { className: 'chart-legend', x: 0, 'font-size': 11, fill: 'currentColor' };
  const names = [...new Set(people)].join(', ');
  return [
    s('text', { y: top + 14, 'font-weight': 700, ...lettering }, 'bold: what runs late here ends late'),
    ...(lanes > 1 ? [s('text', { y: top + 28, ...lettering }, `bars, from the top: ${names}`)] : []),
  ];
}

/** The step's number, as a page's script finds it, and its side. */
function nameOf({ step, number, side }: ScheduledTask): (Element | string)[] {
  const marked = s('tspan', { dataStep: step }, String(number));
  return side === null ? [marked] : [marked, `\u00a0${side === 'left' ? 'L' : 'R'}`];
}

/** The nearest whole minutes: the bar tells the rest. */
function minutesOf({ start, finish }: ScheduledTask): string {
  return `${Math.round(start)}–${Math.round(finish)}`;
}

function xOf(scale: TimeScale, minute: number): number {
  return round(LEFT + scale.at(minute) * (RIGHT - LEFT));
}

function round(value: number): number {
  return Number(value.toFixed(1));
}
