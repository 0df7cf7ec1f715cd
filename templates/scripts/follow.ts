import { button, make } from './bay/elements.ts';
import { readAddress, writeAddress } from './guide/address.ts';

/** Under which the page that is left tells the next where the edit was. */
const PLACE = 'baybook preview place';

/**
 * Lets a page of the preview follow the pen: it is loaded anew when its guide has changed, at the place that was
 * edited, with the build that was picked; and what is wrong with the guide stands over it.
 */
const own = document.currentScript;
if (own instanceof HTMLScriptElement) follow(own);

/** What the server tells, as `News` of the preview. */
interface Told {
  readonly edition: string | null;
  readonly place: string | null;
  readonly errors: number;
  readonly warnings: number;
  readonly told: string;
}

function follow(script: HTMLScriptElement): void {
  const { page = '', edition = '', bench = '' } = script.dataset;
  goTo(sessionStorage.getItem(PLACE));
  sessionStorage.removeItem(PLACE);
  const panel = addPanel(new URL('panel.css', script.src).href, bench);
  const address = new URL('news', script.src);
  address.searchParams.set('page', page);
  const news = new EventSource(address);
  news.addEventListener('message', ({ data }) => {
    const told: Told = JSON.parse(data);
    if ((told.edition ?? '') !== edition) reload(told.place);
    else panel.show(told);
  });
  news.addEventListener('error', () => panel.lost());
}

function reload(place: string | null): void {
  if (place !== null) {
    sessionStorage.setItem(PLACE, place);
    writeAddress(readAddress().build ?? new Map(), place);
  }
  location.reload();
}

/** Another place than before is scrolled to; a place that this build has not leaves the page where it is. */
function goTo(place: string | null): void {
  const element = place === null ? null : document.getElementById(place);
  if (!element?.checkVisibility()) return;
  // The browser puts the page back where it was once it is loaded.
  const go = (): void => element.scrollIntoView({ block: 'start' });
  if (document.readyState === 'complete') go();
  else window.addEventListener('load', () => requestAnimationFrame(go));
}

interface Panel {
  readonly show: (told: Told) => void;
  readonly lost: () => void;
}

/** The panel stands in a tree of its own, so that no style of the page reaches it, nor the other way round. */
function addPanel(style: string, bench: string): Panel {
  const host = make('div', '');
  host.id = 'baybook_preview';
  const root = host.attachShadow({ mode: 'open' });
  const sheet = make('link', '');
  sheet.rel = 'stylesheet';
  sheet.href = style;
  const link = make('a', 'to-bench', 'Pictures of this guide');
  link.href = bench;
  const always = bench === '' ? [sheet] : [sheet, link];
  root.append(...always);
  document.body.append(host);
  const set = (className: string, head: string, text: string): void => {
    if (head === '') {
      root.replaceChildren(...always);
      return;
    }
    const panel = make('div', className, make('strong', '', head), make('pre', '', text));
    panel.prepend(button('', 'Put away', () => root.replaceChildren(...always)));
    panel.setAttribute('role', 'status');
    root.replaceChildren(...always, panel);
  };
  return {
    show: ({ errors, warnings, told, edition }) => {
      const over = edition === null ? '' : '. Below is the last good page';
      if (errors > 0) set('panel errors', `${counted(errors, 'error')}${over}`, told);
      else set('panel', warnings > 0 ? counted(warnings, 'warning') : '', told);
    },
    lost: () => set('panel', 'The preview has ended. This page no longer follows the guide.', ''),
  };
}

function counted(count: number, noun: string): string {
  return `${count} ${noun}${count === 1 ? '' : 's'}`;
}
