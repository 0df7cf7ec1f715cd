import type { SearchData } from '../../src/site/search-data.ts';
import { type Found, searchEngine, type Wish } from './search-engine.ts';
import { resultItem } from './search-results.ts';

/** Results that are shown at most; who needs more adds a word. */
const MOST = 30;

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
  const { box, text, kind, platform, list } = controls;
  const search = searchEngine(data);
  const announce = announcer(controls.state);
  const show = (): void => {
    const wish = readWish(controls);
    const isAsked = wish.text !== '' || wish.kind !== null || wish.platform !== null;
    const found = isAsked ? search(wish) : null;
    showFound(found, controls);
    announce(found);
  };
  const changed = (): void => {
    show();
    writeLink(readWish(controls));
  };
  box.hidden = false;
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
  readLink(controls);
  show();
}

function readWish({ text, kind, platform }: Controls): Wish {
  return { text: text.value.trim(), kind: kind.value || null, platform: platform.value || null };
}

/** Shows what was found in the place of the shelves; `null` brings the shelves back. */
function showFound(found: Found | null, { list, shelves }: Controls): void {
  shelves.hidden = found !== null;
  list.replaceChildren(...(found?.hits.slice(0, MOST) ?? []).map(resultItem));
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

function stateWords({ hits, all }: Found, nothing: string): string {
  if (hits.length === 0) return nothing;
  const pages = hits.length === 1 ? '1 page' : `${hits.length} pages`;
  const count = hits.length > MOST ? `The first ${MOST} of ${pages}. Add a word to find fewer.` : `${pages}.`;
  return all ? count : `No page has all of these words. ${count}`;
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

const { searchData } = globalThis as { readonly searchData?: SearchData };
const box = document.querySelector<HTMLElement>('[role="search"]');
const controls = box && controlsOf(box);
if (controls && searchData) start(controls, searchData);
