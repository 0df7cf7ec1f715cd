import { button, make } from '../bay/elements.ts';
import type { Course } from './course.ts';
import { answers, type Stage, stepLink } from './parts.ts';
import type { Slip } from './record.ts';
import { repeatAll } from './repeat.ts';

const titles: { readonly [about in Slip['about']]: string } = {
  next: 'What is done next',
  'lay-out': 'What is laid out',
  tool: 'With what',
  torque: 'How tight',
  order: 'In which order',
  side: 'On which side',
};

/** What went wrong, each with the step that explains it, and a line for the trainer. */
export function showEnd(course: Course, stage: Stage, said: string, beginAgain: () => void): void {
  const { slips } = course.now();
  const once = () => repeatAll(course, stage, slips, () => showEnd(course, stage, '', beginAgain));
  const text = make('textarea', 'field');
  text.id = 'reh_text';
  text.rows = 6;
  text.readOnly = true;
  text.value = endText(course);
  const label = make('label', '', 'The same as text');
  label.htmlFor = text.id;
  const copied = make('p', 'quiet');
  copied.setAttribute('role', 'status');
  stage.show(
    slips.length === 0 ? 'The job is done, and nothing went wrong' : 'The job is done. What went wrong:',
    said,
    ...(slips.length > 0 ? [make('ul', 'reh-slips', ...slips.map((slip) => slipLine(slip, course)))] : []),
    make('p', 'sign reh-sign', toSign('Trainee'), ' ', toSign('Trainer'), ' ', toSign('Date', 'short')),
    answers([
      ...(slips.length > 0 ? [{ words: 'Once more, with these alone', press: once }] : []),
      { words: 'Begin again from the start', press: beginAgain },
      { words: 'Print this list', press: () => window.print() },
    ]),
    make(
      'details',
      'reh-as-text',
      make('summary', '', 'To hand in as text'),
      label,
      text,
      make(
        'p',
        'buttons',
        button('', 'Copy', () => {
          text.select();
          navigator.clipboard.writeText(text.value).then(
            () => copied.replaceChildren('Copied.'),
            () => copied.replaceChildren('Marked above: copy it from there, all of it.'),
          );
        }),
      ),
      copied,
    ),
  );
}

/** A word with its line, which go into the next row together. */
function toSign(word: string, more = ''): HTMLElement {
  return make('span', 'reh-to-sign', `${word}: `, make('span', `blank ${more}`.trim()));
}

function slipLine({ about, chosen, answer, step }: Slip, { say }: Course): HTMLElement {
  return make(
    'li',
    '',
    make('b', '', `${titles[about]}: `),
    `${chosen}. `,
    make('span', 'reh-answered', answer),
    ...(step === null ? [] : [' ', stepLink(step, `See ${say.step(step)}`)]),
  );
}

function endText({ data, plan, now, say }: Course): string {
  const { slips } = now();
  return [
    `Rehearsal of ${data.title}${data.edition === '' ? '' : `, ${data.edition}`}`,
    ...(data.plans.length > 1 ? [data.plans[plan]?.statement ?? ''] : []),
    `Fingerprint ${data.fingerprint.slice(0, 12)}`,
    '',
    ...(slips.length === 0 ? ['Nothing went wrong.'] : ['What went wrong:']),
    ...slips.map(
      ({ about, chosen, answer, step }) =>
        `- ${titles[about]}: ${chosen}. ${answer}${step === null ? '' : ` See ${say.step(step)}.`}`,
    ),
    '',
    'Trainee: ____________________  Trainer: ____________________  Date: ____________',
    '',
  ].join('\n');
}
