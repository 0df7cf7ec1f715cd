import { cp, mkdir, writeFile } from 'node:fs/promises';
import { join, resolve } from 'node:path';
import { baybook } from '../driver.ts';
import { jpeg } from '../vehicle/records.ts';

/** A site with two guides and a visit of both, which ask for photographs, and a picture from a camera. */
export interface VehicleSite {
  readonly folder: string;
  /** A JPEG of 3000 × 2000 pixels. */
  readonly photograph: string;
}

/** Builds it as a shop does, in a nested folder with spaces. */
export async function vehicleSite(top: string): Promise<VehicleSite> {
  const shop = join(top, 'a stick');
  await mkdir(shop, { recursive: true });
  await cp(resolve(import.meta.dirname, '../vehicle/workspace'), join(shop, 'guides'), { recursive: true });
  const { code, out, err } = await baybook(shop, 'build', '--out', 'our guides');
  if (code !== 0) throw new Error(out + err);
  const photograph = join(top, 'photograph.jpg');
  await writeFile(photograph, await jpeg(3000, 2000));
  return { folder: join(shop, 'our guides'), photograph };
}
