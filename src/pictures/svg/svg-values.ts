/** What is wrong with a value, if anything. */
type ValueFault = 'outside' | 'unsafe' | null;

const ownPaint = /url\(\s*(["']?)#([^"'()\s\\]+)\1\s*\)/g;

const functions: ReadonlySet<string> = new Set([
  'rgb',
  'rgba',
  'hsl',
  'hsla',
  'matrix',
  'translate',
  'scale',
  'rotate',
  'skewX',
  'skewY',
]);

/**
 * Judges the value of an attribute. Browsers read such values as CSS, where a backslash can spell `url` in
 * disguise, so backslashes are refused (as are brackets, which no look needs) and every function must be a known one.
 */
export function valueFault(value: string): ValueFault {
  if (/[\\<>`]/.test(value)) return 'unsafe';
  const rest = value.replace(ownPaint, '');
  if (/javascript:|vbscript:/i.test(rest.replace(/[\s\p{Cc}]/gu, ''))) return 'unsafe';
  if (/url\s*\(|@import|data:|:\/\/|src\s*\(|image(-set)?\s*\(/i.test(rest)) return 'outside';
  for (const [, name] of rest.matchAll(/([\w-]+)\s*\(/g)) if (!functions.has(name ?? '')) return 'unsafe';
  return null;
}

/** Ids that a value points at with `url(#…)`. */
export function paintReferences(value: string): string[] {
  return [...value.matchAll(ownPaint)].map((match) => match[2] ?? '');
}

/** Puts a prefix before every id that a value points at with `url(#…)`. */
export function prefixPaint(value: string, prefix: string): string {
  return value.replace(ownPaint, (_, _quote, id: string) => `url(#${prefix}${id})`);
}

/** The declarations of a `style` attribute, as pairs; later ones win, as in CSS. */
export function styleDeclarations(style: string): [name: string, value: string][] {
  return style
    .replace(/\/\*.*?\*\//gs, '')
    .split(';')
    .map((declaration): [string, string] => {
      const colon = declaration.indexOf(':');
      return [
        declaration.slice(0, Math.max(0, colon)).trim().toLowerCase(),
        declaration.slice(colon + 1).trim(),
      ];
    })
    .filter(([name, value]) => name !== '' && value !== '')
    .map(([name, value]) => [name, value.replace(/\s*!important$/, '')]);
}

/** The four numbers of a `viewBox`, or `null` where it has not four, or no area. */
export function parseViewBox(value: string): readonly [number, number, number, number] | null {
  const [x, y, width, height, ...more] = value
    .trim()
    .split(/[\s,]+/)
    .map(Number);
  if (x === undefined || y === undefined || width === undefined || height === undefined) return null;
  const sound = more.length === 0 && [x, y, width, height].every(Number.isFinite) && width > 0 && height > 0;
  return sound ? [x, y, width, height] : null;
}

/** A length without a unit or in `px`, as a number of user units; `null` for any other. */
export function userLength(value: string): number | null {
  const match = /^\s*(\d+(?:\.\d+)?)(?:px)?\s*$/.exec(value);
  return match ? Number(match[1]) : null;
}
