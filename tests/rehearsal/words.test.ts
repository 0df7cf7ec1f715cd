import { describe, expect, it } from 'vitest';
import { inspect } from '../../src/shop/index.ts';
import type { Task } from '../../templates/scripts/rehearse/session.ts';
import { bundled, published } from './bundle.ts';
import { files } from './workspace.ts';

const { openSession, speaker } = await bundled();
const { guides, findings } = await inspect(files);
const [read] = guides;
if (!read) throw new Error('the guide cannot be read');
const data = published(read.guide, read.job);
const session = openSession(data, 0);
const say = speaker(data, 0, session);

/** Words with ordinary spaces, as a test can be read. */
const plain = (words: string) => words.replaceAll('\u00a0', ' ');

const named = (text: string): Task => {
  const task = session.tasks.find((one) => plain(say.task(one)) === text);
  if (!task) throw new Error(`no task reads ${text}: ${session.tasks.map(say.task).join(' | ')}`);
  return task;
};

/** What a choice is told when all that stands before another in the guide is done. */
function answerTo(text: string, before: string, without: readonly string[] = []): string {
  const left = new Set(without.map((one) => named(one).index));
  const done = session.tasks
    .map(({ index }) => index)
    .filter((index) => index < named(before).index && !left.has(index));
  return say.verdict(session.judge(done, named(text).index));
}

describe('what is answered to a wrong choice', () => {
  it('stands on a guide with no error', () => {
    expect(findings.filter(({ severity }) => severity === 'error').map(({ message }) => message)).toEqual([]);
  });

  const free = 'Remove the 6 side screws (3 each side)';
  const unplug = 'Disconnect both lamp plugs';
  const start = 'Start the 4 bar bolts';
  const lock = 'Apply 1 ml (0.0338 US fl oz) of thread-lock';

  it.each([
    [
      'a part that is held',
      'Remove the cover',
      unplug,
      [free],
      'The cover is still held by the 6 side screws. Both lamp plugs are still plugged in, on the cover.',
    ],
    [
      'a plug that is in',
      'Remove the cover',
      unplug,
      [],
      'Both lamp plugs are still plugged in, on the cover.',
    ],
    [
      'what lies under something',
      'Clean the beam',
      'Remove the cover',
      [],
      'The beam cannot be reached: the cover lies over it.',
    ],
    [
      'what needs a state of the vehicle',
      unplug,
      free,
      ['Set “battery isolated”'],
      'This needs “battery isolated”, which does not hold yet.',
    ],
    [
      'what cannot be undone, before its trial fit',
      'Cut the notch',
      'Try the bar',
      [],
      'What is cut stays cut, so the trial fit comes first: step 4, Try the bar.',
    ],
    ['what is so already', 'Connect both lamp plugs', free, [], 'Both lamp plugs are plugged in already.'],
    [
      'what is not yet there to be worked on',
      'Tighten the 4 bar bolts',
      start,
      [],
      'The 4 bar bolts are still in the box, so they cannot be tightened.',
    ],
    [
      'a fastener with nothing to hold',
      'Fit the new clip',
      'Refit the cover',
      [],
      'There is nothing for the new clip to hold: the cover is off.',
    ],
    [
      'a plug with nothing to go on',
      'Connect both lamp plugs',
      'Refit the cover',
      [],
      'There is nothing for the lamp plug on the left to go on: the cover is off.',
    ],
    [
      'a place that is taken',
      'Fit the new clip',
      'Remove the old clip',
      [],
      'The place is taken: the old clip still is in it.',
    ],
    [
      'a thread without what goes on it',
      start,
      'Tighten the 4 bar bolts',
      [lock, start],
      'The 4 bar bolts would go in dry: thread-lock goes on the thread first.',
    ],
    [
      'what comes after another step, for a reason that the ledger cannot know',
      'Fit the light bar',
      'Cut the notch',
      [],
      'The guide has this after step 5, Cut the notch.',
    ],
    [
      'a fastener that goes back in before its part has come off',
      'Refit the 6 side screws (3 each side)',
      'Remove the cover',
      [],
      'Nothing holds the cover any more, and it has not come off: that is done first.',
    ],
    [
      'what bars work that is still to do',
      'Refit the cover',
      'Clean the beam',
      [],
      'Not yet. If this is done now, “Clean the beam” can no longer be done (step 3, Wipe the beam). The beam cannot be reached: the cover lies over it.',
    ],
  ] as const)('%s', (_, text, before, without, words) => {
    expect(answerTo(text, before, without)).toBe(words);
  });

  it('says of what the guide does later that it does so, and lets it be done', () => {
    expect(session.judge([], named(free).index)).toEqual({ kind: 'done', later: true });
    expect(session.judge([], 0)).toEqual({ kind: 'done', later: false });
  });
});

describe('what is asked about an action', () => {
  const asked = data.actions.flatMap(({ text, asks }) =>
    asks.map(({ ask, options, right }) => plain(`${text}: ${ask} ${options[right]}, of ${options.length}`)),
  );

  it('has one right answer, and others that nobody could defend', () => {
    expect(asked).toEqual([
      'Remove the 6 side screws (3 each side): With what? T25 bit, of 2',
      'Tighten the 4 bar bolts: With what? Torque wrench and 10 mm socket, of 2',
      'Tighten the 4 bar bolts: How tight? 20 N·m (14.8 lbf·ft), of 2',
      'Tighten the 4 bar bolts: In which order? Crosswise, of 3',
      'Refit the 6 side screws (3 each side): With what? T25 bit, of 2',
    ]);
  });

  it('tells nothing of the answer in what is chosen', () => {
    for (const { text } of data.actions) expect(text).not.toMatch(/N·m/);
  });
});
