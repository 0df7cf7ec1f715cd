import type { BayData } from '../../../src/pages/bay-data.ts';
import type { PickTable } from '../plan.ts';
import { startAwake } from './awake.ts';
import { say } from './elements.ts';
import { findFields, keepFields } from './fields.ts';
import { openKeeper } from './keeper.ts';
import { startMove } from './move.ts';
import { linkWords, showNews } from './news.ts';
import { startOneStep } from './one-step.ts';
import { addTicks } from './ticks.ts';
import { addWaits } from './waits.ts';

/**
 * The guide in the bay: ticks, readings and waits that the device keeps, one step at a time, a screen that
 * stays on. All of it is added to a page that is whole without it.
 */
export function startBay(table: PickTable | null): void {
  const text = document.getElementById('bay_data')?.textContent;
  const panel = document.querySelector<HTMLElement>('.bay');
  if (!text || !panel) return;
  const page: BayData = JSON.parse(text);
  const fields = findFields(new Set(page.steps.filter(({ sides }) => sides).map(({ id }) => id)));
  const asked = new Map(fields.map(({ key, asked: words }) => [key, words]));
  const keeper = openKeeper(page, asked);
  addTicks(page, keeper);
  addWaits(page, keeper);
  keepFields(fields, keeper);
  startPanel(panel, page, asked, keeper, table);
  panel.hidden = false;
}

function startPanel(
  panel: HTMLElement,
  page: BayData,
  asked: ReadonlyMap<string, string>,
  keeper: ReturnType<typeof openKeeper>,
  table: PickTable | null,
): void {
  const find = (name: string) => document.querySelector<HTMLElement>(name);
  const press = (name: string) => document.querySelector<HTMLButtonElement>(name);
  const [news, link, move] = [find('.bay-news'), find('.bay-link'), find('.bay-move')];
  const [main, bar] = [find('main'), find('.bay-turn')];
  const [toggle, back, next, all] = [
    press('.bay-one'),
    press('.bay-back'),
    press('.bay-next'),
    press('.bay-all'),
  ];
  const awake = press('.bay-awake');
  if (news) showNews(news, page, keeper);
  if (move) startMove(move, page, asked, keeper);
  if (awake) startAwake(awake, [...document.querySelectorAll('.bay-awake-state')]);
  if (main && bar && toggle && back && next && all) startOneStep(main, { toggle, bar, back, next, all });
  if (link) {
    const look = () => say(link, linkWords(table));
    look();
    window.addEventListener('hashchange', look);
    panel.closest('main')?.addEventListener('change', look);
  }
}
