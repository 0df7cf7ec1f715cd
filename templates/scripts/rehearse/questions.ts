import type { Question, Wait } from '../../../src/pages/rehearsal/rehearsal-data.ts';
import { make } from '../bay/elements.ts';
import type { Course, Reply } from './course.ts';
import { answers, ofStep, type Stage } from './parts.ts';
import type { Task } from './session.ts';

/** What would hurt stops the rehearsal, with the safety message and what it guards. */
export function showStop(course: Course, stage: Stage, task: Task, reply: Reply, then: () => void): void {
  const { say, plan } = course;
  const messages = reply.stops.flatMap((step) => [
    ...ofStep(step, '.message:not(.notice)', plan),
    make('p', 'quiet', `It guards ${say.step(step)}.`),
  ]);
  stage.show(
    'Stop',
    '',
    make('p', 'reh-stopped', `${say.task(task)}: ${reply.words}`),
    ...messages,
    answers([{ words: 'Back to the work', press: then }]),
  );
}

/** What has to wait is held until the time has passed, or something else is done meanwhile. */
export function showWait(
  course: Course,
  stage: Stage,
  task: Task,
  wait: Wait,
  go: { readonly on: () => void; readonly back: () => void },
): void {
  const { say } = course;
  const time = waitWords(wait.minutes);
  const pass = () => {
    course.letPass(wait.minutes);
    go.on();
  };
  stage.show(
    'This has to wait',
    '',
    make('p', 'reh-for', say.task(task)),
    make('p', '', `It comes ${time} from now at the earliest: it waits after ${say.step(wait.step)}.`),
    answers([
      { words: 'Do something else meanwhile', press: go.back },
      { words: `Let ${time} pass`, press: pass },
    ]),
  );
}

/** "45 min", "2.5 h", "3 days". */
export function waitWords(minutes: number): string {
  if (minutes < 120) return `${Math.ceil(minutes)} min`;
  if (minutes < 48 * 60) return `${Math.ceil(minutes / 6) / 10} h`;
  return `${Math.ceil(minutes / 144) / 10} days`;
}

/** Asks one question after another; a wrong answer is noted, told, and asked again. */
export function showQuestions(
  course: Course,
  stage: Stage,
  task: Task,
  questions: readonly Question[],
  said: string,
  then: () => void,
): void {
  const [question, ...rest] = questions;
  if (!question) {
    then();
    return;
  }
  const { say } = course;
  const press = (option: string, place: number) => {
    if (place === question.right) {
      showQuestions(course, stage, task, rest, '', then);
      return;
    }
    course.slip({
      about: question.about,
      key: task.key,
      after: course.done().length,
      step: task.step,
      chosen: `${say.task(task)}: ${option}`,
      answer: `${question.why}.`,
    });
    showQuestions(course, stage, task, questions, `${option}: no. ${question.why}.`, then);
  };
  stage.show(
    question.ask,
    said,
    make('p', 'reh-for', say.task(task)),
    answers(question.options.map((words, place) => ({ words, press: () => press(words, place) }))),
    ...ofStep(task.step, '.figure', course.plan),
  );
}
