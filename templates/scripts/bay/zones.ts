import { button, make } from './elements.ts';

/**
 * The drawing of the vehicle over the page: a touch on it, at a step or on the bay screen, opens what is done in its
 * zone, and from there every zone and every step is one touch away. Without this the same links lead to the list of
 * the zone on the page.
 */
export function startZones(main: HTMLElement): void {
  const where = main.querySelector<HTMLElement>('.where');
  const drawing = where?.querySelector('svg');
  const title = where?.querySelector('h2')?.textContent ?? '';
  if (!where || !drawing) return;
  const dialog = make('dialog', 'bay-zones');
  dialog.setAttribute('aria-label', title);
  const place = make('div', '');
  dialog.append(
    make(
      'p',
      'buttons',
      button('bay-shut', 'Back', () => dialog.close()),
    ),
    place,
  );
  main.append(dialog);
  const lists = [...where.querySelectorAll<HTMLElement>('.zone')];

  const show = (id: string): boolean => {
    const list = lists.find((one) => one.id === id);
    if (!list) return false;
    place.replaceChildren(
      withoutIds(drawing, id),
      make('nav', 'zone-names', ...lists.map((one) => linkTo(one, one === list))),
      withoutIds(list, id),
    );
    return true;
  };

  main.addEventListener('click', (event) => {
    const link = event.target instanceof Element ? event.target.closest('a') : null;
    const id = link?.getAttribute('href')?.slice(1) ?? '';
    if (!link || !(link.closest('dialog') === dialog || link.matches('.place, .bay-where, .vehicle a')))
      return;
    if (show(id)) {
      event.preventDefault();
      if (dialog.open) place.querySelector<HTMLElement>('.zone-names [aria-current]')?.focus();
      else dialog.showModal();
    } else dialog.close();
  });
}

/** The lit drawing of a step, on the head of the bay screen; out of sight for what is no step of a zone. */
export function showPlace(link: HTMLAnchorElement | null, step: HTMLElement | null): void {
  if (!link) return;
  const from = step?.querySelector<HTMLAnchorElement>('.place');
  link.hidden = !from;
  if (!from) return;
  link.setAttribute('href', from.getAttribute('href') ?? '');
  link.setAttribute('aria-label', from.getAttribute('aria-label') ?? '');
  link.replaceChildren(...[...from.childNodes].map((node) => node.cloneNode(true)));
}

function linkTo(zone: HTMLElement, isHere: boolean): HTMLAnchorElement {
  const link = make('a', '', zone.querySelector('h3')?.textContent ?? '');
  link.href = `#${zone.id}`;
  if (isHere) link.setAttribute('aria-current', 'true');
  return link;
}

/** A copy that gives no name a second time; what leads to the zone that is shown says so. */
function withoutIds(from: Element, zone: string): Element {
  const copy = from.cloneNode(true);
  if (!(copy instanceof Element)) return from;
  copy.querySelector('defs')?.remove();
  for (const one of [copy, ...copy.querySelectorAll('[id]')]) one.removeAttribute('id');
  copy.removeAttribute('aria-labelledby');
  copy.querySelector(`a[href="#${zone}"]`)?.setAttribute('aria-current', 'true');
  return copy;
}
