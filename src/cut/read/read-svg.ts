import { type Affine, apply, compose, inverse, scaleBy, shiftBy, UNMOVED } from './affine.ts';
import { type DrawnFile, type DrawnPiece, plainName, type WantedShape } from './drawn.ts';
import { movePiece, type Piece, pointsAlong } from './piece.ts';
import { Refused } from './refused.ts';
import { SHAPES, shapePieces, svgLength, type Viewport } from './svg-shapes.ts';
import { FIRST_PAINT, isHidden, isSeen, type Paint, paintOf, refuseChanged, styleOf } from './svg-shown.ts';
import { MAX_DEPTH, MAX_ELEMENTS, readTree, type SvgElement } from './svg-tree.ts';
import { about, isReal, MM_PER_PIXEL, pixelsOf, readLength, readTransform } from './svg-values.ts';
import { fitViewBox, viewBoxOf } from './svg-viewport.ts';

/** Elements that draw nothing where they stand. */
const SILENT = new Set(
  'defs title desc metadata symbol clipPath mask filter marker pattern linearGradient radialGradient view'.split(
    ' ',
  ),
);

/** What a shape may reach beyond the edge of its page and still count as on it, mm: rounding of the program's. */
const EDGE_SLACK = 0.01;

/** A part of the plane beyond which nothing is seen. */
interface Frame {
  readonly name: string;
  /** From millimetres of the drawing to the frame's own units. */
  readonly into: Affine;
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
  /** {@link EDGE_SLACK} in the frame's own units. */
  readonly slack: number;
}

/** What holds at a place of the tree. */
interface Place {
  readonly toMm: Affine;
  readonly viewport: Viewport;
  readonly paint: Paint;
  readonly layer: string;
  readonly wanted: boolean;
  readonly frames: readonly Frame[];
  readonly depth: number;
}

/**
 * Reads the shapes that an SVG file shows, as SVG 2 says. The zero point is that of the outermost element's user
 * units. Throws {@link Refused} where something is shown that is no outline, or otherwise than it is drawn.
 */
export function readSvg(text: string, wanted: WantedShape): DrawnFile {
  const root = readTree(text);
  const reader = new Reader(root, wanted);
  reader.readRoot();
  return { pieces: reader.pieces, leftOut: [...reader.leftOut], layers: [...reader.layers] };
}

class Reader {
  readonly pieces: DrawnPiece[] = [];
  readonly leftOut = new Set<string>();
  /** Names of layers and ids of groups and shapes: any of them can be asked for. */
  readonly layers = new Set<string>();
  private readonly root: SvgElement;
  private readonly unit: number | null;
  private readonly chosen: ReadonlySet<string> | null;
  private readonly byId = new Map<string, SvgElement>();
  private visited = 0;

  constructor(root: SvgElement, { layers, unit }: WantedShape) {
    this.root = root;
    this.unit = unit;
    this.chosen = layers && new Set(layers.map(plainName));
    this.index(root);
  }

  private index(element: SvgElement): void {
    const id = element.attributes.get('id');
    if (id !== undefined && !this.byId.has(id)) this.byId.set(id, element);
    for (const name of namesOf(element)) this.layers.add(name);
    if (element.name === 'style' && element.text.trim() !== '')
      throw new Refused(
        'the file has a style sheet, which is not read; set its properties on the shapes',
        element.line,
      );
    for (const child of element.children) this.index(child);
  }

  readRoot(): void {
    const { toMm, viewport, frame } = rootPlace(this.root, this.unit);
    const style = styleOf(this.root);
    refuseChanged(this.root, style);
    if (isHidden(this.root, style)) return;
    if (style.has('transform') || this.root.attributes.has('transform'))
      throw new Refused(
        'the svg element itself is transformed; put the transform on a g within it',
        this.root.line,
      );
    const paint = paintOf(this.root, style, FIRST_PAINT);
    const place: Place = {
      toMm,
      viewport,
      paint,
      layer: '',
      wanted: this.chosen === null,
      frames: frame ? [frame] : [],
      depth: 0,
    };
    this.children(this.root, this.named(this.root, place));
  }

  private children(element: SvgElement, place: Place): void {
    for (const child of element.children) this.read(child, place);
  }

  private read(element: SvgElement, above: Place): void {
    const { name, line } = element;
    this.visited += 1;
    if (this.visited > MAX_ELEMENTS || above.depth > MAX_DEPTH)
      throw new Refused('the file repeats its shapes more often than can be followed', line);
    if (name === '' || name === 'style' || SILENT.has(name)) return;
    const style = styleOf(element);
    if (isHidden(element, style)) {
      this.leftOut.add('what is not shown');
      return;
    }
    const place = this.named(element, above);
    const inside = { ...place, depth: place.depth + 1, paint: paintOf(element, style, above.paint) };
    switch (name) {
      case 'g':
      case 'a':
        this.changed(element, style, inside);
        this.children(element, this.within(element, style, inside));
        return;
      case 'svg':
        this.changed(element, style, inside);
        this.nested(element, inside, null);
        return;
      case 'use':
        this.changed(element, style, inside);
        this.use(element, this.within(element, style, inside));
        return;
      default:
        if (!inside.wanted) return;
        if (!SHAPES[name])
          throw new Refused(`a ${name} is not read; convert it to paths, or take it out`, line);
        this.changed(element, style, inside);
        this.shape(element, this.within(element, style, inside));
    }
  }

  /** An unwanted group may hold a wanted one, so it counts only where something in it is read. */
  private changed(element: SvgElement, style: ReadonlyMap<string, string>, place: Place): void {
    if (place.wanted || this.chosen === null || hasWanted(element, this.chosen))
      refuseChanged(element, style);
  }

  private shape(element: SvgElement, place: Place): void {
    if (!isSeen(place.paint, SHAPES[element.name]?.hasInside === true)) {
      this.leftOut.add('what is not shown');
      return;
    }
    for (const piece of shapePieces(element, place.viewport)) {
      const moved = movePiece(piece, place.toMm);
      for (const frame of place.frames) refuseBeyond(moved, frame, element);
      this.pieces.push({ piece: moved, layer: place.layer });
    }
  }

  /** The layer is the innermost named one; what is wanted stays wanted all the way in. */
  private named(element: SvgElement, above: Place): Place {
    const names = namesOf(element);
    const isLayer = element.attributes.get('inkscape:groupmode') === 'layer';
    const layer = isLayer ? (names[0] ?? above.layer) : above.layer;
    const wanted = above.wanted || names.some((one) => this.chosen?.has(plainName(one)) === true);
    return { ...above, layer, wanted };
  }

  private within(element: SvgElement, style: ReadonlyMap<string, string>, place: Place): Place {
    return { ...place, toMm: compose(place.toMm, this.moved(element, style)) };
  }

  /** The transform of an element; a style's stands in the place of an attribute's. */
  private moved(element: SvgElement, style: ReadonlyMap<string, string>): Affine {
    const text = style.get('transform') ?? element.attributes.get('transform') ?? '';
    const transform = readTransform(text);
    if (!transform) throw new Refused(`transform “${text.slice(0, 40)}” cannot be read`, element.line);
    const origin = style.get('transform-origin') ?? element.attributes.get('transform-origin');
    if (origin === undefined) return transform;
    const [x, y, more] = origin
      .trim()
      .split(/\s+/)
      .map((one) => readLength(one));
    const [px, py] = [x, y].map((one) => (one && one.unit !== '%' ? pixelsOf(one, 0) : null));
    if (px == null || py == null || more !== undefined)
      throw new Refused(
        `transform-origin “${origin.slice(0, 40)}” cannot be read; write two lengths`,
        element.line,
      );
    return about(px, py, transform);
  }

  /** An `svg` within the drawing, or a `symbol` that a `use` shows, with the size that the `use` says. */
  private nested(element: SvgElement, place: Place, by: SvgElement | null): void {
    const { viewport: outer } = place;
    if (element.attributes.get('transform') !== undefined)
      throw new Refused(
        `a transform on a ${element.name} within the drawing is read differently by different programs; put it on a g`,
        element.line,
      );
    const isSymbol = element.name === 'symbol';
    const said = (name: string, whole: number): number | null =>
      (by && svgLength(by, name, whole)) ?? svgLength(element, name, whole);
    const width = said('width', outer.width) ?? outer.width;
    const height = said('height', outer.height) ?? outer.height;
    if (width <= 0 || height <= 0) return;
    const x = isSymbol ? 0 : (svgLength(element, 'x', outer.width) ?? 0);
    const y = isSymbol ? 0 : (svgLength(element, 'y', outer.height) ?? 0);
    const port = compose(place.toMm, shiftBy(x, y));
    const box = viewBoxOf(element);
    const toMm = box ? compose(port, fitViewBox(element, box, { width, height })) : port;
    const overflow = styleOf(element).get('overflow') ?? element.attributes.get('overflow') ?? 'hidden';
    const frames =
      overflow === 'visible' || overflow === 'auto'
        ? place.frames
        : [...place.frames, frameOf(element.name, port, { x: 0, y: 0, width, height }, element)];
    this.children(element, { ...place, toMm, frames, viewport: box ?? { width, height } });
  }

  private use(element: SvgElement, place: Place): void {
    const href = element.attributes.get('href') ?? element.attributes.get('xlink:href') ?? '';
    const target = href.startsWith('#') ? this.byId.get(href.slice(1)) : undefined;
    if (!target)
      throw new Refused(`a use shows “${href.slice(0, 40)}”, which is not in this file`, element.line);
    const { width, height } = place.viewport;
    const shift = shiftBy(svgLength(element, 'x', width) ?? 0, svgLength(element, 'y', height) ?? 0);
    const there = { ...place, toMm: compose(place.toMm, shift) };
    if (target.name !== 'symbol' && target.name !== 'svg') {
      this.read(target, there);
      return;
    }
    const style = styleOf(target);
    if (isHidden(target, style)) return;
    refuseChanged(target, style);
    const inside = { ...this.named(target, there), depth: place.depth + 1 };
    this.nested(target, { ...inside, paint: paintOf(target, style, place.paint) }, element);
  }
}

/** What a part of a drawing can be called by: its layer's label, its id. */
function namesOf({ attributes }: SvgElement): string[] {
  return [attributes.get('inkscape:label'), attributes.get('id')].filter((one) => one !== undefined);
}

function hasWanted(element: SvgElement, chosen: ReadonlySet<string>): boolean {
  return (
    namesOf(element).some((one) => chosen.has(plainName(one))) ||
    element.children.some((child) => hasWanted(child, chosen))
  );
}

/** How user units become millimetres about their own zero point, and what of the plane the page shows. */
function rootPlace(
  root: SvgElement,
  unit: number | null,
): { readonly toMm: Affine; readonly viewport: Viewport; readonly frame: Frame | null } {
  const box = viewBoxOf(root);
  const [width, height] = ['width', 'height'].map((name) => {
    const length = readLength(root.attributes.get(name) ?? '');
    return length && length.unit !== '%' ? length : null;
  });
  const real = [width, height].find((one) => one && isReal(one));
  if (real && unit !== null)
    throw new Refused(`the file says its own size (${real.value}${real.unit}); leave out unit=`, root.line);
  const upright = (scale: Affine): Affine => compose(scaleBy(1, -1), scale);
  if (unit !== null) {
    const toMm = upright(scaleBy(unit, unit));
    return { toMm, viewport: box ?? { width: 0, height: 0 }, frame: box && frameOf('page', toMm, box, root) };
  }
  const [w, h] = [width, height].map((one) => one && pixelsOf(one, 0));
  if ((w == null && h == null) || !((w ?? 1) > 0 && (h ?? 1) > 0)) {
    const what =
      'the file does not say how large it is; give its svg a width and height in mm, or the outline a unit=';
    throw new Refused(what, root.line);
  }
  const ratio = box ? box.width / box.height : 1;
  const size = { width: w ?? (h ?? 0) * ratio, height: h ?? (w ?? 0) / ratio };
  const laid = box ? fitViewBox(root, box, size) : UNMOVED;
  const paper = upright(scaleBy(MM_PER_PIXEL, MM_PER_PIXEL));
  // The zero point of the user units stays where it is, wherever on its page the drawing lies.
  const zero = apply(compose(paper, laid), { x: 0, y: 0 });
  const back = compose(shiftBy(-zero.x, -zero.y), paper);
  const whole = w == null || h == null ? null : frameOf('page', back, { x: 0, y: 0, ...size }, root);
  return { toMm: compose(back, laid), viewport: box ?? size, frame: whole };
}

function frameOf(
  name: string,
  toMm: Affine,
  rect: { readonly x: number; readonly y: number; readonly width: number; readonly height: number },
  { line }: SvgElement,
): Frame {
  const into = inverse(toMm);
  if (!into) throw new Refused('a transform flattens the drawing to a line', line);
  const [a, b, c, d] = into;
  const { x, y, width, height } = rect;
  return {
    name,
    into,
    x,
    y,
    width,
    height,
    slack: EDGE_SLACK * Math.max(Math.hypot(a, b), Math.hypot(c, d)),
  };
}

function refuseBeyond(piece: Piece, frame: Frame, element: SvgElement): void {
  const { into, x, y, width, height, slack } = frame;
  for (const point of pointsAlong(piece)) {
    const at = apply(into, point);
    if (at.x >= x - slack && at.x <= x + width + slack && at.y >= y - slack && at.y <= y + height + slack)
      continue;
    const where =
      frame.name === 'page' ? 'the page that the file shows' : `the ${frame.name} that it stands in`;
    throw new Refused(
      `a ${element.name} reaches beyond ${where}, so not all of it is seen; make the page larger`,
      element.line,
    );
  }
}
