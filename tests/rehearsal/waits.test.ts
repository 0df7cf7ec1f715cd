import { describe, expect, it } from 'vitest';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import { openCourse } from '../../templates/scripts/rehearse/course.ts';
import { published } from './bundle.ts';
import { files } from './workspace.ts';

/** The same guide with a thread-lock that dries for half an hour before anything goes over it. */
const text = new TextDecoder()
  .decode(files.read('light-bar/guide.md') ?? new Uint8Array())
  .replace('#lock quantity="5 ml"', '#lock quantity="5 ml" cures="30 min"')
  .replace('{#on time="5 min"}', '{#on time="5 min" needs=lock}')
  .replace(
    '## Refit {#refit}\n',
    '## Refit {#refit}\n\n::step[Sweep up]{#sweep time="12 min"}\n\nSweep the bay.\n',
  );

const others = ['shop.yaml', 'tools.yaml', 'fasteners.yaml', 'platforms/test-van.md'];
const { guides } = await inspect(
  memoryFiles(
    Object.fromEntries([
      ...others.map((path) => [path, new TextDecoder().decode(files.read(path) ?? new Uint8Array())]),
      ['light-bar/guide.md', text],
    ]),
  ),
);
const [read] = guides;
if (!read) throw new Error('the guide cannot be read');
const data = published(read.guide, read.job);

/** A rehearsal as far as all that stands before a step in the guide is done, with or without some other step. */
function standsBefore(step: string, without: string | null = null) {
  const course = openCourse(data, 0, []);
  const { tasks } = course.session;
  const first = tasks.findIndex((task) => task.step === step);
  for (const task of tasks.slice(0, first)) if (task.step !== without) course.finish(task);
  const task = tasks[first];
  if (!task) throw new Error(`no task of ${step}`);
  return { course, task };
}

describe('what has to wait', () => {
  it('waits for the time of what was put on', () => {
    expect(data.plans[0]?.waits).toEqual({ on: [{ step: 'bar', minutes: 30 }] });
    const { course, task } = standsBefore('on', 'sweep');
    expect(course.choose(task)).toMatchObject({
      verdict: { kind: 'done' },
      wait: { step: 'bar', minutes: 30 },
    });
  });

  it('waits the less, the longer something else was done meanwhile', () => {
    const { course, task } = standsBefore('on');
    expect(course.choose(task).wait).toEqual({ step: 'bar', minutes: 18 });
  });

  it('goes once the time has been let pass, and waits again in another rehearsal', () => {
    const { course, task } = standsBefore('on', 'sweep');
    course.letPass(20);
    expect(course.choose(task).wait).toEqual({ step: 'bar', minutes: 10 });
    course.letPass(10);
    expect(course.choose(task).wait).toBeNull();
    course.restart();
    for (const one of course.session.tasks.slice(0, task.index)) if (one.step !== 'sweep') course.finish(one);
    expect(course.choose(task).wait).toEqual({ step: 'bar', minutes: 30 });
  });
});
