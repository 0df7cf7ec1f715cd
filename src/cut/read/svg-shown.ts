import { Refused } from './refused.ts';
import type { SvgElement } from './svg-tree.ts';

/** What an element hands down to those within it, as far as it decides whether they are seen. */
export interface Paint {
  readonly fill: string;
  readonly 'fill-opacity': string;
  readonly stroke: string;
  readonly 'stroke-opacity': string;
  readonly 'stroke-width': string;
  readonly visibility: string;
}

/** What a drawing begins with (SVG 2, chapter 13). */
export const FIRST_PAINT: Paint = {
  fill: 'black',
  'fill-opacity': '1',
  stroke: 'none',
  'stroke-opacity': '1',
  'stroke-width': '1',
  visibility: 'visible',
};

const INHERITED = Object.keys(FIRST_PAINT) as (keyof Paint)[];

/** Properties that change what is seen of a shape; each is left alone only where it says nothing. */
const CHANGING: Readonly<Record<string, readonly string[]>> = {
  'clip-path': ['none'],
  mask: ['none'],
  filter: ['none'],
  marker: ['none'],
  'marker-start': ['none'],
  'marker-mid': ['none'],
  'marker-end': ['none'],
};

/** The same, where only a style can set them: as attributes the words mean something else, or nothing. */
const CHANGING_STYLES: Readonly<Record<string, readonly string[]>> = {
  ...CHANGING,
  'mask-image': ['none'],
  'offset-path': ['none'],
  'transform-box': ['view-box', 'border-box'],
  translate: ['none'],
  rotate: ['none'],
  scale: ['none'],
  zoom: ['1', 'normal'],
  animation: ['none'],
  'animation-name': ['none'],
  d: [],
  cx: [],
  cy: [],
  r: [],
  x: [],
  y: [],
  rx: [],
  ry: [],
  width: [],
  height: [],
  all: [],
};

/** What an element's own style says, by property; the last of several holds. */
export function styleOf({ attributes }: SvgElement): ReadonlyMap<string, string> {
  const style = attributes.get('style') ?? '';
  const plain = style
    .split('/*')
    .map((part, i) => (i === 0 ? part : part.split('*/').slice(1).join('*/')))
    .join(' ');
  const found = new Map<string, string>();
  for (const declaration of plain.split(';')) {
    const colon = declaration.indexOf(':');
    if (colon < 0) continue;
    const value = declaration
      .slice(colon + 1)
      .replace('!important', '')
      .trim();
    found.set(declaration.slice(0, colon).trim().toLowerCase(), value);
  }
  return found;
}

/** Refuses an element that is seen otherwise than its shape says. */
export function refuseChanged(element: SvgElement, style: ReadonlyMap<string, string>): void {
  const { attributes, line } = element;
  const refuse = (what: string): never => {
    throw new Refused(`${what}, which is not read; save the outline as a plain path`, line);
  };
  for (const [name, harmless] of Object.entries(CHANGING)) {
    const value = attributes.get(name);
    if (value !== undefined && !harmless.includes(value.trim())) refuse(`a ${element.name} has a ${name}`);
  }
  for (const [name, value] of style) {
    const harmless = CHANGING_STYLES[name];
    if (harmless && !harmless.includes(value)) refuse(`the style of a ${element.name} sets ${name}`);
    if (value.includes('var(') && !name.startsWith('--'))
      refuse(`the style of a ${element.name} uses a variable`);
  }
  for (const name of ['requiredExtensions', 'systemLanguage'])
    if (attributes.has(name)) refuse(`a ${element.name} is shown to some readers only (${name})`);
}

/** A property as a style, or as an attribute, sets it. */
function property(element: SvgElement, style: ReadonlyMap<string, string>, name: string): string | null {
  return style.get(name) ?? element.attributes.get(name)?.trim() ?? null;
}

/** Whether an element hides itself and all within it. */
export function isHidden(element: SvgElement, style: ReadonlyMap<string, string>): boolean {
  return (
    property(element, style, 'display') === 'none' || isNought(property(element, style, 'opacity') ?? '1')
  );
}

/** What holds for an element and is handed down by it. */
export function paintOf(element: SvgElement, style: ReadonlyMap<string, string>, above: Paint): Paint {
  const own = INHERITED.map((name) => {
    const value = property(element, style, name);
    return [name, value === null || value === 'inherit' ? above[name] : value];
  });
  return Object.fromEntries(own) as unknown as Paint;
}

/** Whether anything of a shape is seen; a line has no inside that could be filled. */
export function isSeen(paint: Paint, hasInside: boolean): boolean {
  if (paint.visibility !== 'visible') return false;
  const filled = hasInside && isInk(paint.fill) && !isNought(paint['fill-opacity']);
  const stroked =
    isInk(paint.stroke) && !isNought(paint['stroke-opacity']) && !isNought(paint['stroke-width']);
  return filled || stroked;
}

function isInk(paint: string): boolean {
  return paint !== 'none' && paint !== 'transparent';
}

function isNought(value: string): boolean {
  return Number.parseFloat(value) === 0;
}
