import type { CribEntry } from '../../../src/pages/rehearsal/crib-data.ts';
import type { RehearsalData } from '../../../src/pages/rehearsal/rehearsal-data.ts';
import { button, capitalised, make } from '../bay/elements.ts';
import { choicesOf } from './choices.ts';
import { type Course, openCourse, type Reply } from './course.ts';
import { showEnd } from './ending.ts';
import { candidates } from './lay-out.ts';
import { answers, ofStep, openStage, type Stage } from './parts.ts';
import { showQuestions, showStop, showWait, waitWords } from './questions.ts';
import type { Task } from './session.ts';
import { drawState } from './state.ts';

/** Puts the rehearsal on its page, where the device has left it. */
export function startRehearsal(root: HTMLElement, data: RehearsalData, crib: readonly CribEntry[]): void {
  const stage = openStage(root);
  const open = (plan: number) => showBegin(openCourse(data, plan, crib), stage);
  if (data.plans.length < 2) {
    open(0);
    return;
  }
  stage.show(
    `Which ${data.words.vehicle}?`,
    '',
    answers(
      data.plans.map(({ statement }, plan) => ({ words: capitalised(statement), press: () => open(plan) })),
    ),
  );
}

/** What an older edition has left is told before anything else. */
function showBegin(course: Course, stage: Stage): void {
  const { dropped, from } = course;
  if (from === null) {
    goOn(course, stage, '');
    return;
  }
  const kept = course.now().done.length;
  stage.show(
    'The guide has changed',
    '',
    make(
      'p',
      '',
      `This rehearsal was begun with another edition${from === '' ? '' : ` (${from})`}. ` +
        `What still reads the same is kept: ${kept} of ${kept + dropped.length}.`,
    ),
    ...(dropped.length > 0
      ? [
          make('p', '', 'What reads otherwise now, or can no longer be done in that order, is asked again:'),
          make('ul', '', ...dropped.map((text) => make('li', '', text))),
        ]
      : []),
    answers([
      { words: 'Go on', press: () => goOn(course, stage, '') },
      { words: 'Begin again', press: () => beginAgain(course, stage) },
    ]),
  );
}

function beginAgain(course: Course, stage: Stage): void {
  course.restart();
  goOn(course, stage, '');
}

/** Whatever comes next: laying out, the next choice, or the end. */
function goOn(course: Course, stage: Stage, said: string): void {
  const kept = course.isKept()
    ? said
    : `${said} This device keeps nothing for this page: the rehearsal lasts until it is closed.`.trim();
  if (course.now().laid === null) showLayOut(course, stage);
  else if (course.done().length < course.session.tasks.length) showChoice(course, stage, kept);
  else showEnd(course, stage, kept, () => beginAgain(course, stage));
}

function showLayOut(course: Course, stage: Stage): void {
  const { data, plan, crib } = course;
  const list = candidates(data, plan, crib);
  const boxes = list.map(({ id, label }) => {
    const box = make('input', '');
    box.type = 'checkbox';
    box.value = id;
    return { box, row: make('li', '', make('label', 'reh-pick', box, make('span', '', label))) };
  });
  stage.show(
    'What do you lay out?',
    '',
    make(
      'p',
      '',
      'Tools, supplies and what is worn. Not all of it is for this job. What is forgotten shows when it is needed.',
    ),
    make('ul', 'reh-picks', ...boxes.map(({ row }) => row)),
    answers([
      {
        words: 'All is laid out',
        press: () => {
          const ids = boxes.flatMap(({ box }) => (box.checked ? [box.value] : []));
          course.layOut(ids);
          const spare = list.filter(({ id, needed }) => !needed && ids.includes(id));
          const words = spare.map(({ label }) => label).join('; ');
          goOn(course, stage, spare.length > 0 ? `This job does not use: ${words}.` : '');
        },
      },
    ]),
  );
}

/** How much is done, and where the vehicle and the bench stand. */
function standingOf(course: Course): HTMLElement {
  const { session, data, say } = course;
  return drawState(session.standing(course.done()), data, say);
}

function showChoice(course: Course, stage: Stage, said: string): void {
  const { session, say } = course;
  const done = course.done();
  const { offered, others } = choicesOf(session, done, say);
  const toAnswer = (task: Task) => ({
    words: say.task(task),
    press: () => answer(course, stage, task),
  });
  const all = make(
    'details',
    'reh-others',
    make('summary', '', 'Something else'),
    answers(others.map(toAnswer)),
  );
  const last = session.tasks[done.at(-1) ?? -1];
  stage.show(
    'What is done next?',
    said,
    answers(offered.map(toAnswer)),
    ...(others.length > 0 ? [all] : []),
    standingOf(course),
    ...(last ? ofStep(last.step, '.figure', course.plan) : []),
    foot(course, stage),
  );
}

function foot(course: Course, stage: Stage): HTMLElement {
  const done = course.now().done.length;
  const line = make('p', 'quiet', `Done: ${done} of ${course.session.tasks.length}. `);
  const sure = make('p', 'buttons');
  const ask = button('', 'Begin again', () => {
    sure.replaceChildren(
      button('', 'Yes, drop what is done', () => beginAgain(course, stage)),
      button('', 'No, go on', () => sure.replaceChildren(ask)),
    );
    sure.querySelector('button')?.focus();
  });
  sure.append(ask);
  return make('footer', 'reh-foot', line, sure);
}

/** A choice has been made: it is refused, it stops the rehearsal, it waits, or it is done once its questions are answered. */
function answer(course: Course, stage: Stage, task: Task): void {
  const { say } = course;
  const reply = course.choose(task);
  if (reply.wait) {
    const back = () => goOn(course, stage, '');
    showWait(course, stage, task, reply.wait, { on: () => answer(course, stage, task), back });
    return;
  }
  const after = course.done().length;
  const { verdict } = reply;
  const stopped = reply.stops.length > 0;
  if (verdict.kind !== 'done') {
    if (verdict.kind !== 'done-before') {
      const chosen = say.task(task);
      course.slip({ about: 'next', key: task.key, after, step: task.step, chosen, answer: reply.words });
    }
    const back = () => goOn(course, stage, `${say.task(task)}: no. ${reply.words}`);
    if (stopped) showStop(course, stage, task, reply, back);
    else back();
    return;
  }
  for (const { id, label } of reply.missing) {
    course.slip({
      about: 'lay-out',
      key: id,
      after,
      step: task.step,
      chosen: label,
      answer: `Not laid out, and needed for ${say.place(task)}.`,
    });
  }
  const ask = () =>
    showQuestions(course, stage, task, reply.questions, reply.words, () =>
      finish(course, stage, task, reply),
    );
  if (stopped) showStop(course, stage, task, reply, ask);
  else ask();
}

function finish(course: Course, stage: Stage, task: Task, { verdict, words, questions }: Reply): void {
  const { session, say, data } = course;
  const before = new Set(course.done());
  const next = session.tasks.find(({ index }) => !before.has(index));
  const own = task.step === null ? undefined : data.steps[task.step];
  course.finish(task);
  const isEnd = session.tasks.every(
    ({ index, scene }) => scene !== task.scene || before.has(index) || index === task.index,
  );
  const lines = [
    `${say.task(task)}: done.`,
    // Before a question it has been said already.
    questions.length === 0 ? words : '',
    verdict.kind === 'done' && verdict.later && next
      ? next.scene === task.scene
        ? 'The guide does this later in the same step.'
        : `The guide does this later: ${say.place(task)}.`
      : '',
    own && own.people > 1 ? `${own.people} people do this together.` : '',
    own && own.wait > 0 && isEnd ? `Then ${waitWords(own.wait)} of waiting.` : '',
  ];
  goOn(course, stage, lines.filter((line) => line !== '').join(' '));
}
