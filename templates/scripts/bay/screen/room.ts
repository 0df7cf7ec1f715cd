/** The least height of a step's picture, in pixels: below that, marks cannot be told apart. */
const LEAST = 168;

/**
 * Gives the first picture of a step what room its words leave on the first screen, so that as much as can be is
 * seen without scrolling, its caption and key too where the picture stays large. A picture is never wider than the screen
 * or lower than it can be read.
 */
export function fitPicture(step: HTMLElement, bar: HTMLElement): void {
  const figure = [...step.querySelectorAll<HTMLElement>('.step-body > .figure')].find(
    ({ hidden }) => !hidden,
  );
  const plate = figure?.querySelector<HTMLElement>('.plate');
  if (!figure || !plate) return;
  const { top, width, height } = plate.getBoundingClientRect();
  if (height === 0) return;
  // On a phone that lies the buttons stand at the side.
  const foot = bar.offsetWidth < innerWidth / 2 ? 0 : bar.offsetHeight;
  const room = innerHeight - foot - (top + scrollY) - 8;
  const withWords = room - (figure.querySelector('figcaption')?.offsetHeight ?? 0);
  const own = withWords >= 2 * LEAST ? withWords : Math.max(room, LEAST);
  // Picture and margins of letters grow and shrink together.
  plate.style.maxWidth = `${Math.round((width / height) * own)}px`;
}
