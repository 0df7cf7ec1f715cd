/** An element with a class and words or children. */
export function make<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  className: string,
  ...children: readonly (string | Node)[]
): HTMLElementTagNameMap[K] {
  const element = document.createElement(tag);
  if (className !== '') element.className = className;
  element.append(...children);
  return element;
}

/** A button; it never sends a form. */
export function button(className: string, words: string, press: () => void): HTMLButtonElement {
  const element = make('button', className, words);
  element.type = 'button';
  element.addEventListener('click', press);
  return element;
}

/** Whether the build that is shown has an element: one that is only folded until it is looked for is in it. */
export function isOfBuild(element: Element): boolean {
  return element.closest('[hidden=""]') === null;
}

/** Sets words only where they differ: a status that is set again is read out again. */
export function say(element: Element, words: string): void {
  if (element.textContent !== words) element.textContent = words;
}

/** A text in one line, in which numbers stay with their units. */
export function inOneLine(text: string | null): string {
  return (text ?? '').replace(/[^\S\u00a0]+/g, ' ').trim();
}

/** A word as it begins a line. */
export function capitalised(word: string): string {
  return word.charAt(0).toUpperCase() + word.slice(1);
}
