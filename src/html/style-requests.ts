/** A place in a style sheet that makes a browser ask another host. */
interface StyleRequest {
  /** Counts from 1. */
  readonly line: number;
  readonly text: string;
}

/** What fetches in CSS: an import, and the functions that take an address (CSS Values 4; CSS Images 4). */
const fetches =
  /@import\s*(?:url\(\s*)?["']?(?<imported>[^"')\s;]*)|\b(?:url|src)\(\s*["']?(?<address>[^"')]*)|image-set\(\s*["'](?<first>[^"']*)/gi;

/**
 * Where a style sheet asks for what is not in the site: another host, or a scheme other than `data:`. Escapes count
 * as what they stand for, and comments as blanks (CSS Syntax 3), so that neither hides an address.
 */
export function styleRequests(css: string): readonly StyleRequest[] {
  const plain = css
    .replace(/\/\*[\s\S]*?(?:\*\/|$)/g, (comment) => comment.replace(/[^\n]/g, ' '))
    .replace(
      /\\(?:([0-9a-f]{1,6})\s?|([^\n]))/gi,
      (_, code: string | undefined, other: string | undefined) =>
        code === undefined ? (other ?? '') : characterOf(Number.parseInt(code, 16)),
    );
  return [...plain.matchAll(fetches)].flatMap((match) => {
    const { imported, address, first } = match.groups ?? {};
    if (!isOutside((imported ?? address ?? first ?? '').trim())) return [];
    return [{ line: plain.slice(0, match.index).split('\n').length, text: match[0].trim() }];
  });
}

function characterOf(point: number): string {
  return point <= 0x10ffff ? String.fromCodePoint(point) : '\ufffd';
}

function isOutside(address: string): boolean {
  return /^([a-z][a-z0-9+.-]*:|[\\/]{2})/i.test(address) && !/^data:/i.test(address);
}
