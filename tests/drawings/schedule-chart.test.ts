import type { Element } from 'hast';
import { describe, expect, test } from 'vitest';
import { scheduleCharts } from '../../src/drawings/schedule-chart.ts';
import { timeScale } from '../../src/drawings/time-scale.ts';
import type { Schedule, ScheduledTask } from '../../src/model/schedule.ts';
import { usualWords } from '../../src/trade/words.ts';
import { base } from '../../src/units/quantity.ts';
import { rendered } from './draw.ts';

/** "3L 10-14 w20 h12 *": number and side, minutes, wait, hands, critical. */
function task(words: string): ScheduledTask {
  const [name = '', span = '', ...more] = words.split(' ');
  const [start = 0, finish = 0] = span.split('-').map(Number);
  const number = Number.parseInt(name, 10);
  const hands = [...(more.find((word) => word.startsWith('h'))?.slice(1) ?? '1')].map(Number);
  return {
    step: `step-${number}`,
    title: `Step ${number}`,
    number,
    side: name.endsWith('L') ? 'left' : name.endsWith('R') ? 'right' : null,
    start: base(start),
    finish: base(finish),
    wait: base(Number(more.find((word) => word.startsWith('w'))?.slice(1) ?? 0)),
    people: hands.length,
    hands,
    critical: more.includes('*'),
  };
}

function schedule(crew: number, ...words: readonly string[]): Schedule {
  const tasks = words.map(task);
  const end = Math.max(...tasks.map(({ finish, wait }) => finish + wait));
  return {
    crew,
    tasks,
    elapsed: { mean: base(end), spread: base(0) },
    workEnds: base(Math.max(...tasks.map(({ finish }) => finish))),
    handsOn: { mean: base(0), spread: base(0) },
    labour: 0,
    helpers: [],
    proved: true,
  };
}

/** The texts of a group of the drawing, or the boxes of a path of it. */
function named(drawing: Element | undefined, name: string): Element {
  const found = (drawing?.children ?? []).find(
    (child) => child.type === 'element' && [child.properties.className].flat().includes(name),
  );
  return found?.type === 'element' ? found : { type: 'element', tagName: 'g', properties: {}, children: [] };
}

function textsIn(drawing: Element | undefined, name: string): Element[] {
  return named(drawing, name).children.filter((child) => child.type === 'element');
}

interface Box {
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

function boxesIn(drawing: Element | undefined, name: string): Box[] {
  const path = String(named(drawing, name).properties.d);
  return [...path.matchAll(/M[\d.]+ ([\d.]+)h([\d.]+)v([\d.]+)h-\2z/g)].map(([, y, width, height]) => ({
    y: Number(y),
    width: Number(width),
    height: Number(height),
  }));
}

function textOf(element: Element): string {
  return element.children
    .map((child) => (child.type === 'element' ? textOf(child) : child.type === 'text' ? child.value : ''))
    .join('');
}

const words = (elements: readonly Element[]) => elements.map(textOf);

const drawn = (of: Schedule) => scheduleCharts(of, (step) => `Title of ${step}`, usualWords);

const two = schedule(2, '1L 0-10 *', '1R 0-10 h2', '2 10-16 h12 *', '3 16-21 w20 *', '4 41-60 *');

describe('a chart', () => {
  const [chart] = drawn(two);

  test('has a row with its minutes for each step and side', () => {
    expect(words(textsIn(chart, 'chart-steps'))).toEqual(['1\u00a0L', '1\u00a0R', '2', '3', '4']);
    expect(words(textsIn(chart, 'chart-minutes'))).toEqual(['0–10', '0–10', '10–16', '16–21', '41–60']);
    expect(words(textsIn(chart, 'chart-wait-lengths'))).toEqual(['20\u00a0min']);
  });

  test('lets a page renumber its steps', () => {
    const marks = textsIn(chart, 'chart-steps').map(({ properties, children: [number] }) =>
      number?.type === 'element' ? number.properties.dataStep : properties.dataStep,
    );
    expect(marks).toEqual(['step-1', 'step-1', 'step-2', 'step-3', 'step-4']);
  });

  test('says in words what it draws', () => {
    expect(chart?.properties.ariaLabel).toBe(
      'Schedule for 2 technicians, in minutes: Title of step-1, left side, 0–10; Title of step-1, right side, 0–10; ' +
        'Title of step-2, 10–16; Title of step-3, 16–21; Title of step-4, 41–60',
    );
  });

  test('fills the lane of everyone who works', () => {
    const lanes = boxesIn(chart, 'chart-hands').map(({ y, height }) => [y, height]);
    const first = Number(lanes[0]?.[0]);
    expect(lanes).toEqual([
      [first, 6],
      [first + 18 + 6, 6],
      [first + 36, 6],
      [first + 36 + 6, 6],
      [first + 54, 6],
      [first + 72, 6],
    ]);
  });

  test('has bars as long as their work', () => {
    const widths = boxesIn(chart, 'chart-bars').map(({ width }) => width);
    const minute = 248 / 60;
    expect(widths.map((width) => Math.round(width / minute))).toEqual([10, 10, 6, 5, 19]);
  });

  test('names the helper of a technician who works alone', () => {
    const [alone] = drawn(schedule(1, '1 0-10 *', '2 10-16 h12 *'));
    expect(words(textsIn(alone, 'chart-legend'))[1]).toBe('bars, from the top: technician, helper');
  });

  // Half the picture's height in the bar's own columns must be ink where two work, and a quarter where one does.
  test('reads in black and white at the width of a phone', async () => {
    const [only] = drawn(schedule(2, '1 0-30 h1', '2 30-60 h12'));
    const { data, width } = await rendered(only as Element, 320);
    const scale = width / 360;
    const ink = (x: number, top: number, bottom: number) => {
      const column = Math.round(x * scale);
      const rows = Array.from(
        { length: Math.round((bottom - top) * scale) },
        (_, row) => data[(Math.round(top * scale) + row) * width + column] ?? 255,
      );
      return rows.filter((grey) => grey < 100).length / rows.length;
    };
    const [oneWorks, bothWork] = [ink(90, 22, 40), ink(200, 40, 58)];
    expect(bothWork).toBeGreaterThan(0.6);
    expect(oneWorks).toBeLessThan(0.5);
    expect(oneWorks).toBeGreaterThan(0.3);
  });

  test('goes on in a further drawing after forty rows', () => {
    const long = Array.from({ length: 45 }, (_, index) => `${index + 1} ${index}-${index + 1}`);
    const charts = drawn(schedule(1, ...long));
    expect(charts.map((one) => boxesIn(one, 'chart-bars').length)).toEqual([40, 5]);
  });
});

describe('the scale of time', () => {
  test('is even where somebody works', () => {
    const { at, ticks, breaks } = timeScale([{ from: 0, to: 60 }], 60);
    expect([at(0), at(15), at(30), at(60)]).toEqual([0, 0.25, 0.5, 1]);
    expect(ticks).toEqual([0, 10, 20, 30, 40, 50, 60]);
    expect(breaks).toEqual([]);
  });

  test('draws a day of curing short, and marks the break', () => {
    const worked = [
      { from: 0, to: 60 },
      { from: 1500, to: 1560 },
    ];
    const { at, ticks, breaks } = timeScale(worked, 1560);
    expect(breaks).toEqual([{ from: 60, to: 1500 }]);
    expect(at(1500) - at(60)).toBeLessThan(0.1);
    expect(at(60)).toBeGreaterThan(0.4);
    expect(at(1560)).toBe(1);
    expect(ticks).toEqual([0, 30, 60, 1500, 1530, 1560]);
  });
});

describe('a job that takes more than a day', () => {
  const [chart] = drawn(schedule(1, '1 0-180 *', '2 180-185 w1800 *', '3 1985-1990 *'));

  test('tells when each step begins by day and hour, and no row by its minute', () => {
    expect(words(textsIn(chart, 'chart-minutes'))).toEqual(['0:00', '3:00', '1\u00a0d\u00a09:05']);
    expect(words(textsIn(chart, 'chart-wait-lengths'))).toEqual(['30\u00a0h']);
    expect(words(textsIn(chart, 'chart-axis')).filter((text) => text !== '')).toEqual([
      '0:00',
      '1:00',
      '2:00',
      '3:00',
      'begins',
    ]);
    expect(chart?.properties.ariaLabel).toBe(
      'Schedule for one technician, when each step begins: Title of step-1, 0:00; Title of step-2, 3:00; ' +
        'Title of step-3, 1\u00a0d\u00a09:05',
    );
  });
});
