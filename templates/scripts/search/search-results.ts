import type { Hit } from './search-engine.ts';

/** A page that was found, as a line of the list: its name, what it is, and the places that the words stand in. */
export function resultItem({ page, facts }: Hit): HTMLLIElement {
  const about = [page.label, page.note].filter((words) => words !== '').join(': ');
  const item = document.createElement('li');
  item.append(link(page.title, page.href, 'entry'), line(about, 'quiet'));
  for (const { text, at } of facts) {
    item.append(at === null ? line(text, 'fact-line') : link(text, `${page.href}#${at}`, 'fact-line'));
  }
  return item;
}

function link(text: string, href: string, className: string): HTMLAnchorElement {
  const anchor = document.createElement('a');
  return Object.assign(anchor, { href, className, textContent: text });
}

function line(text: string, className: string): HTMLParagraphElement {
  return Object.assign(document.createElement('p'), { className, textContent: text });
}
