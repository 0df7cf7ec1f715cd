/** The namespace of SVG (SVG 2, chapter 5.1). */
export const SVG_NAMESPACE = 'http://www.w3.org/2000/svg';

/** The namespace of `xlink:href`, which older drawings use for `href`. */
export const XLINK_NAMESPACE = 'http://www.w3.org/1999/xlink';

const geometry = [
  'x',
  'y',
  'x1',
  'y1',
  'x2',
  'y2',
  'cx',
  'cy',
  'r',
  'rx',
  'ry',
  'width',
  'height',
  'd',
  'points',
];

/** What each element that is kept may carry, besides {@link paintAttributes}. All else is dropped. */
export const allowedElements: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  Object.entries({
    svg: ['viewBox'],
    g: ['transform'],
    defs: [],
    title: [],
    use: ['href', 'transform', ...geometry],
    symbol: ['viewBox', 'preserveAspectRatio'],
    path: ['transform', 'pathLength', 'd'],
    rect: ['transform', ...geometry],
    circle: ['transform', ...geometry],
    ellipse: ['transform', ...geometry],
    line: ['transform', ...geometry],
    polyline: ['transform', ...geometry],
    polygon: ['transform', ...geometry],
    text: ['transform', 'dx', 'dy', 'rotate', 'textLength', 'lengthAdjust', ...geometry],
    tspan: ['dx', 'dy', 'rotate', 'textLength', 'lengthAdjust', ...geometry],
    linearGradient: ['href', 'gradientUnits', 'gradientTransform', 'spreadMethod', ...geometry],
    radialGradient: [
      'href',
      'gradientUnits',
      'gradientTransform',
      'spreadMethod',
      'fx',
      'fy',
      'fr',
      ...geometry,
    ],
    stop: ['offset'],
    clipPath: ['clipPathUnits', 'transform'],
    marker: ['viewBox', 'refX', 'refY', 'markerWidth', 'markerHeight', 'markerUnits', 'orient'],
  }).map(([name, attributes]) => [name, new Set(attributes)]),
);

/** How something looks, as an attribute or in `style`. */
export const paintAttributes: ReadonlySet<string> = new Set([
  'clip-path',
  'clip-rule',
  'color',
  'display',
  'dominant-baseline',
  'fill',
  'fill-opacity',
  'fill-rule',
  'font-family',
  'font-size',
  'font-style',
  'font-weight',
  'letter-spacing',
  'marker-end',
  'marker-mid',
  'marker-start',
  'opacity',
  'paint-order',
  'stop-color',
  'stop-opacity',
  'stroke',
  'stroke-dasharray',
  'stroke-dashoffset',
  'stroke-linecap',
  'stroke-linejoin',
  'stroke-miterlimit',
  'stroke-opacity',
  'stroke-width',
  'text-anchor',
  'vector-effect',
  'visibility',
]);

/** Elements that hold text of their own. */
export const textElements: ReadonlySet<string> = new Set(['text', 'tspan', 'title']);

/** Elements that say nothing to the eye and go without a word. */
export const silentElements: ReadonlySet<string> = new Set(['metadata', 'desc']);

/** Elements that run code or hold another document. */
export const unsafeElements: ReadonlySet<string> = new Set([
  'script',
  'handler',
  'listener',
  'foreignObject',
  'iframe',
  'object',
  'embed',
  'audio',
  'video',
  'canvas',
]);

/** Looks that we cannot keep: a drawing without them would show something else. */
export const lostAttributes: ReadonlySet<string> = new Set([
  'filter',
  'mask',
  'mix-blend-mode',
  'backdrop-filter',
]);
