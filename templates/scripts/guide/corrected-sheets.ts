import { type Correction, correctedName } from '../../../src/trade/print-check.ts';
import { loadBeside } from '../beside.ts';
import type { CorrectPrint } from '../correct-print.ts';

/**
 * Hands back a template's PDFs corrected for one printer: over http those of the page, at once; from `file://`,
 * where a page may read no file by itself, the one that is chosen or dropped.
 */
export function correctedSheets(check: HTMLElement, correction: Correction): HTMLElement[] {
  const told = document.createElement('p');
  told.setAttribute('role', 'status');
  const handBack = async (name: string, read: () => Promise<ArrayBuffer>): Promise<void> => {
    told.textContent = `Making ${correctedName(name)} …`;
    try {
      const correct = await corrector();
      const bytes = await correct(await read(), correction);
      told.replaceChildren(
        saved(correctedName(name), bytes),
        ' Print it at 100 %, and measure its square before you cut: it must be 100 mm both ways now.',
      );
    } catch (error) {
      told.textContent = error instanceof Error ? error.message : String(error);
    }
  };
  const files = location.protocol === 'file:' ? [] : printed(check);
  const buttons = files.map((link) => {
    const name = decodeURIComponent(link.href.slice(link.href.lastIndexOf('/') + 1));
    const button = document.createElement('button');
    button.type = 'button';
    button.textContent = `Correct ${link.textContent?.trim() ?? name}`;
    button.addEventListener('click', () => void handBack(name, () => fetched(link.href)));
    return button;
  });
  return [...buttons, chooser((file) => void handBack(file.name, () => file.arrayBuffer())), told];
}

/** The PDFs of the template that the check stands by. */
function printed(check: HTMLElement): HTMLAnchorElement[] {
  const links = check.closest('.template')?.querySelectorAll<HTMLAnchorElement>('.files a') ?? [];
  return [...links].filter(({ href }) => href.endsWith('.pdf'));
}

async function fetched(href: string): Promise<ArrayBuffer> {
  const answer = await fetch(href).catch(() => null);
  if (!answer?.ok) throw new Error('The PDF cannot be fetched now. Choose it from where you saved it.');
  return answer.arrayBuffer();
}

/** A field that takes the printed PDF, chosen or dropped on it. */
function chooser(take: (file: File) => void): HTMLElement {
  const field = document.createElement('label');
  field.textContent = 'Choose the PDF that you printed, or drop it here';
  const input = document.createElement('input');
  input.type = 'file';
  input.accept = 'application/pdf,.pdf';
  input.addEventListener('change', () => {
    const [file] = input.files ?? [];
    if (file) take(file);
  });
  field.append(input);
  field.addEventListener('dragover', (event) => event.preventDefault());
  field.addEventListener('drop', (event) => {
    event.preventDefault();
    const [file] = event.dataTransfer?.files ?? [];
    if (file) take(file);
  });
  return field;
}

/** The script that corrects is loaded only when asked for: it is larger than all others together. */
async function corrector(): Promise<CorrectPrint> {
  await loadBeside('correct-print').catch(() => {});
  if (globalThis.correctPrint) return globalThis.correctPrint;
  throw new Error('The part of the page that corrects prints cannot be loaded now.');
}

/** A link to the corrected file, which is saved at once where the browser lets a page do so. */
function saved(name: string, bytes: Uint8Array): HTMLElement {
  const link = document.createElement('a');
  link.href = URL.createObjectURL(new Blob([bytes.slice().buffer], { type: 'application/pdf' }));
  link.download = name;
  link.textContent = `Save ${name}`;
  link.className = 'corrected';
  queueMicrotask(() => link.click());
  return link;
}
