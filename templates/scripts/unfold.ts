/**
 * The start of a guide in one file: unfolds the page's script, and the style sheets that only serve what that script
 * shows. Where a browser cannot, the page stays what it is without scripts, whole and plain.
 *
 * `folded` stands before this script, which is put into the page beside it: see `src/site/guides/folded.ts`. The
 * policy lets in by hash what is unfolded here, and nothing else.
 */
declare const folded: string;

async function unfold(): Promise<void> {
  const bytes = Uint8Array.from(atob(folded), (character) => character.charCodeAt(0));
  const plain = new Blob([bytes]).stream().pipeThrough(new DecompressionStream('deflate'));
  const [text = '', ...later] = (await new Response(plain).text()).split('\0');
  const style = document.querySelector('style');
  // Each later sheet goes to its own place among the others: the order of rules decides which of two holds.
  const whole = style?.textContent
    .split('/**/')
    .map((part, index) => part + (later[index] ?? ''))
    .join('');
  style?.replaceWith(filled('style', whole ?? ''));
  document.body.append(filled('script', text));
}

/** An element as the policy sees it only once: with all its text. */
function filled(name: 'style' | 'script', text: string): HTMLElement {
  const element = document.createElement(name);
  element.textContent = text;
  return element;
}

void unfold();
