import type { ProseElement } from '../../model/prose.ts';
import { type GuideContext, type PageContext, stepRef } from './context.ts';
import { element, type PlainNode, type PlainProse, text } from './elements.ts';
import type { StepRef } from './shared-views.ts';

/** What a link's or a picture's address is written on, for one that the page adds itself. */
type Written = ProseElement<unknown>;

/** A link as the page has it; one that leads nowhere is left as its words, since a check has reported it. */
export function linkElement(context: GuideContext, node: Written, children: PlainProse): PlainNode {
  const href = String(node.properties.href ?? '');
  if (href.startsWith('#')) {
    const own = { ...node.properties, href: context.places + href };
    return element('a', own, [...children, ...printedNumber(href.slice(1), context)]);
  }
  const target = context.shelf.link(href, node.at?.file ?? '');
  if (target === null) return element('span', {}, children);
  const outside = /^[a-z][a-z0-9+.-]*:/i.test(target) ? { rel: 'noreferrer' } : {};
  // A print puts the address behind the words of a link; here they are the same.
  const bare = plainWords(children) === target ? { className: ['bare'] } : {};
  return element('a', { ...node.properties, href: target, ...outside, ...bare }, children);
}

/** What a print says behind a link to a step, of which it shows the words alone; nothing for any other place. */
export function printedNumber(id: string, context: GuideContext): PlainProse {
  const ref = stepRef(context, id);
  if (!ref) return [];
  return [element('span', { className: ['printed'] }, [text(' (step '), stepNumber(ref), text(')')])];
}

/** The number of a step, which the page's script sets to that of the build. */
export function stepNumber({ id, number }: Pick<StepRef, 'id' | 'number'>): PlainNode {
  return element('span', { dataStep: id }, [text(String(number))]);
}

function plainWords(nodes: PlainProse): string {
  return nodes
    .map((node) =>
      node.type === 'text' ? node.value : node.type === 'element' ? plainWords(node.children) : '',
    )
    .join('');
}

/** A picture within text, with its sizes and its file for paper; one that cannot be shown is told by its alternative text. */
export function pictureElements({ shelf }: PageContext, node: Written): PlainProse {
  const alt = String(node.properties.alt ?? '');
  const path = pathFrom(node.at?.file ?? '', String(node.properties.src ?? ''));
  const picture = path === null ? null : shelf.picture(path, null);
  if (!picture) return [text(alt)];
  const { src, width, height, sources } = picture;
  const plain = { src, alt, width, height, decoding: 'async' };
  const screen = [...sources.map((source) => element('source', source, [])), element('img', plain, [])];
  const paper = sources.length > 0 ? [element('img', { className: ['paper'], ...plain }, [])] : [];
  return [element('picture', {}, screen), ...paper];
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
  return parts.join('/').normalize('NFC');
}

function decoded(address: string): string {
  try {
    return decodeURIComponent(address);
  } catch {
    return address;
  }
}
