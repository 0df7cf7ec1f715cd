import { fillIn } from '../../shop/marked-places.ts';
import type { OldPlace } from './old-guide.ts';

/** Old words as Markdown that prints them as they are: nothing in them is a mark, a tag or a directive. */
export function escaped(text: string): string {
  return text
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_[\]{}<>|~#^$&]/g, (mark) =>
      mark === '&' || mark === '^' || mark === '$' ? mark : `\\${mark}`,
    )
    .replace(/&(?=#?\w+;)/g, '\\&')
    .replace(/:(?=:|[a-z][\w-]*\\[[{])/g, '\\:');
}

/** The same at the beginning of a line, where a few more marks mean something. */
export function escapedLine(text: string): string {
  return escaped(text)
    .replace(/^([-+=>])/, '\\$1')
    .replace(/^(\d{1,9})([.)])(?=\s|$)/, '$1\\$2')
    .replace(/^:/, '\\:');
}

/** Old words as they can stand in a marked place, which ends at a bracket, a brace, a bar or a straight quotation mark. */
export function inMarkedPlace(text: string): string {
  const plain = text
    .replace(/\s+/g, ' ')
    .replace(/[[{]/g, '(')
    .replace(/[\]}]/g, ')')
    .replaceAll('|', '/')
    .replaceAll('"', '”')
    .replaceAll('`', '’')
    .replaceAll('<', '‹')
    .replaceAll('>', '›')
    .replaceAll('\\', '/');
  return plain
    .replace(/[*_~]/g, (mark) => `\\${mark}`)
    .replace(/&(?=#?\w+;)/g, 'and ')
    .trim();
}

/** A marked place: what its author has to decide, with the old words beside it. */
export function toDecide(what: string, old: string, place: OldPlace): string {
  const where = place === '' ? '' : ` (${place})`;
  return `${fillIn} ${inMarkedPlace(what)}${where}${old.trim() === '' ? '' : `: “${inMarkedPlace(old)}”`}`;
}

/** Old words that stand in the draft in other words, kept beside them; the guide prints none of it. */
export function keptWords(old: string): string {
  return `<!-- Old: ${old.replace(/\s+/g, ' ').replaceAll('--', '– –').replaceAll('>', '›')} -->`;
}

/** A value of an attribute, in quotes where it needs them. */
export function attribute(name: string, value: string): string {
  return /^[a-z0-9.-]+$/i.test(value)
    ? `${name}=${value}`
    : `${name}="${value.replaceAll('"', '″').replace(/\s+/g, ' ')}"`;
}
