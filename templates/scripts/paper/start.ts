import type { BayData } from '../../../src/pages/guide/bay-data.ts';
import { button, make, say } from '../bay/elements.ts';
import { wordsIn } from './copy.ts';
import { buildWords } from './cover.ts';
import { jobSheet } from './job-sheet.ts';
import { layOut } from './lay-out.ts';
import { fillVehicle, tellVehicle } from './vehicle.ts';
import { mendSheets } from './whole.ts';

/** Offers what fits the printer's reader: the job sheet for who knows the work, or the whole guide. */
export function startPaper(page: Pick<BayData, 'words'>): void {
  const offer = document.querySelector<HTMLElement>('.paper-offer');
  const main = document.querySelector<HTMLElement>('main');
  const view = document.querySelector<HTMLElement>('.paper-view');
  const sheets = view?.querySelector<HTMLElement>('.paper-sheets');
  if (!offer || !main || !view || !sheets) return;
  const state = view.querySelector('.paper-state');
  const papers = [...view.querySelectorAll<HTMLInputElement>('[name="paper"]')];
  const sides = [page.words.left, page.words.right];

  const fill = (): void => {
    const letter = papers.some(({ checked, value }) => checked && value === 'letter');
    document.documentElement.classList.toggle('on-letter', letter);
    fewest(sheets, () => layOut(jobSheet(main, sides), sheets, footOf(main)));
    fillVehicle(view);
    const count = sheets.childElementCount;
    if (state)
      say(
        state,
        `${count} ${count === 1 ? 'sheet' : 'sheets'}${buildWords() === '' ? '' : `, ${buildWords()}`}`,
      );
  };
  const show = (): void => {
    document.documentElement.classList.add('on-sheets');
    view.hidden = false;
    fill();
    window.scrollTo(0, 0);
    view.querySelector<HTMLElement>('.paper-print')?.focus({ preventScroll: true });
  };
  const leave = (): void => {
    document.documentElement.classList.remove('on-sheets', 'on-letter');
    view.hidden = true;
    sheets.replaceChildren();
    offer.scrollIntoView();
    offer.querySelector<HTMLElement>('button')?.focus({ preventScroll: true });
  };
  const bar = view.querySelector('.paper-buttons');
  bar?.append(
    button('paper-print', 'Print these sheets', () => void printWhole(sheets)),
    button('paper-leave', 'Back to the guide', leave),
  );
  for (const paper of papers) paper.addEventListener('change', fill);
  const tell = (): void => {
    fillVehicle(document);
    tellVehicle(main);
  };
  view.addEventListener('input', ({ target }) => {
    if (target instanceof HTMLInputElement && target.dataset.fact) tell();
  });
  view.addEventListener('keydown', ({ key }) => {
    if (key === 'Escape') leave();
  });
  offer.querySelector('.buttons')?.append(
    button('paper-job', 'Job sheet', show),
    button('paper-whole', 'Whole guide', () => window.print()),
  );
  document.body.append(view);
  offer.hidden = false;
  // A browser may have kept what was typed through a reload.
  tell();
  mendSheets(main);
}

/** Makes pictures smaller where that saves a sheet. */
function fewest(sheets: HTMLElement, fill: () => void): void {
  sheets.dataset.pictures = '';
  fill();
  const usual = [...sheets.children];
  sheets.dataset.pictures = 'small';
  fill();
  if (sheets.childElementCount < usual.length) return;
  sheets.dataset.pictures = '';
  sheets.replaceChildren(...usual);
}

/** Prints when all pictures are there. */
async function printWhole(sheets: HTMLElement): Promise<void> {
  const pictures = [...sheets.querySelectorAll('img')];
  await Promise.all(pictures.map((picture) => picture.decode().catch(() => undefined)));
  window.print();
}

/** The foot of each sheet: by it a sheet that lies alone is known. */
function footOf(main: HTMLElement): (number: number, of: number) => HTMLElement {
  const [title, build] = [wordsIn(main.querySelector('h1')), buildWords()];
  const identity = [...main.querySelectorAll('.head .identity > div')].flatMap((entry) => {
    const [label, value] = [wordsIn(entry.querySelector('dt')), wordsIn(entry.querySelector('dd'))];
    if (label === 'Revision') return `Revision ${value}`;
    return label === 'Fingerprint' ? value : [];
  });
  const vehicle = () => {
    const value = make('b', '');
    value.dataset.factOf = 'identity';
    return value;
  };
  const field = main.querySelector('.cover .job th');
  return (number, of) =>
    make(
      'footer',
      'paper-foot',
      make('b', '', title),
      ...identity.map((words) => make('span', '', words)),
      make('b', 'paper-number', `Sheet ${number} of ${of}`),
      make('span', 'paper-build', build === '' ? '' : `Build: ${build}`),
      make('span', 'paper-vehicle', `${wordsIn(field)}: `, vehicle()),
    );
}
