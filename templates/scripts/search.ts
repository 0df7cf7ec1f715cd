import type { SearchData, SearchTexts } from '../../src/site/search/search-data.ts';
import { type Found, searchEngine, type Wish } from './search/search-engine.ts';
import { joinedSearch } from './search/search-parts.ts';
import { resultItem } from './search/search-results.ts';

/** Milliseconds without a key before the number of results is said aloud. */
const PAUSE = 400;

/** The controls of the search. */
interface Controls {
  readonly box: HTMLElement;
  readonly text: HTMLInputElement;
  readonly kind: HTMLSelectElement;
  readonly platform: HTMLSelectElement;
  readonly state: HTMLElement;
  readonly list: HTMLElement;
  /** What the page lists without a search. */
  readonly shelves: HTMLElement;
}

/**
 * The first page: finds pages while the technician types and keeps the search in the link, so that the way back
 * leads to the same results. Without this script the page lists everything.
 */
function start(controls: Controls, data: SearchData): void {
  const { text, kind, platform, list } = controls;
  const search = searchEngine(data);
  const announce = announcer(controls.state);
  const show = (): void => {
    const wish = readWish(controls);
    const found = isAsked(wish) ? search(wish) : null;
    showFound(found, controls);
    announce(found);
  };
  const changed = (): void => {
    show();
    writeLink(readWish(controls));
  };
  text.addEventListener('input', changed);
  kind.addEventListener('change', changed);
  platform.addEventListener('change', changed);
  text.addEventListener('keydown', ({ key, isComposing }) => {
    if (key === 'Enter' && !isComposing) list.querySelector('a')?.focus();
  });
  window.addEventListener('hashchange', () => {
    readLink(controls);
    show();
  });
  show();
}

/**
 * The same where the search is in parts: they are loaded when the technician turns to it, or comes by a link with a
 * search. What was typed meanwhile is then found.
 */
function startWhenOpened(controls: Controls, texts: SearchTexts): void {
  const { box, state } = controls;
  let isOpen = false;
  const open = (): void => {
    if (isOpen) return;
    isOpen = true;
    state.textContent = 'The search is being loaded.';
    joinedSearch(texts).then(
      (data) => {
        state.textContent = '';
        writeLink(readWish(controls));
        start(controls, data);
      },
      () => {
        isOpen = false;
        state.textContent = 'The search could not be loaded. All pages are listed below.';
      },
    );
  };
  const openIfAsked = (): void => {
    if (isAsked(readWish(controls))) open();
  };
  box.addEventListener('focusin', open);
  window.addEventListener('hashchange', () => {
    readLink(controls);
    openIfAsked();
  });
  openIfAsked();
}

function isAsked({ text, kind, platform }: Wish): boolean {
  return text !== '' || kind !== null || platform !== null;
}

function readWish({ text, kind, platform }: Controls): Wish {
  return { text: text.value.trim(), kind: kind.value || null, platform: platform.value || null };
}

/** Shows what was found in the place of the shelves; `null` brings the shelves back. */
function showFound(found: Found | null, { list, shelves }: Controls): void {
  shelves.hidden = found !== null;
  list.replaceChildren(...(found?.hits ?? []).map(resultItem));
}

/** Says how much was found once the typing pauses, so that a screen reader is not interrupted by each key. */
function announcer(state: HTMLElement): (found: Found | null) => void {
  let waiting = 0;
  return (found) => {
    window.clearTimeout(waiting);
    waiting = window.setTimeout(() => {
      state.textContent = found ? stateWords(found, state.dataset.nothing ?? '') : '';
    }, PAUSE);
  };
}

function stateWords({ hits, count, all }: Found, nothing: string): string {
  if (count === 0) return nothing;
  const pages = count === 1 ? '1 page' : `${count} pages`;
  const words =
    count > hits.length ? `The first ${hits.length} of ${pages}. Add a word to find fewer.` : `${pages}.`;
  return all ? words : `No page has all of these words. ${words}`;
}

/** The search as the part of the link after `#`. */
function writeLink(wish: Wish): void {
  const parts = Object.entries({ find: wish.text, show: wish.kind, vehicle: wish.platform });
  const hash = new URLSearchParams(parts.flatMap(([name, value]) => (value ? [[name, value]] : [])));
  history.replaceState(null, '', hash.size === 0 ? location.pathname + location.search : `#${hash}`);
}

/** What no choice of the page offers is left out: someone may have typed the link. */
function readLink({ text, kind, platform }: Controls): void {
  const hash = new URLSearchParams(location.hash.slice(1));
  text.value = hash.get('find') ?? '';
  choose(kind, hash.get('show'));
  choose(platform, hash.get('vehicle'));
}

function choose(select: HTMLSelectElement, value: string | null): void {
  select.value = value ?? '';
  if (select.selectedIndex < 0) select.value = '';
}

function controlsOf(box: HTMLElement): Controls | null {
  const text = box.querySelector('input');
  const [kind, platform] = box.querySelectorAll('select');
  const state = box.querySelector<HTMLElement>('[role="status"]');
  const list = box.querySelector<HTMLElement>('ol');
  const shelves = document.querySelector<HTMLElement>('.shelves');
  if (!text || !kind || !platform || !state || !list || !shelves) return null;
  return { box, text, kind, platform, state, list, shelves };
}

const { searchData, searchTexts } = globalThis as {
  readonly searchData?: SearchData;
  readonly searchTexts?: SearchTexts;
};
const box = document.querySelector<HTMLElement>('[role="search"]');
const controls = box && controlsOf(box);
if (controls && (searchData || searchTexts)) {
  controls.box.hidden = false;
  readLink(controls);
  if (searchData) start(controls, searchData);
  if (searchTexts) startWhenOpened(controls, searchTexts);
}
