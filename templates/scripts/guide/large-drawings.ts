import { button, say } from '../bay/elements.ts';

/** Letters lower than this are too small to be read in the bay, and an enlarged drawing has its least ones so large; pixels. */
const LEAST = 9;
const LARGE = 12;

/**
 * Offers each drawing of a template whose letters are too small here at a size at which all of them are read: it is then moved
 * about in its frame, by a finger or by keys. Without scripts it is enlarged with the whole page.
 */
export function offerLargeDrawings(): void {
  for (const frame of document.querySelectorAll<HTMLElement>('.plate.drawing')) {
    const drawing = frame.querySelector('svg');
    const letters = [...frame.querySelectorAll('text')].map((text) => Number(text.getAttribute('font-size')));
    if (drawing && letters.length > 0) offerLarge(frame, drawing, Math.min(...letters));
  }
}

/** @param least height of the smallest letters, in the drawing's own units */
function offerLarge(frame: HTMLElement, drawing: SVGSVGElement, least: number): void {
  const { width, height } = drawing.viewBox.baseVal;
  let isLarge = false;
  const draw = (): void => {
    const { clientWidth, clientHeight } = drawing;
    const isSmall = least * Math.min(clientWidth / width, clientHeight / height) < LEAST;
    turn.hidden = clientWidth === 0 || !(isLarge || isSmall);
    say(turn, isLarge ? 'The whole drawing' : 'Enlarge the drawing');
  };
  const enlarge = (x: number, y: number): void => {
    isLarge = !isLarge;
    frame.classList.toggle('large', isLarge);
    drawing.style.setProperty('--large', `${Math.ceil((LARGE / least) * width)}px`);
    // What can be moved must be reached by keys, and say what it is.
    if (isLarge) frame.tabIndex = 0;
    else frame.removeAttribute('tabindex');
    draw();
    frame.scrollTo(
      drawing.clientWidth * x - frame.clientWidth / 2,
      drawing.clientHeight * y - frame.clientHeight / 2,
    );
  };
  const turn = button('large-turn', '', () => enlarge(0.5, 0.5));
  frame.after(turn);
  // A touch on the drawing enlarges what lies under it.
  drawing.addEventListener('click', ({ clientX, clientY }) => {
    if (turn.hidden) return;
    const box = drawing.getBoundingClientRect();
    enlarge((clientX - box.left) / box.width, (clientY - box.top) / box.height);
  });
  new ResizeObserver(draw).observe(frame);
}
