import type { BenchPicture } from '../../../src/preview/bench/bench.ts';
import { button, make } from '../bay/elements.ts';
import { benchAddress } from './ask.ts';
import {
  type BoxName,
  boxText,
  type Draft,
  fractions,
  nextLetter,
  type Point,
  pointText,
  turned,
} from './draft.ts';

const tools = [
  ['mark', 'Place marks'],
  ['crop', 'Keep a part'],
  ['blur', 'Make unreadable'],
  ['zoom', 'Show a part large'],
] as const;

/** How far an arrow key moves a mark, as a fraction of the picture. */
const NUDGE = 0.002;

/** The picture on the bench: a press places a mark, a mark is drawn where it should be, a part is drawn as a box. */
export function stageOf(
  at: () => Draft | null,
  changed: () => void,
  turn: () => Promise<boolean>,
): {
  readonly element: HTMLElement;
  readonly draw: (draft: Draft | null, picture: BenchPicture | null, guide: string) => void;
} {
  const stage = make('div', 'bench-stage');
  const image = make('img', '');
  image.draggable = false;
  let tool: (typeof tools)[number][0] = 'mark';
  const choice = make('fieldset', 'bench-tools');
  choice.setAttribute('aria-label', 'What a press on the picture does');
  for (const [name, words] of tools) {
    const radio = make('input', '');
    radio.type = 'radio';
    radio.name = 'tool';
    radio.value = name;
    radio.checked = name === tool;
    radio.addEventListener('change', () => {
      tool = name;
    });
    choice.append(make('label', '', radio, ` ${words}`));
  }
  choice.append(
    button('bench-turn', 'Turn right', () => {
      void turn().then((done) => {
        const draft = at();
        if (!done || !draft) return;
        draft.marks = draft.marks.map((mark) => ({ ...mark, at: turned(mark.at) }));
        for (const name of ['crop', 'blur', 'zoom'] as const) draft[name] = turned(draft[name]);
        changed();
      });
    }),
  );

  const placeOf = ({ clientX, clientY }: PointerEvent): Point => {
    const { left, top, width, height } = image.getBoundingClientRect();
    return { x: (clientX - left) / width, y: (clientY - top) / height };
  };
  let from: Point | null = null;
  let moved: number | null = null;
  stage.addEventListener('pointerdown', (event) => {
    const draft = at();
    if (!draft || event.button !== 0) return;
    event.preventDefault();
    stage.setPointerCapture(event.pointerId);
    const point = placeOf(event);
    const dot = event.target instanceof HTMLElement ? event.target.closest<HTMLElement>('.bench-dot') : null;
    if (dot) moved = Number(dot.dataset.index);
    else if (tool === 'mark') {
      draft.marks = [
        ...draft.marks,
        { letter: nextLetter(draft.marks), at: pointText(point.x, point.y), text: '' },
      ];
      moved = draft.marks.length - 1;
    } else from = point;
    if (moved !== null) draft.at = moved;
    changed();
    stage.querySelector<HTMLElement>('.bench-dot[aria-current=true]')?.focus();
  });
  stage.addEventListener('pointermove', (event) => {
    const draft = at();
    if (!draft) return;
    const point = placeOf(event);
    if (moved !== null) put(draft, moved, point);
    else if (from && tool !== 'mark') draft[tool as BoxName] = boxText(from, point);
    else return;
    changed();
  });
  stage.addEventListener('pointerup', () => {
    const draft = at();
    // A press without a way is no part: it takes the part away.
    const [left, top, right, bottom] = draft && from && tool !== 'mark' ? fractions(draft[tool]) : [];
    const isPart = Number(right) - Number(left) > 0.01 && Number(bottom) - Number(top) > 0.01;
    if (draft && from && tool !== 'mark' && !isPart) draft[tool] = '';
    from = null;
    moved = null;
    changed();
  });
  stage.addEventListener('keydown', (event) => {
    const draft = at();
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    const mark = draft?.at == null ? undefined : draft.marks[draft.at];
    if (!draft || draft.at === null || !mark || !way) return;
    event.preventDefault();
    const [x = 0, y = 0] = fractions(mark.at);
    put(draft, draft.at, { x: x + (way[0] ?? 0) * NUDGE, y: y + (way[1] ?? 0) * NUDGE });
    changed();
    stage.querySelector<HTMLElement>('.bench-dot[aria-current=true]')?.focus();
  });

  const element = make('div', '', choice, stage);
  return {
    element,
    draw: (draft, picture, guide) => {
      element.hidden = draft === null || picture === null || picture.problem !== '';
      if (!draft || !picture || element.hidden) return;
      const address = `${benchAddress('picture', guide, draft.src)}&hash=${picture.hash.slice(0, 12)}`;
      if (image.getAttribute('src') !== address) image.src = address;
      image.alt = draft.alt;
      image.width = picture.width;
      image.height = picture.height;
      image.style.height = 'auto';
      stage.replaceChildren(image, ...boxesOf(draft), ...draft.marks.map((_, index) => dotOf(draft, index)));
    },
  };
}

function put(draft: Draft, index: number, { x, y }: Point): void {
  draft.marks = draft.marks.map((mark, place) => (place === index ? { ...mark, at: pointText(x, y) } : mark));
}

function dotOf(draft: Draft, index: number): HTMLElement {
  const mark = draft.marks[index];
  const dot = make('button', 'bench-dot', mark?.letter ?? '');
  dot.type = 'button';
  dot.dataset.index = String(index);
  dot.setAttribute('aria-label', `Mark ${mark?.letter}; arrow keys move it`);
  dot.setAttribute('aria-current', String(draft.at === index));
  dot.addEventListener('focus', () => {
    draft.at = index;
  });
  const [x = 0, y = 0] = fractions(mark?.at ?? '');
  dot.style.left = `${x * 100}%`;
  dot.style.top = `${y * 100}%`;
  return dot;
}

function boxesOf(draft: Draft): readonly HTMLElement[] {
  const names = { crop: 'kept', blur: 'unreadable', zoom: 'large' } as const;
  return (['crop', 'blur', 'zoom'] as const).flatMap((name) => {
    const [left, top, right, bottom] = fractions(draft[name]);
    if (left === undefined || top === undefined || right === undefined || bottom === undefined) return [];
    const box = make('div', 'bench-box', names[name]);
    box.style.left = `${left * 100}%`;
    box.style.top = `${top * 100}%`;
    box.style.width = `${(right - left) * 100}%`;
    box.style.height = `${(bottom - top) * 100}%`;
    return [box];
  });
}
