import { prosesOf } from '../job/actions/walk.ts';
import type { Block } from '../model/block.ts';
import type { LinkFact, PictureFact } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import type { Prose } from '../model/prose.ts';
import type { Span } from '../source/span.ts';

/** What a text links to and shows; others judge whether it is there. */
interface TextFacts {
  readonly links: readonly LinkFact[];
  readonly pictures: readonly PictureFact[];
}

/** Gathers links and pictures in the order of the text, and after them the own pictures of things. */
export function factsOf(
  blocks: readonly Block[],
  prose: readonly Prose[],
  items: Iterable<Item>,
  resolve: (from: string, written: string) => string | null,
): TextFacts {
  const links: LinkFact[] = [];
  const pictures: PictureFact[] = [];

  const visit = (text: Prose): void => {
    for (const node of text) {
      if (node.type === 'where') visit(node.children);
      if (node.type !== 'element') continue;
      const { href, src, alt } = node.properties;
      if (node.tagName === 'a' && typeof href === 'string' && node.at && !node.properties.dataFootnoteRef)
        links.push({ href, at: node.at });
      if (node.tagName === 'img' && typeof src === 'string' && node.at) {
        pictures.push(markdownPicture(src, typeof alt === 'string' ? alt : '', node.at, resolve));
      }
      visit(node.children);
    }
  };

  for (const block of blocks) {
    if (block.type === 'figure' && block.src) {
      pictures.push({ path: block.path, src: block.src, alt: block.alt, figure: block, at: block.at });
    }
    for (const text of prosesOf(block)) visit(text);
  }
  for (const text of prose) visit(text);
  for (const { picture } of items) if (picture) pictures.push(picture);
  return { links, pictures };
}

function markdownPicture(
  src: string,
  alt: string,
  at: Span,
  resolve: (from: string, written: string) => string | null,
): PictureFact {
  // Markdown makes an address of what the author wrote: "front edge.jpg" comes as "front%20edge.jpg".
  const name = decoded(src);
  return {
    path: resolve(at.file, name),
    src: { value: name, at },
    alt: alt.trim() === '' ? null : { value: alt, at },
    figure: null,
    at,
  };
}

function decoded(address: string): string {
  try {
    return decodeURIComponent(address);
  } catch {
    return address;
  }
}
