import { type Photograph, randomId } from './kept.ts';

/** Pixels along the longer side: a scratch is seen on it, and thirty of them are no burden to a phone. */
const LONGEST = 1600;

/** Of the JPEG, 0 to 1. */
const QUALITY = 0.8;

/**
 * A photograph from the camera, smaller, upright, and without what the camera has written into the file (place, device
 * and time): only the picture is drawn. `null` where the browser cannot read it.
 */
export async function photographOf(file: Blob, key: string, shows: string): Promise<Photograph | null> {
  const picture = await createImageBitmap(file).catch(() => null);
  if (!picture) return null;
  const scale = Math.min(1, LONGEST / Math.max(picture.width, picture.height));
  const width = Math.max(1, Math.round(picture.width * scale));
  const height = Math.max(1, Math.round(picture.height * scale));
  const canvas = document.createElement('canvas');
  [canvas.width, canvas.height] = [width, height];
  const pen = canvas.getContext('2d');
  // What is clear in a picture turns black in a JPEG.
  if (pen) pen.fillStyle = '#fff';
  pen?.fillRect(0, 0, width, height);
  pen?.drawImage(picture, 0, 0, width, height);
  picture.close();
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', QUALITY));
  if (!pen || blob?.type !== 'image/jpeg') return null;
  const jpeg = new Uint8Array(await blob.arrayBuffer());
  return { id: randomId(8), key, shows, taken: new Date().toISOString(), width, height, jpeg };
}

/**
 * Draws a photograph. It is never an address of the page: what stands in a file from elsewhere is only ever decoded as
 * a JPEG, and the policy of the page needs no exception.
 */
export function drawn(photograph: Photograph, longest: number): HTMLCanvasElement {
  const scale = Math.min(1, longest / Math.max(photograph.width, photograph.height));
  const canvas = document.createElement('canvas');
  canvas.width = Math.max(1, Math.round(photograph.width * scale));
  canvas.height = Math.max(1, Math.round(photograph.height * scale));
  canvas.setAttribute('role', 'img');
  canvas.setAttribute('aria-label', `Photograph: ${photograph.shows}`);
  createImageBitmap(new Blob([photograph.jpeg], { type: 'image/jpeg' })).then(
    (picture) => {
      canvas.getContext('2d')?.drawImage(picture, 0, 0, canvas.width, canvas.height);
      canvas.dataset.drawn = '';
      picture.close();
    },
    () => canvas.setAttribute('aria-label', `This photograph cannot be shown: ${photograph.shows}`),
  );
  return canvas;
}
