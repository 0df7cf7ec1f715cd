import { button, make } from '../bay/elements.ts';

/** What the parts of the page draw into. */
export interface Stage {
  /** Puts something else on the page, with the focus on its heading, and reads out what was said to it. */
  readonly show: (heading: string, said: string, ...parts: readonly (string | Node)[]) => void;
}

/** The place of the rehearsal on the page. */
export function openStage(root: HTMLElement): Stage {
  const status = make('p', 'reh-said');
  status.setAttribute('role', 'status');
  const body = make('div', 'reh-body');
  root.replaceChildren(status, body);
  root.hidden = false;
  let isFirst = true;
  return {
    show: (heading, said, ...parts) => {
      const title = make('h2', 'reh-ask', heading);
      title.tabIndex = -1;
      body.replaceChildren(title, ...parts);
      if (!isFirst) document.querySelector('.rehearse-what')?.remove();
      status.textContent = said;
      // Whoever has just opened the page begins at its top.
      if (!isFirst) {
        title.focus({ preventScroll: true });
        root.scrollIntoView({ block: 'start' });
      }
      isFirst = false;
    },
  };
}

/** A column of answers, each as large as a gloved finger asks for. */
export function answers(
  list: readonly { readonly words: string; readonly press: () => void }[],
): HTMLElement {
  return make(
    'ul',
    'reh-answers',
    ...list.map(({ words, press }) => make('li', '', button('reh-answer', words, press))),
  );
}

/** What lies ready on the page of a step: its safety messages or its pictures, those of one build. */
export function ofStep(
  step: string | null,
  what: '.message:not(.notice)' | '.figure',
  plan: number,
): readonly Node[] {
  const found = document.querySelector<HTMLTemplateElement>(`template[data-of="${CSS.escape(step ?? '')}"]`);
  if (!found) return [];
  const isFor = ({ dataset }: HTMLElement) =>
    dataset.plans === undefined || dataset.plans.split(' ').includes(String(plan));
  return [...found.content.querySelectorAll<HTMLElement>(what)].flatMap((element) => {
    if (!isFor(element)) return [];
    const copy = document.importNode(element, true);
    for (const other of copy.querySelectorAll<HTMLElement>('[data-plans]')) if (!isFor(other)) other.remove();
    for (const only of copy.querySelectorAll('.only')) only.remove();
    return [copy];
  });
}

/** A link to a step on the page of the guide. */
export function stepLink(step: string, words: string): HTMLElement {
  const link = make('a', '', words);
  link.href = `index.html#${step}`;
  return link;
}
