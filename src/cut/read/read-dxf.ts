import { type Affine, compose, scaleBy, shiftBy, turnBy } from './affine.ts';
import { type DrawnFile, type DrawnPiece, plainName, type WantedShape } from './drawn.ts';
import { type DxfFile, readDxfFile } from './dxf-file.ts';
import { type Entity, numberOf, textOf } from './dxf-groups.ts';
import { planeOf } from './dxf-plane.ts';
import { entityPieces, polylinePieces } from './dxf-shapes.ts';
import { movePiece, type Piece } from './piece.ts';
import { Refused } from './refused.ts';

/** Draws nothing that is cut: words, measures and points. */
const SILENT: Readonly<Record<string, string>> = {
  TEXT: 'text',
  MTEXT: 'text',
  ATTDEF: 'text',
  ATTRIB: 'text',
  DIMENSION: 'dimensions',
  ARC_DIMENSION: 'dimensions',
  LEADER: 'dimensions',
  MULTILEADER: 'dimensions',
  TOLERANCE: 'dimensions',
  POINT: 'points',
  VIEWPORT: 'views of a paper layout',
};

/** Blocks that hold blocks deeper than this, or more pieces, are no outline of a part. */
const MAX_DEPTH = 16;
const MAX_PIECES = 50_000;

/**
 * Reads what an ASCII DXF file, of any release, draws in its model space. Throws {@link Refused} where an entity
 * that is shown on a wanted layer is no line or curve of the drawing's plane.
 */
export function readDxf(text: string, wanted: WantedShape): DrawnFile {
  const file = readDxfFile(text);
  if (file.unit !== null && wanted.unit !== null && Math.abs(file.unit - wanted.unit) > 1e-9)
    throw new Refused(
      `the file says its own unit ($INSUNITS: ${file.unit} mm), and the outline another; leave out unit=`,
    );
  const unit = file.unit ?? wanted.unit;
  if (unit === null)
    throw new Refused(
      'the file does not say its units ($INSUNITS); save it in millimetres, or write unit=mm on the outline if that is what it is in',
    );
  const reader = new Reader(file, wanted);
  reader.readAll(file.entities, { toMm: scaleBy(unit, unit), layer: '0', depth: 0, inside: [] });
  if (reader.pieces.length === 0 && reader.leftOut.has(PAPER))
    throw new Refused('all that the file draws stands in a paper layout; draw the outline in model space');
  return { pieces: reader.pieces, leftOut: [...reader.leftOut], layers: layersOf(file) };
}

/** Those of the table, and those that are only used. */
function layersOf({ layers, entities, blocks }: DxfFile): string[] {
  const used = [...entities, ...[...blocks.values()].flatMap((block) => block.entities)];
  const names = [
    ...[...layers.values()].map(({ name }) => name),
    ...used.map((one) => textOf(one, 8) ?? '0'),
  ];
  return [...new Map(names.map((name) => [plainName(name), name])).values()];
}

const PAPER = 'a paper layout';

interface Place {
  readonly toMm: Affine;
  /** The layer of the block that is put in; what a block has on layer 0 takes it. */
  readonly layer: string;
  readonly depth: number;
  readonly inside: readonly string[];
}

class Reader {
  readonly pieces: DrawnPiece[] = [];
  readonly leftOut = new Set<string>();
  private readonly file: DxfFile;
  private readonly chosen: ReadonlySet<string> | null;

  constructor(file: DxfFile, { layers }: WantedShape) {
    this.file = file;
    this.chosen = layers && new Set(layers.map(plainName));
  }

  readAll(entities: readonly Entity[], place: Place): void {
    for (let i = 0; i < entities.length; i++) {
      const entity = entities[i] as Entity;
      // An old polyline and a block with words are followed by their own parts, up to a SEQEND.
      let end = i;
      if (entity.kind === 'POLYLINE' || (entity.kind === 'INSERT' && numberOf(entity, 66, 0) === 1)) {
        do end++;
        while (end < entities.length && entities[end]?.kind !== 'SEQEND');
        if (end === entities.length) throw new Refused(`a ${entity.kind} has no end`, entity.line);
      }
      this.read(entity, entities.slice(i + 1, end), place);
      i = end;
    }
  }

  private read(entity: Entity, parts: readonly Entity[], place: Place): void {
    if (numberOf(entity, 67, 0) === 1) {
      this.leftOut.add(PAPER);
      return;
    }
    const own = textOf(entity, 8) ?? '0';
    const layer = own === '0' && place.depth > 0 ? place.layer : own;
    const shown = this.file.layers.get(plainName(layer))?.shown !== false;
    if (numberOf(entity, 60, 0) === 1 || !shown) {
      this.leftOut.add('what is not shown');
      return;
    }
    if (entity.kind === 'INSERT') {
      this.insert(entity, { ...place, layer });
      return;
    }
    if (this.chosen && !this.chosen.has(plainName(layer))) return;
    const silent = SILENT[entity.kind];
    if (silent) {
      this.leftOut.add(silent);
      return;
    }
    const pieces = entity.kind === 'POLYLINE' ? polylinePieces(entity, parts) : entityPieces(entity);
    if (!pieces)
      throw new Refused(
        `a ${entity.kind} is no line or curve of an outline; take it out, or name the layers to read`,
        entity.line,
      );
    for (const piece of pieces) this.add(movePiece(piece, place.toMm), layer, entity);
  }

  private add(piece: Piece, layer: string, { line }: Entity): void {
    if (this.pieces.length >= MAX_PIECES)
      throw new Refused(`the file draws more than ${MAX_PIECES} lines`, line);
    this.pieces.push({ piece, layer });
  }

  private insert(entity: Entity, place: Place): void {
    const name = plainName(textOf(entity, 2) ?? '');
    const block = this.file.blocks.get(name);
    if (!block) throw new Refused(`the block “${textOf(entity, 2) ?? ''}” is not in the file`, entity.line);
    if (block.external)
      throw new Refused(
        `the block “${textOf(entity, 2) ?? ''}” is drawn in another file; bind it in`,
        entity.line,
      );
    if (place.inside.includes(name) || place.depth >= MAX_DEPTH)
      throw new Refused(`the block “${textOf(entity, 2) ?? ''}” holds itself`, entity.line);
    const [sx, sy] = [numberOf(entity, 41, 1), numberOf(entity, 42, 1)];
    if (sx === 0 || sy === 0) throw new Refused('a block is scaled to nothing', entity.line);
    const [columns, rows] = [numberOf(entity, 70, 1) || 1, numberOf(entity, 71, 1) || 1];
    if (columns * rows > MAX_PIECES)
      throw new Refused(`the file draws more than ${MAX_PIECES} lines`, entity.line);
    const at = shiftBy(numberOf(entity, 10), numberOf(entity, 20));
    const put = compose(planeOf(entity), compose(at, turnBy(numberOf(entity, 50, 0))));
    const own = compose(scaleBy(sx, sy), shiftBy(-block.base.x, -block.base.y));
    for (let row = 0; row < rows; row++) {
      for (let column = 0; column < columns; column++) {
        const step = shiftBy(column * numberOf(entity, 44, 0), row * numberOf(entity, 45, 0));
        const toMm = compose(place.toMm, compose(put, compose(step, own)));
        const inside = [...place.inside, name];
        this.readAll(block.entities, { toMm, layer: place.layer, depth: place.depth + 1, inside });
      }
    }
  }
}
