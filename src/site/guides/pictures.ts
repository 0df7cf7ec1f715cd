import type { Element } from 'hast';
import { stringify } from '../../html/stringify.ts';
import type { Figure, PictureBox } from '../../model/block.ts';
import type { PictureView } from '../../pages/steps/block-views.ts';
import { derivePictures } from '../../pictures/derive.ts';
import { pictureKind } from '../../pictures/kind.ts';
import type { PictureSet } from '../../pictures/picture.ts';
import { type CleanOptions, cleanSvg } from '../../pictures/svg/clean-svg.ts';
import { decodeSource } from '../../source/source-file.ts';
import { contentHash } from '../../store/content-hash.ts';
import type { Store } from '../../store/store.ts';

/** A picture to be published: its path from the workspace's root, and the figure that says how it is shown. */
export interface PictureWish {
  readonly path: string;
  readonly figure: Figure | null;
  /** It is wanted with the way back, for a step that undoes what it shows. */
  readonly turned?: boolean;
}

/** A picture as published: its files, and how a page shows them; addresses are relative to the site's root. */
interface PublishedPicture {
  readonly files: readonly { readonly path: string; readonly bytes: string | Uint8Array }[];
  readonly view: PictureView;
  /** It has a second look, with the way back. */
  readonly turns: boolean;
}

/** The folder of all derived pictures; originals are never published. */
const folder = 'pictures/';

/** A text that two wishes share when one set of files serves both. */
export function pictureKey({ path, figure, turned = false }: PictureWish): string {
  const boxes = [figure?.crop, ...(figure?.blur ?? []), figure?.zoom].map((box) => box?.value ?? null);
  return JSON.stringify([path, boxes, turned]);
}

/** Derives a picture; `null` where it cannot be shown, which a check has reported. */
export async function publishPicture(
  wish: PictureWish,
  bytes: Uint8Array,
  cache: Store,
): Promise<PublishedPicture | null> {
  if (pictureKind(bytes) === 'svg') return publishDrawing(wish, bytes);
  const { figure, path } = wish;
  const request = {
    crop: figure?.crop?.value ?? null,
    blur: figure?.blur.map((box) => box.value) ?? [],
    zoom: figure?.zoom?.value ?? null,
  };
  const derived = await derivePictures(bytes, path, request, cache);
  if (!derived.ok) return null;
  const { detail } = derived.value;
  return {
    files: [...derived.value.files, ...(detail?.files ?? [])].map((file) => ({
      path: folder + file.name,
      bytes: file.bytes,
    })),
    view: { ...setView(derived.value), detail: detail ? setView(detail) : null },
    turns: false,
  };
}

function setView(set: PictureSet): PictureView {
  const plain = set.files.at(-1);
  if (!plain) throw new Error('a derived picture has no files');
  const forScreens = set.files.filter((file) => file !== plain);
  const srcset = forScreens.map((file) => `${folder}${file.name} ${file.width}w`).join(', ');
  return {
    src: folder + plain.name,
    width: set.width,
    height: set.height,
    sources: [{ type: 'image/webp', srcset }],
    detail: null,
  };
}

function publishDrawing(
  { path, figure, turned = false }: PictureWish,
  bytes: Uint8Array,
): PublishedPicture | null {
  const source = decodeSource(path, bytes);
  if (!source) return null;
  const drawn = (crop: PictureBox | null) =>
    drawingFile(source.text, { file: path, prefix: '', crop, turned });
  const main = drawn(figure?.crop?.value ?? null);
  if (!main) return null;
  const detail = figure?.zoom ? drawn(figure.zoom.value) : null;
  return {
    files: [...main.files, ...(detail?.files ?? [])],
    view: { ...main.view, detail: detail?.view ?? null },
    turns: main.turns,
  };
}

function drawingFile(text: string, options: CleanOptions): PublishedPicture | null {
  const cleaned = cleanSvg(text, options);
  if (!cleaned.ok) return null;
  const { element, width, height, turns } = cleaned.value;
  const root: Element = {
    ...element,
    properties: { xmlns: 'http://www.w3.org/2000/svg', ...element.properties },
  };
  const svg = stringify([root]).html;
  const path = `${folder}${contentHash(svg)}.svg`;
  const view = { src: path, width, height, sources: [], detail: null };
  return { files: [{ path, bytes: svg }], view, turns };
}

/** The sizes for screens of a picture as it is shown, by their paths and widths in pixels; a drawing has none. */
export function screenSizes({
  sources,
}: Pick<PictureView, 'sources'>): readonly { readonly path: string; readonly width: number }[] {
  return sources.flatMap(({ srcset }) =>
    srcset.split(', ').map((one) => {
      const [path = '', width = ''] = one.split(' ');
      return { path, width: Number.parseInt(width, 10) };
    }),
  );
}
