import type { ProseElement } from '../model/prose.ts';
import type { PageContext } from './context.ts';
import { element, type PlainNode, type PlainProse, text } from './elements.ts';

/** What a link's or a picture's address is written on, for one that the page adds itself. */
type Written = ProseElement<unknown>;

/** A link as the page has it; one that leads nowhere is left as its words, since a check has reported it. */
export function linkElement({ shelf }: PageContext, node: Written, children: PlainProse): PlainNode {
  const href = String(node.properties.href ?? '');
  if (href.startsWith('#')) return element('a', node.properties, children);
  const target = shelf.link(href, node.at?.file ?? '');
  if (target === null) return element('span', {}, children);
  const outside = /^[a-z][a-z0-9+.-]*:/i.test(target) ? { rel: 'noreferrer' } : {};
  return element('a', { ...node.properties, href: target, ...outside }, children);
}

/** A picture within text, with its sizes; one that cannot be shown is told by its alternative text. */
export function pictureElement({ shelf }: PageContext, node: Written): PlainNode {
  const alt = String(node.properties.alt ?? '');
  const path = pathFrom(node.at?.file ?? '', String(node.properties.src ?? ''));
  const picture = path === null ? null : shelf.picture(path, null);
  if (!picture) return text(alt);
  const { src, width, height, sources } = picture;
  const image = element('img', { src, alt, width, height, decoding: 'async' }, []);
  return element('picture', {}, [...sources.map((source) => element('source', source, [])), image]);
}

/**
 * The path, from the workspace's root, of an address as written in a file of the workspace; `null` where it
 * leaves the workspace or names another host.
 */
export function pathFrom(file: string, address: string): string | null {
  if (/^[a-z][a-z0-9+.-]*:|^\/\/|^\//i.test(address)) return null;
  const parts = file.split('/').slice(0, -1);
  for (const part of decoded(address.replace(/[?#].*$/s, '')).split('/')) {
    if (part === '..' && parts.pop() === undefined) return null;
    if (part !== '..' && part !== '.' && part !== '') parts.push(part);
  }
  return parts.join('/');
}

function decoded(address: string): string {
  try {
    return decodeURIComponent(address);
  } catch {
    return address;
  }
}
