import type { Activity } from '../../../src/job/schedule/activity.ts';

/** Activities that each need one person, from "A4", "B5 A", "C7 A,B": name and duration, then what comes first. */
export function net(...lines: readonly string[]): readonly Activity[] {
  const names: string[] = [];
  return lines.map((line) => {
    const [head = '', before = ''] = line.split(' ');
    const [, name = '', duration = ''] = /^(\D+\d*:|\D)([\d.]+)$/.exec(head) ?? [];
    names.push(name.replace(':', ''));
    return {
      duration: Number(duration),
      people: 1,
      tools: [],
      wait: 0,
      after: before.split(',').flatMap((id) => (id === '' ? [] : [{ index: names.indexOf(id), lag: 0 }])),
    };
  });
}

/** Activities between numbered events, as "1-3:10": each follows all that end where it begins. */
export function eventNet(...arrows: readonly string[]): readonly Activity[] {
  const read = arrows.map((arrow) => arrow.split(/[-:]/).map(Number));
  return read.map(([from, , duration = 0]) => ({
    duration,
    people: 1,
    tools: [],
    wait: 0,
    after: read.flatMap(([, to], index) => (to === from ? [{ index, lag: 0 }] : [])),
  }));
}
