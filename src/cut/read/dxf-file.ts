import { plainName } from './drawn.ts';
import { type Entity, entitiesOf, numberOf, readGroups, textOf } from './dxf-groups.ts';
import { Refused } from './refused.ts';

/** Millimetres per unit for each `$INSUNITS` code in which parts are drawn. */
const UNITS: Readonly<Record<string, number>> = {
  1: 25.4,
  2: 304.8,
  4: 1,
  5: 10,
  6: 1000,
  8: 0.0000254,
  9: 0.0254,
  10: 914.4,
  13: 0.001,
  14: 100,
};

/** Part of a drawing that is put in by name, with the point in it that lies where it is put. */
interface DxfBlock {
  readonly entities: readonly Entity[];
  readonly base: { readonly x: number; readonly y: number };
  /** Drawn in another file, which we have not. */
  readonly external: boolean;
}

/** A layer as the file's table has it. */
export interface Layer {
  readonly name: string;
  readonly shown: boolean;
}

export interface DxfFile {
  /** Millimetres in a unit; `null` where the file does not say. */
  readonly unit: number | null;
  /** By plain name. */
  readonly layers: ReadonlyMap<string, Layer>;
  /** By plain name. */
  readonly blocks: ReadonlyMap<string, DxfBlock>;
  readonly entities: readonly Entity[];
}

/** The parts of a DXF file that an outline is made of. */
export function readDxfFile(text: string): DxfFile {
  const groups = readGroups(text);
  const sections = sectionsOf(entitiesOf(groups));
  const entities = sections.get('ENTITIES');
  if (!entities) throw new Refused('the file has no ENTITIES section');
  const at = groups.findIndex(({ code, value }) => code === 9 && value === '$INSUNITS');
  const code = at < 0 ? '0' : (groups[at + 1]?.value ?? '0');
  const unit = UNITS[code] ?? null;
  if (unit === null && Number(code) !== 0)
    throw new Refused(
      `the file states a unit that no part is drawn in ($INSUNITS ${code}); save it in millimetres`,
    );
  return {
    unit,
    entities,
    layers: layersOf(sections.get('TABLES') ?? []),
    blocks: blocksOf(sections.get('BLOCKS') ?? []),
  };
}

function sectionsOf(all: readonly Entity[]): ReadonlyMap<string, readonly Entity[]> {
  const sections = new Map<string, Entity[]>();
  let open: Entity[] | null = null;
  for (const entity of all) {
    if (entity.kind === 'SECTION') {
      open = [];
      sections.set(textOf(entity, 2) ?? '', open);
    } else if (entity.kind === 'ENDSEC') open = null;
    else open?.push(entity);
  }
  return sections;
}

/** A frozen layer (bit 1) and one with a negative colour are switched off. */
function layersOf(tables: readonly Entity[]): ReadonlyMap<string, Layer> {
  const layers = tables
    .filter(({ kind }) => kind === 'LAYER')
    .map((entry): Layer => {
      const frozen = (numberOf(entry, 70, 0) & 1) === 1;
      return { name: textOf(entry, 2) ?? '', shown: !frozen && numberOf(entry, 62, 7) >= 0 };
    });
  return new Map(layers.map((layer) => [plainName(layer.name), layer]));
}

function blocksOf(all: readonly Entity[]): ReadonlyMap<string, DxfBlock> {
  const blocks = new Map<string, DxfBlock>();
  let open: { entities: Entity[] } | null = null;
  for (const entity of all) {
    if (entity.kind === 'BLOCK') {
      const block = {
        entities: [] as Entity[],
        base: { x: numberOf(entity, 10, 0), y: numberOf(entity, 20, 0) },
        external: (numberOf(entity, 70, 0) & 4) === 4,
      };
      open = block;
      blocks.set(plainName(textOf(entity, 2) ?? ''), block);
    } else if (entity.kind === 'ENDBLK') open = null;
    else open?.entities.push(entity);
  }
  return blocks;
}
