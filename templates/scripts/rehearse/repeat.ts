import { make } from '../bay/elements.ts';
import { choicesOf } from './choices.ts';
import type { Course } from './course.ts';
import { candidates } from './lay-out.ts';
import { answers, ofStep, type Stage } from './parts.ts';
import type { Slip } from './record.ts';
import type { Task } from './session.ts';
import { drawState } from './state.ts';

/** Choices that are shown when one is asked again, at the most. */
const MOST = 7;

/** An answer to what is asked again, and what is said where it is wrong. */
interface Offer {
  readonly words: string;
  /** Empty for the right one. */
  readonly wrong: () => string;
}

/** Asks slip after slip once more. What is right at the first try is off the list. */
export function repeatAll(course: Course, stage: Stage, slips: readonly Slip[], end: () => void): void {
  const [slip, ...rest] = slips;
  if (!slip) {
    end();
    return;
  }
  const next = () => repeatAll(course, stage, rest, end);
  const task = course.session.tasks.find(({ key }) => key === slip.key);
  const ask = (heading: string, offers: readonly Offer[], ...parts: readonly (string | Node)[]) => {
    const press = ({ words, wrong }: Offer) => {
      const said = wrong();
      if (said === '') course.settle(slip);
      if (said === '') next();
      else
        stage.show(
          'It stays on the list',
          `${words}: no. ${said}`,
          answers([{ words: 'Go on', press: next }]),
        );
    };
    const list = answers(offers.map((offer) => ({ words: offer.words, press: () => press(offer) })));
    stage.show(heading, '', ...parts, list);
  };
  if (slip.about === 'next' && task) askNext(course, slip, task, ask);
  else if (slip.about === 'lay-out') askLayOut(course, slip, ask);
  else askQuestion(course, slip, task, ask, next);
}

type Ask = (heading: string, offers: readonly Offer[], ...parts: readonly (string | Node)[]) => void;

/** The work as far as it had come, with the choice that was wrong among the others. */
function askNext(course: Course, slip: Slip, task: Task, ask: Ask): void {
  const { session, say, data } = course;
  const after = course.done().slice(0, slip.after);
  const { offered } = choicesOf(session, after, say);
  const shown = offered.includes(task) ? offered : [...offered, task].slice(-MOST);
  const offers = shown
    .map((one) => ({ words: say.task(one), wrong: () => course.choose(one, after) }))
    .toSorted((a, b) => (a.words < b.words ? -1 : 1))
    .map(({ words, wrong }): Offer => {
      // Here only the order is asked: what lies ready has been asked in its place.
      return { words, wrong: () => (wrong().verdict.kind === 'done' ? '' : wrong().words) };
    });
  ask('What is done next?', offers, drawState(session.standing(after), data, say));
}

function askLayOut(course: Course, slip: Slip, ask: Ask): void {
  const { data, plan, crib, say } = course;
  const list = candidates(data, plan, crib);
  const others = list.filter(({ needed }) => !needed).slice(0, 4);
  const asked = list.filter((one) => one.id === slip.key || others.includes(one));
  const place = slip.step === null ? '' : ` for ${say.step(slip.step)}`;
  ask(
    `What is laid out${place}?`,
    asked.map(({ id, label }) => ({
      words: label,
      wrong: () => (id === slip.key ? '' : `It is: ${slip.chosen}.`),
    })),
  );
}

function askQuestion(course: Course, slip: Slip, task: Task | undefined, ask: Ask, next: () => void): void {
  const { data, say, plan } = course;
  const asks = task?.action == null ? [] : (data.actions[task.action]?.asks ?? []);
  const question = asks.find(({ about }) => about === slip.about);
  if (!task || !question) {
    course.settle(slip);
    next();
    return;
  }
  const wrong = (place: number) => (place === question.right ? '' : `${question.why}.`);
  ask(
    question.ask,
    question.options.map((words, place) => ({ words, wrong: () => wrong(place) })),
    make('p', 'reh-for', say.task(task)),
    ...ofStep(task.step, '.figure', plan),
  );
}
