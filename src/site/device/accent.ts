/** Grounds of the pages, light and dark, as `templates/styles/tokens.css` has them. */
export const grounds = { light: '#fcfbf8', dark: '#141618' } as const;

/**
 * Text against its ground: on a light one what WCAG 2.2 asks of all text (success criterion 1.4.3), on a dark one, where a
 * link is looked for in a dark bay, what it asks for at its highest level (1.4.6).
 */
const leastContrast = { light: 4.5, dark: 7 } as const;

type Rgb = readonly [number, number, number];

/**
 * The style sheet that gives the pages the shop's accent. On each ground it is darkened or lightened, no more
 * than needed, until links in it can be read; paper prints no accent.
 *
 * @param accent a CSS hexadecimal colour, `#rgb` or `#rrggbb`; `null` keeps the built-in accent
 */
export function accentStyle(accent: string | null): string {
  if (accent === null) return '/* shop.yaml names no accent. */\n';
  return [
    '/* The accent of shop.yaml, made legible on each ground. */',
    '@media screen {',
    `  :root { --accent: ${legible(accent, grounds.light)}; }`,
    '}',
    '@media screen and (prefers-color-scheme: dark) {',
    `  :root { --accent: ${legible(accent, grounds.dark)}; }`,
    '}',
    '',
  ].join('\n');
}

/** A colour moved towards black or white, whichever stands out from the ground, until it can be read on it. */
export function legible(colour: string, ground: string): string {
  const isLight = luminance(rgb(ground)) > 0.5;
  const target: Rgb = isLight ? [0, 0, 0] : [255, 255, 255];
  const least = isLight ? leastContrast.light : leastContrast.dark;
  for (let share = 0; share < 1; share += 0.02) {
    const mixed = mix(rgb(colour), target, share);
    if (contrast(mixed, rgb(ground)) >= least) return hex(mixed);
  }
  return hex(target);
}

/** Contrast ratio of two colours, 1 to 21 (WCAG 2.2, "contrast ratio"). */
export function contrast(a: Rgb, b: Rgb): number {
  const [light, dark] = [luminance(a), luminance(b)].sort((one, other) => other - one) as [number, number];
  return (light + 0.05) / (dark + 0.05);
}

/** Red, green and blue, 0 to 255, of a CSS hexadecimal colour. */
export function rgb(colour: string): Rgb {
  const short = /^#([0-9a-f])([0-9a-f])([0-9a-f])$/i.exec(colour);
  const digits = short ? short.slice(1).map((digit) => digit + digit) : (colour.match(/[0-9a-f]{2}/gi) ?? []);
  const [red = 0, green = 0, blue = 0] = digits.map((pair) => Number.parseInt(pair, 16));
  return [red, green, blue];
}

/** Relative luminance (WCAG 2.2), 0 for black to 1 for white. */
function luminance(colour: Rgb): number {
  const [red, green, blue] = colour.map((value) => {
    const share = value / 255;
    return share <= 0.04045 ? share / 12.92 : ((share + 0.055) / 1.055) ** 2.4;
  }) as [number, number, number];
  return 0.2126 * red + 0.7152 * green + 0.0722 * blue;
}

function mix(from: Rgb, to: Rgb, share: number): Rgb {
  return from.map((value, index) => Math.round(value + ((to[index] ?? 0) - value) * share)) as unknown as Rgb;
}

function hex(colour: Rgb): string {
  return `#${colour.map((value) => value.toString(16).padStart(2, '0')).join('')}`;
}
