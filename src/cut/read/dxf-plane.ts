import { type Affine, scaleBy, UNMOVED } from './affine.ts';
import { type Entity, numberOf } from './dxf-groups.ts';
import { Refused } from './refused.ts';

/** A normal this near to straight up or straight down is meant to be. */
const UPRIGHT_WITHIN = 1e-6;

/** Heights this near are one height, in units of the file. */
const LEVEL_WITHIN = 1e-6;

/**
 * How the plane of an entity lies in the drawing (DXF reference, "Arbitrary Axis Algorithm"): as it is where its
 * normal points to the reader, and mirrored, x turned round, where it points away. A tilted plane would come out
 * shorter than it is.
 */
export function planeOf(entity: Entity): Affine {
  const { x, y, z } = normalOf(entity);
  if (Math.abs(x) > UPRIGHT_WITHIN || Math.abs(y) > UPRIGHT_WITHIN)
    throw new Refused(
      `a ${entity.kind} lies in a tilted plane; save the drawing flat, seen square from the front`,
      entity.line,
    );
  return z < 0 ? scaleBy(-1, 1) : UNMOVED;
}

/** 1 where an entity's normal points to the reader, −1 where it points away. */
export function facingOf(entity: Entity): number {
  return planeOf(entity)[0];
}

function normalOf(entity: Entity): { readonly x: number; readonly y: number; readonly z: number } {
  const [x, y, z] = [numberOf(entity, 210, 0), numberOf(entity, 220, 0), numberOf(entity, 230, 1)];
  const length = Math.hypot(x, y, z);
  if (length < 1e-9) throw new Refused(`a ${entity.kind} lies in no plane`, entity.line);
  return { x: x / length, y: y / length, z: z / length };
}

/** Refuses what rises or falls. */
export function refuseTilted(entity: Entity, heights: readonly number[]): void {
  const [first = 0] = heights;
  if (heights.some((height) => Math.abs(height - first) > LEVEL_WITHIN * Math.max(1, Math.abs(first))))
    throw new Refused(
      `a ${entity.kind} does not lie flat; save the drawing flat, seen square from the front`,
      entity.line,
    );
}
