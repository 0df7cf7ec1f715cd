import { contentHash } from '../store/content-hash.ts';
import { readJson, type Store, writeJson } from '../store/store.ts';
import { encodeSet } from './encode.ts';
import { isRaster, pictureKind } from './kind.ts';
import type { DerivedPicture, Outcome, PictureFile, PictureRequest, PictureSet } from './picture.ts';
import { RECIPE } from './recipe.ts';
import { uprightPixels } from './upright.ts';

/** A set as the store keeps it: the files' bytes stand beside it, under their names. */
interface KeptSet {
  readonly files: readonly Omit<PictureFile, 'bytes'>[];
  readonly width: number;
  readonly height: number;
}

/**
 * Makes every file that a raster picture is published as. The original itself is never among them. Work that
 * the store holds is not done again; a kept file whose bytes no longer have its name's hash is.
 *
 * @param file path from the workspace's root, for the message where the picture cannot be decoded
 */
export async function derivePictures(
  bytes: Uint8Array,
  file: string,
  request: PictureRequest,
  store: Store,
): Promise<Outcome<DerivedPicture>> {
  const { crop, blur, zoom } = request;
  const main = await pictureSet(bytes, { crop, blur }, store);
  const detail = main && zoom ? await pictureSet(bytes, { crop: zoom, blur }, store) : null;
  if (main && (detail || !zoom)) return { ok: true, value: { ...main, detail } };
  const message = `${file} cannot be decoded; open it and save it again`;
  return { ok: false, problems: [{ code: 'picture-unreadable', message }] };
}

/** One view of a picture, from the store or made now; `null` where the picture cannot be decoded. */
async function pictureSet(
  bytes: Uint8Array,
  view: Pick<PictureRequest, 'crop' | 'blur'>,
  store: Store,
): Promise<PictureSet | null> {
  const boxes = [view.crop, ...view.blur].map((box) => box && [box.left, box.top, box.width, box.height]);
  const name = `set-${contentHash(RECIPE, JSON.stringify(boxes), bytes)}.json`;
  const kept = await readSet(name, store);
  if (kept) return kept;
  if (!isRaster(pictureKind(bytes))) return null;
  const pixels = await uprightPixels(bytes, view.crop, view.blur).catch(() => null);
  if (!pixels) return null;
  const set = await encodeSet(pixels);
  for (const file of set.files) store.write(file.name, file.bytes);
  const plain: KeptSet = { ...set, files: set.files.map(({ bytes: _, ...file }) => file) };
  writeJson(store, name, plain);
  return set;
}

async function readSet(name: string, store: Store): Promise<PictureSet | null> {
  const kept = readJson<KeptSet>(store, name);
  if (!kept) return null;
  const files: PictureFile[] = [];
  for (const file of kept.files) {
    const bytes = store.read(file.name);
    if (!bytes || !file.name.startsWith(contentHash(bytes))) return null;
    files.push({ ...file, bytes });
  }
  return { ...kept, files };
}
