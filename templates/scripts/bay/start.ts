import type { BayData } from '../../../src/pages/guide/bay-data.ts';
import { readAddress } from '../guide/address.ts';
import type { Picker } from '../guide/picker.ts';
import type { PickTable } from '../guide/plan.ts';
import { startPaper } from '../paper/start.ts';
import { evidenceBoxes, gatherBoxes, proofBoxes, roundBoxes } from './boxes.ts';
import { say } from './elements.ts';
import { keepFields, numbered } from './field.ts';
import { startFolds } from './folds.ts';
import { type Keeper, openKeeper } from './kept/keeper.ts';
import { startMove } from './kept/move.ts';
import { startMap } from './map.ts';
import { linkWords, showNews } from './news.ts';
import { startAwake } from './screen/awake.ts';
import { startScreen } from './screen/screen.ts';
import { addWaits, showRunning } from './screen/waits.ts';
import { fillSheets } from './sheets.ts';
import { holdSignOff } from './sign-off.ts';
import { addTicks } from './ticks.ts';
import { readingFields, torqueFields } from './typed.ts';
import { addVerdicts } from './verdicts.ts';
import { startZones } from './zones.ts';

/**
 * The guide in the bay: ticks, readings and waits that the device keeps, one step at a time, a screen that
 * stays on. All of it is added to a page that is whole without it.
 */
export function startBay(table: PickTable | null, picker: Picker): Keeper | null {
  const text = document.getElementById('bay_data')?.textContent;
  const panel = document.querySelector<HTMLElement>('.bay');
  if (!text || !panel) return null;
  const page: BayData = JSON.parse(text);
  const fields = numbered([
    ...readingFields(page),
    ...torqueFields(page),
    ...evidenceBoxes(page),
    ...roundBoxes(),
    ...gatherBoxes(),
    ...proofBoxes(),
  ]);
  const asked = new Map(fields.map(({ key, asked: words }) => [key, words]));
  const keeper = openKeeper(page, asked, picker);
  // A link that names a build says which vehicle is meant; any other leads back to the one that was picked.
  if (readAddress().build === null) picker.show(keeper.now().build);
  picker.onPick(() => keeper.change((progress) => progress));
  // What was found belongs to the job that was begun.
  picker.onFind(() => keeper.change((progress) => ({ ...progress, build: picker.shown() })));
  addTicks(keeper);
  addWaits(keeper);
  keepFields(fields, keeper);
  addVerdicts(fields, keeper);
  fillSheets(fields, keeper);
  holdSignOff(fields, keeper);
  startPanel(keeper, table);
  panel.hidden = false;
  startPaper(page);
  return keeper;
}

function startPanel(keeper: Keeper, table: PickTable | null): void {
  const find = (name: string) => document.querySelector<HTMLElement>(name);
  const [news, link, move] = [find('.bay-news'), find('.bay-link'), find('.bay-move')];
  const awake = document.querySelector<HTMLButtonElement>('.bay-awake');
  if (news) showNews(news, keeper);
  if (move) startMove(move, keeper);
  if (awake) startAwake(awake, [...document.querySelectorAll('.bay-awake-state')]);
  const running = find('.bay-runs');
  if (running) showRunning(running, keeper);
  startScreen(keeper);
  const main = find('main');
  if (main) {
    startFolds(main, keeper);
    startMap(main, keeper);
    startZones(main);
  }
  if (link) {
    const look = () => say(link, linkWords(table));
    look();
    window.addEventListener('hashchange', look);
    keeper.picker.onPick(look);
  }
}
