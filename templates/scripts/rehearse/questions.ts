import type { Question } from '../../../src/pages/rehearsal/rehearsal-data.ts';
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
