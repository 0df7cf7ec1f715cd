import type { Element } from 'hast';
import { s } from 'hastscript';

/** The safety alert symbol (ANSI Z535.4, drawn from its description): an exclamation mark in a triangle, solid, in the colour of the text. */
export function safetyAlert(): Element {
  return s(
    'svg',
    { className: ['safety-alert'], viewBox: '0 0 32 28', ariaHidden: 'true', focusable: 'false' },
    s('path', {
      fill: 'currentColor',
      'fill-rule': 'evenodd',
      d: 'M14.3 1.4a2 2 0 0 1 3.4 0L31.3 24.9a2 2 0 0 1-1.7 3H2.4a2 2 0 0 1-1.7-3ZM14.1 9.2L14.8 18.6H17.2L17.9 9.2ZM16 20.6a1.9 1.9 0 1 0 .01 0Z',
    }),
  );
}

/** Protective equipment that has a sign. */
export type WearSign = 'eyes' | 'face' | 'ears' | 'hands' | 'breath' | 'feet' | 'head' | 'general';

const byWord: readonly (readonly [RegExp, WearSign])[] = [
  [/\bface\b|\bvisor\b/, 'face'],
  [/\beyes?\b|\bglasses\b|\bgoggles\b/, 'eyes'],
  [/\bears?\b|\bhearing\b/, 'ears'],
  [/\bgloves?\b|\bgauntlets?\b/, 'hands'],
  [/\bmask\b|\brespirator\b/, 'breath'],
  [/\bboots?\b|\bshoes?\b|\bfootwear\b/, 'feet'],
  [/\bhelmet\b|\bhard hat\b|\bbump cap\b/, 'head'],
];

/** The sign for protective equipment by its name; `general` where no word tells. */
export function wearSignFor(name: string): WearSign {
  const lower = name.toLowerCase();
  return byWord.find(([word]) => word.test(lower))?.[1] ?? 'general';
}

/** Safety blue of ISO 3864-4 (RAL 5005), which white reaches 8.1 to 1 against. */
const BLUE = '#005387';

/**
 * A mandatory-action sign: a white picture on a blue disc, the shape and colour of ISO 3864; the pictures are our
 * own, drawn from what the signs of ISO 7010 (M001, M003, M004, M008, M009, M013, M014, M016) are said to show.
 */
export function wearSign(sign: WearSign): Element {
  return s(
    'svg',
    {
      className: ['wear-sign', `wear-${sign}`],
      viewBox: '0 0 48 48',
      ariaHidden: 'true',
      focusable: 'false',
    },
    s('circle', { cx: 24, cy: 24, r: 24, fill: BLUE }),
    ...signs[sign].map(({ d, ink, width }) =>
      width
        ? s('path', {
            d,
            fill: 'none',
            stroke: ink,
            'stroke-width': width,
            'stroke-linejoin': 'round',
            'stroke-linecap': 'round',
          })
        : s('path', { d, fill: ink, 'fill-rule': 'evenodd' }),
    ),
  );
}

interface Stroke {
  readonly d: string;
  readonly ink: string;
  /** Width of the line; 0 is a solid shape. */
  readonly width: number;
}

const white = (d: string, width = 0): Stroke => ({ d, ink: '#fff', width });
const blue = (d: string, width = 0): Stroke => ({ d, ink: BLUE, width });

/** A head and shoulders from the front. */
const person = white(
  'M24 7c6.2 0 10 4.3 10 10.5S30.2 31 24 31s-10-7.3-10-13.5S17.8 7 24 7ZM10.5 42.5C12 36 17.5 33.6 24 33.6S36 36 37.5 42.5A23 23 0 0 1 10.5 42.5Z',
);

const signs: Readonly<Record<WearSign, readonly Stroke[]>> = {
  eyes: [
    person,
    blue(
      'M13 13.5h22v9.2c0 1.4-1 2.3-2.4 2.3h-4.4c-2 0-2.6-3-4.2-3s-2.2 3-4.2 3h-4.4c-1.4 0-2.4-.9-2.4-2.3Z',
    ),
    white(
      'M15.6 16h6.6v4.2c-.9 1-1.6 2.3-2.6 2.3h-2.8c-.7 0-1.2-.5-1.2-1.2ZM32.4 16h-6.6v4.2c.9 1 1.6 2.3 2.6 2.3h2.8c.7 0 1.2-.5 1.2-1.2Z',
    ),
  ],
  face: [
    person,
    blue('M13.5 11.5h21V30c0 4-6 6-10.500 6s-10.500-2-10.500-6Z'),
    white('M16 14h16v15c0 2.800-4.800 4.400-8 4.400s-8-1.600-8-4.400Z'),
    blue('M19 27l7-9', 1.4),
  ],
  ears: [
    person,
    blue('M11.500 19.500C11.500 9.500 16.500 5 24 5s12.500 4.500 12.500 14.500', 5.5),
    white('M11.500 19.500C11.500 9.500 16.500 5 24 5s12.500 4.500 12.500 14.500', 2.6),
    blue(
      'M14.600 14.500c2 0 3 2.700 3 6s-1 6-3 6H10c-2.400 0-3.600-2.700-3.600-6s1.200-6 3.600-6ZM33.400 14.500c-2 0-3 2.700-3 6s1 6 3 6H38c2.400 0 3.600-2.700 3.600-6s-1.200-6-3.600-6Z',
    ),
    white(
      'M13.700 16c1.400 0 2.100 2 2.100 4.500s-.7 4.500-2.100 4.500h-3.300c-1.700 0-2.500-2-2.500-4.500s.8-4.500 2.500-4.500ZM34.300 16c-1.400 0-2.100 2-2.100 4.500s.7 4.500 2.100 4.500h3.300c1.700 0 2.500-2 2.500-4.500s-.8-4.500-2.500-4.500Z',
    ),
  ],
  hands: [
    white(
      'M16.500 41V31.500L10.600 24.600c-1-1.200-.9-2.700.2-3.600s2.700-.7 3.600.5l3.100 3.800V11.200c0-1.200.9-2.100 2-2.100s2 .9 2 2.100V20h.9V8.600c0-1.200.9-2.100 2.100-2.100s2.100.9 2.100 2.100V20h.9V10c0-1.200.9-2.100 2-2.100s2 .9 2 2.100v10.800h.9v-6.600c0-1.100.8-1.900 1.800-1.900s1.900.8 1.900 1.900V29c0 2.600-1.100 4-1.700 5.500V41Z',
    ),
    blue('M16 36.400h19', 1.6),
  ],
  breath: [
    person,
    blue(
      'M15 19.500L19.500 20.500C22 18.600 26 18.600 28.500 20.500L33 19.500M15.500 27L19 27.500M32.500 27L29 27.500',
      1.5,
    ),
    blue(
      'M24 18.300c3.600 0 6.400 2.300 6.400 6.200 0 4.300-3 8-6.400 8s-6.400-3.700-6.400-8c0-3.900 2.800-6.200 6.400-6.200Z',
    ),
    white(
      'M24 20c2.700 0 4.700 1.700 4.700 4.600 0 3.500-2.300 6.200-4.700 6.200s-4.700-2.700-4.700-6.200c0-2.900 2-4.600 4.700-4.600Z',
    ),
    blue('M20.500 24h7M21 27h6', 1.1),
  ],
  feet: [
    white(
      'M15 8h12.500v14.500c0 3.500 3.500 4.200 7 5.500 3.600 1.400 5 3.300 5 6.500H13.500c0-7 1.500-13 1.500-26.500ZM13 36h26.500v3.500H28.500L27.500 38h-4l-1 1.500H13Z',
    ),
    blue('M20.500 18.500l6.500-1M20.500 22.500l7-1M31 34.500c-.4-3 .7-5 3-6', 1.4),
  ],
  head: [
    person,
    blue('M9.500 20c-.600-11 5.500-16.500 14.500-16.500S39.100 9 38.500 20Z'),
    white('M11.500 18c0-8.500 4.500-12.500 12.500-12.500S36.500 9.500 36.500 18ZM9 19h30v1.800H9Z'),
    blue('M21.500 6v8M26.500 6v8', 1.2),
  ],
  general: [white('M20.600 8h6.800l-1.300 22h-4.200ZM24 33.500a3.500 3.500 0 1 0 .01 0Z')],
};
