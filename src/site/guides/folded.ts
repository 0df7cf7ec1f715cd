import { createHash } from 'node:crypto';
import { isDeepStrictEqual } from 'node:util';
import { strToU8, zlibSync } from 'fflate';

/**
 * Style sheets that serve nothing but what the page's script shows: the bay, its screen, and the job sheet. Without
 * scripts, and on its print, a page is the same without them.
 */
const scriptSheets: ReadonlySet<string> = new Set(['bay.css', 'screen.css', 'paper.css']);

/** Where sheets that are unfolded later have their place; a compact sheet holds no comment of its own. */
const gap = '/**/';

/** The style of a guide in one file, parted by whether it is needed without scripts. */
export interface PartedStyle {
  /** What stands in the file as it is. */
  readonly plain: string;
  /** What goes into each gap of that. */
  readonly later: readonly string[];
  /** The whole, as it is when all is unfolded. */
  readonly whole: string;
}

/** Parts compact style sheets, given by name in their order. */
export function partStyle(sheets: readonly (readonly [string, string])[]): PartedStyle {
  let plain = '';
  const later: string[] = [];
  for (const [name, text] of sheets) {
    if (!scriptSheets.has(name)) plain += text;
    else if (plain.endsWith(gap)) later.push((later.pop() ?? '') + text);
    else {
      plain += gap;
      later.push(text);
    }
  }
  const whole = plain
    .split(gap)
    .map((part, index) => part + (later[index] ?? ''))
    .join('');
  return { plain, later, whole };
}

/** The script of a guide in one file. */
export interface AloneScript {
  /** What it does. */
  readonly text: string;
  /** What stands in the file: the text and the later style sheets folded to a third, and the lines that unfold them. */
  readonly folded: string;
  /** Both, as a policy names them. */
  readonly sources: readonly string[];
}

/**
 * Folds what is the same in every guide in one file, once for all of them; `templates/scripts/unfold.ts` unfolds it.
 * Node's own zlib would do, but for its bytes, which differ between kinds of processors.
 */
export function scriptFolder(text: string, unfold: string): (later: readonly string[]) => AloneScript {
  const made: { readonly later: readonly string[]; readonly script: AloneScript }[] = [];
  return (later) => {
    const known = made.find((one) => isDeepStrictEqual(one.later, later));
    if (known) return known.script;
    const inFile = folded([text, ...later].join('\0'), unfold);
    const script = { text, folded: inFile, sources: [sourceOf(inFile), sourceOf(text)] };
    made.push({ later, script });
    return script;
  };
}

/** An inline style or script as a policy names it (CSP Level 3). */
export function sourceOf(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}

function folded(whole: string, unfold: string): string {
  const bytes = Buffer.from(zlibSync(strToU8(whole), { level: 9 }));
  return `{const folded="${bytes.toString('base64')}";${unfold.trim()}}`;
}
