import type { BenchPicture } from '../../../src/preview/bench/bench.ts';
import { make } from '../bay/elements.ts';
import { askBench, benchAddress } from './ask.ts';
import { type Draft, fractions } from './draft.ts';

/** The figure as it will print: what is kept of the picture, with its letters and leader lines. */
export function printView(): {
  readonly element: HTMLElement;
  readonly draw: (draft: Draft | null, picture: BenchPicture | null, guide: string) => Promise<void>;
} {
  const element = make('figure', 'bench-print');
  element.setAttribute('aria-label', 'As it will print');
  let turn = 0;
  return {
    element,
    draw: async (draft, picture, guide) => {
      turn += 1;
      const own = turn;
      element.hidden = !draft || !picture || picture.problem !== '';
      if (!draft || !picture || element.hidden) return;
      const { marks, crop } = draft;
      const order = {
        marks: marks.map(({ letter, at }) => ({ letter, at })),
        width: picture.width,
        height: picture.height,
        crop,
      };
      const answer = await askBench<string>(benchAddress('overlay', guide), order);
      // A later change has been drawn meanwhile.
      if (own !== turn || !answer.ok) return;
      const parsed = new DOMParser().parseFromString(answer.value, 'text/html').querySelector('svg');
      if (!parsed) return;
      const [left = 0, top = 0, width = 1, height = 1] = (parsed.getAttribute('viewBox') ?? '')
        .split(' ')
        .map(Number);
      const shown = make('div', 'shown');
      shown.style.left = `${(-left / width) * 100}%`;
      shown.style.top = `${(-top / height) * 100}%`;
      shown.style.width = `${(1000 / width) * 100}%`;
      const [from = 0, above = 0, to = 1, below = 1] = fractions(crop);
      const tall = (1000 * (below - above) * picture.height) / ((to - from) * picture.width);
      shown.style.height = `${(tall / height) * 100}%`;
      const image = make('img', '');
      image.src = `${benchAddress('picture', guide, draft.src)}&hash=${picture.hash.slice(0, 12)}`;
      image.alt = '';
      image.style.width = `${100 / (to - from)}%`;
      image.style.left = `${(-from / (to - from)) * 100}%`;
      image.style.top = `${(-above / (below - above)) * 100}%`;
      shown.append(image);
      element.replaceChildren(
        make('figcaption', '', 'As it will print'),
        make('div', 'bench-plate', shown, parsed),
      );
    },
  };
}
