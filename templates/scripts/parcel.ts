import { button, make } from './bay/elements.ts';
import type { ParcelAsk, ParcelState } from './worker/parcels.ts';

/**
 * Offers to keep on the device what of a guide is not kept unasked: heavy photographs, drawings and templates, and the
 * guide in one file. Nothing is offered in a folder that is no guide's.
 */
export async function offerParcel(worker: ServiceWorker, folder: string): Promise<void> {
  const state = await ask(worker, { folder, keep: false });
  if (!state) return;
  const line = make('div', 'parcel');
  const told = make('p', '');
  told.setAttribute('role', 'status');
  const touch = button('', `${keepWords(state)}, ${state.weight}`, async () => {
    touch.disabled = true;
    told.textContent = 'On its way: leave this page open.';
    const after = await ask(worker, { folder, keep: true });
    touch.disabled = false;
    show(after ?? state);
    if (!after?.isKept) told.textContent = 'Not all of it came. Touch again where there is a network.';
  });
  const show = (now: ParcelState): void => {
    told.textContent = now.isKept ? keptWords(now) : missingWords(now);
    touch.hidden = now.isKept;
  };
  line.append(told, touch);
  show(state);
  place(line, state);
}

/** Heavy pictures are missed in the bay, so they are told of above the guide; the one file is told of at the foot. */
function place(line: HTMLElement, { isHeavy, isKept }: ParcelState): void {
  const head = isHeavy && !isKept ? document.querySelector('main .head') : null;
  if (head) head.append(line);
  else document.querySelector('.colophon')?.append(line);
}

const missingWords = ({ isHeavy }: ParcelState) =>
  isHeavy ? 'Photographs, drawings and templates of this guide need the network.' : '';
const keepWords = ({ isHeavy }: ParcelState) =>
  isHeavy ? 'Keep them on this device' : 'Keep the guide in one file on this device too';
const keptWords = ({ isHeavy }: ParcelState) =>
  isHeavy
    ? 'Its photographs, drawings, templates and the guide in one file are kept too.'
    : 'The guide in one file is kept too.';

function ask(worker: ServiceWorker, what: ParcelAsk): Promise<ParcelState | null> {
  const { port1, port2 } = new MessageChannel();
  return new Promise((resolve) => {
    port1.onmessage = ({ data }: MessageEvent<ParcelState | null>) => resolve(data);
    worker.postMessage(what, [port2]);
  });
}
