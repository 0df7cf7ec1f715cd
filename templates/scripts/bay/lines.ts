import { make } from './elements.ts';

/** Short forms whose point ends no sentence. */
const SHORT = /(?:^|[\s(])(?:e\.g|i\.e|approx|etc|fig|no|max|min|incl|vs)\.$/i;

/**
 * Puts each sentence of a step into a line of its own, so that the bay screen can show one below the other. On the
 * page they run on as before.
 */
export function splitSentences(main: HTMLElement): void {
  for (const paragraph of main.querySelectorAll<HTMLElement>('.step-body > p:not([class])')) split(paragraph);
}

function split(paragraph: HTMLElement): void {
  const lines: Node[][] = [[]];
  let before = '';
  for (const node of [...paragraph.childNodes]) {
    if (!(node instanceof Text)) {
      if (endsSentence(before)) lines.push([]);
      lines.at(-1)?.push(node);
      before += node.textContent ?? '';
      continue;
    }
    for (const piece of node.data.split(/(?<=[.!?:]["”’)]?)(?=\s)/u)) {
      if (endsSentence(before) && piece.trim() !== '') lines.push([]);
      lines.at(-1)?.push(document.createTextNode(piece));
      before += piece;
    }
  }
  if (lines.length < 2 && paragraph.children.length === 0) return;
  paragraph.replaceChildren(...lines.map((nodes) => make('span', 'sentence', ...nodes)));
}

function endsSentence(text: string): boolean {
  return /[.!?]["”’)]?\s*$/u.test(text) && !SHORT.test(text.trimEnd());
}
