import type { BenchPicture, BenchView } from '../../../src/preview/bench/bench.ts';
import type { PanelOrder, PanelReading } from '../../../src/preview/bench/panel-points.ts';
import { button, make, say } from '../bay/elements.ts';
import { askBench, benchAddress } from './ask.ts';
import type { Point } from './draft.ts';
import { placeChoices, selectOf } from './form.ts';

/** A draft outline as it is sent to the bench. */
interface OutlineOrder {
  readonly src: string;
  readonly pressed: PanelOrder;
  readonly panel: string;
  readonly face: string;
  readonly after: number;
}

/** A press on the photograph of a panel, as fractions of its width and height. */
interface Press extends Point {
  /** How many pixels of the picture one of the screen was. */
  readonly within: number;
}

/** The ends of the two known lengths come before the corners. */
const ENDS = 4;

/**
 * Points of a panel: two known lengths are pressed on a photograph and typed, then the corners of an outline are
 * pressed, and what they are in millimetres, and how far off that can be, is told.
 */
export function panelOf(
  guide: string,
  write: (order: OutlineOrder) => Promise<void>,
): {
  readonly element: HTMLElement;
  readonly draw: (picture: BenchPicture | null, view: BenchView) => void;
} {
  let shown: BenchPicture | null = null;
  let presses: Press[] = [];
  let at = -1;
  let read: PanelReading | null = null;
  let turn = 0;
  const chosen = { panel: '', face: 'outside', after: 0, zero: 0 };

  const image = make('img', '');
  image.alt = 'The photograph of the panel';
  image.draggable = false;
  const stage = make('div', 'bench-points', image);
  const next = make('p', '');
  next.setAttribute('role', 'status');
  const lengths = [
    lengthField('first-length', 'First known length'),
    lengthField('second-length', 'Second known length'),
  ] as const;
  const isSquare = checkbox('square', 'The two lengths are square to each other on the panel');
  const isLarge = checkbox('large', 'Show the picture large, to press on the pixel');
  const facts = make('ul', '');
  const outline = make('output', '');
  const choices = make('div', '');
  const back = button('bench-point-back', 'Take back the last point', () => {
    presses = presses.slice(0, -1);
    at = presses.length - 1;
    changed();
  });
  const send = button('bench-outline', 'Write the draft into the guide', () => {
    const pressed = order();
    if (!shown || !pressed) return;
    const { panel, face, after } = chosen;
    void write({ src: shown.src, pressed, panel, face, after });
  });

  /** What was pressed, in pixels of the picture; `null` until the two lengths are known. */
  const order = (): PanelOrder | null => {
    const pixels = presses.map(({ x, y }) => ({ x: x * (shown?.width ?? 0), y: y * (shown?.height ?? 0) }));
    const [a, b, c, d, ...corners] = pixels;
    const [one, other] = lengths.map(({ input }) => input.value.trim());
    if (!a || !b || !c || !d || !one || !other || !isSquare.input.checked) return null;
    return {
      known: [
        { from: a, to: b, typed: one },
        { from: c, to: d, typed: other },
      ],
      corners,
      zero: chosen.zero,
      within: Math.max(...presses.map(({ within }) => within)),
    };
  };
  const measure = async (): Promise<void> => {
    turn += 1;
    const own = turn;
    const pressed = order();
    const answer = pressed && (await askBench<PanelReading>(benchAddress('measure', guide), pressed));
    // A later press has been measured meanwhile.
    if (own !== turn) return;
    read = answer?.ok ? answer.value : null;
    const told = answer && !answer.ok ? [answer.problem] : (read?.facts ?? []);
    facts.replaceChildren(...told.map((fact) => make('li', '', fact)));
    outline.value = read?.points ? `points="${read.points}" unit=mm` : '';
    send.disabled = !read?.points;
  };
  const changed = (): void => {
    const corners = presses.slice(ENDS);
    chosen.zero = Math.max(0, Math.min(chosen.zero, corners.length - 1));
    say(next, wordsFor(presses.length));
    back.disabled = presses.length === 0;
    stage.replaceChildren(image, linesOf(presses), ...presses.map((press, index) => dotOf(press, index, at)));
    stage.querySelector<HTMLElement>('[aria-current=true]')?.focus({ preventScroll: true });
    zeroField.replaceChildren(
      ...corners.map(
        (_, index) => new Option(`corner ${index + 1}`, String(index), false, index === chosen.zero),
      ),
    );
    void measure();
  };
  const zeroField = selectOf('zero', [], '', (value) => {
    chosen.zero = Number(value);
    void measure();
  });

  /** How many pixels of the picture one of the screen is; what is shown may hold fewer than the picture. */
  const coarseness = (width: number): number =>
    (shown?.width ?? 0) / Math.min(width, image.naturalWidth || width);
  stage.addEventListener('click', ({ clientX, clientY }) => {
    const { left, top, width, height } = image.getBoundingClientRect();
    if (width === 0) return;
    const [x, y] = [(clientX - left) / width, (clientY - top) / height];
    presses = [...presses, { x, y, within: coarseness(width) }];
    at = presses.length - 1;
    changed();
  });
  stage.addEventListener('focusin', ({ target }) => {
    if (target instanceof HTMLElement && target.dataset.index) at = Number(target.dataset.index);
  });
  stage.addEventListener('keydown', (event) => {
    const way = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, -1], ArrowDown: [0, 1] }[event.key];
    const { width, height } = image.getBoundingClientRect();
    if (!way || !presses[at]) return;
    event.preventDefault();
    const [dx = 0, dy = 0] = way;
    presses = presses.map((press, index) =>
      index === at ? { x: press.x + dx / width, y: press.y + dy / height, within: coarseness(width) } : press,
    );
    changed();
  });
  for (const { input } of [...lengths, isSquare]) input.addEventListener('input', () => void measure());
  isLarge.input.addEventListener('change', () => {
    stage.style.width = isLarge.input.checked && shown ? `${shown.width}px` : '';
  });

  const element = make(
    'details',
    'bench-panel',
    make('summary', '', 'Points of a panel'),
    make(
      'p',
      '',
      'A photograph gives a first draft of an outline, never its size: nothing is cut by it before it is measured on the panel.',
    ),
    next,
    isLarge.label,
    make('div', 'bench-pan', stage),
    make('p', '', back),
    ...lengths.map(({ label }) => label),
    isSquare.label,
    make('label', '', 'Measured from ', zeroField),
    facts,
    outline,
    choices,
    make('p', '', send),
  );
  return {
    element,
    draw: (picture, view) => {
      element.hidden = picture === null || picture.problem !== '';
      if (!picture || element.hidden) return;
      choices.replaceChildren(...choicesOf(view, chosen));
      if (picture.src === shown?.src && picture.hash === shown.hash) return;
      shown = picture;
      presses = [];
      at = -1;
      isLarge.input.checked = false;
      stage.style.width = '';
      image.src = `${benchAddress('picture', guide, picture.src)}&hash=${picture.hash.slice(0, 12)}`;
      image.width = picture.width;
      image.height = picture.height;
      image.style.height = 'auto';
      changed();
    },
  };
}

function wordsFor(pressed: number): string {
  const words = [
    'Press one end of a length on the panel that you have measured',
    'Press its other end',
    'Press one end of a second measured length, square to the first',
    'Press its other end',
  ];
  const corners = pressed - ENDS;
  const soFar = corners > 0 ? `; ${corners} so far` : '';
  return (
    words[pressed] ?? `Press the corners of the outline one after the other${soFar}; arrow keys move a point`
  );
}

function nameOf(index: number): string {
  return index < ENDS ? (index < 2 ? 'A' : 'B') : String(index - ENDS + 1);
}

function dotOf({ x, y }: Press, index: number, at: number): HTMLElement {
  const dot = make('button', 'bench-point', nameOf(index));
  dot.type = 'button';
  dot.dataset.index = String(index);
  const what = index < ENDS ? `End of length ${nameOf(index)}` : `Corner ${nameOf(index)}`;
  dot.setAttribute('aria-label', `${what}; arrow keys move it`);
  dot.setAttribute('aria-current', String(index === at));
  dot.style.left = `${x * 100}%`;
  dot.style.top = `${y * 100}%`;
  return dot;
}

/** The two lengths and the outline as thin lines over the picture. */
function linesOf(presses: readonly Press[]): SVGElement {
  const svg = document.createElementNS('http://www.w3.org/2000/svg', 'svg');
  svg.setAttribute('viewBox', '0 0 1000 1000');
  svg.setAttribute('preserveAspectRatio', 'none');
  svg.setAttribute('aria-hidden', 'true');
  const way = document.createElementNS('http://www.w3.org/2000/svg', 'path');
  const to = (list: readonly Press[]) => list.map(({ x, y }) => `${x * 1000} ${y * 1000}`).join('L');
  const parts = [presses.slice(0, 2), presses.slice(2, ENDS), presses.slice(ENDS)].filter(
    (part) => part.length > 1,
  );
  const closed = presses.length > ENDS + 2 ? 'Z' : '';
  way.setAttribute('d', parts.map((part) => `M${to(part)}`).join('') + closed);
  way.setAttribute('vector-effect', 'non-scaling-stroke');
  svg.append(way);
  return svg;
}

function lengthField(name: string, words: string) {
  const input = make('input', '');
  input.name = name;
  input.placeholder = '600 mm';
  return { input, label: make('label', '', `${words}, with its unit `, input) };
}

function checkbox(name: string, words: string) {
  const input = make('input', '');
  input.name = name;
  input.type = 'checkbox';
  return { input, label: make('label', '', input, ` ${words}`) };
}

/** What else the draft says: which part is cut, the face that is seen, and where it stands in the guide. */
function choicesOf(
  { items, places }: BenchView,
  chosen: { panel: string; face: string; after: number },
): readonly HTMLElement[] {
  const parts = items.filter(({ kind }) => kind === 'part');
  if (!parts.some(({ id }) => id === chosen.panel)) chosen.panel = parts[0]?.id ?? '';
  if (!places.some(({ after }) => after === chosen.after)) chosen.after = places.at(-1)?.after ?? 0;
  const panel = selectOf(
    'panel',
    parts.map(({ id, name }) => [id, name] as const),
    chosen.panel,
    (value) => {
      chosen.panel = value;
    },
  );
  const face = selectOf(
    'face',
    [
      ['outside', 'outside'],
      ['inside', 'inside'],
    ],
    chosen.face,
    (value) => {
      chosen.face = value;
    },
  );
  const after = selectOf('outline-after', placeChoices(places), String(chosen.after), (value) => {
    chosen.after = Number(value);
  });
  return [
    make('label', '', 'Part that is cut ', panel),
    make('label', '', 'Face of it in the photograph ', face),
    make('label', '', 'Stands in the guide under ', after),
  ];
}
