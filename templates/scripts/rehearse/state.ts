import type { StateName } from '../../../src/model/violation.ts';
import type { RehearsalData } from '../../../src/pages/rehearsal/rehearsal-data.ts';
import { capitalised, make } from '../bay/elements.ts';
import type { Standing } from './session.ts';
import type { Speaker } from './words.ts';

/** How a fastener or a plug is drawn: full, half or empty. */
const signs: { readonly [S in StateName]?: 'full' | 'half' | 'empty' } = {
  tight: 'full',
  mated: 'full',
  started: 'half',
  loosened: 'half',
  off: 'empty',
  apart: 'empty',
};

const signWords: { readonly [S in StateName]?: string } = {
  tight: 'tight',
  mated: 'plugged in',
  started: 'only started',
  loosened: 'loosened',
  off: 'out',
  apart: 'unplugged',
};

/** More signs than these are told by their number. */
const MOST_SIGNS = 8;

/**
 * What is where, drawn simply: each thing a box, on the vehicle or on the bench, and in it a sign for each fastener
 * and plug that holds it. Whoever hears the page hears the same in words.
 */
export function drawState(standing: readonly Standing[], data: RehearsalData, say: Speaker): HTMLElement {
  const byIndex = new Map(standing.map((one) => [one.lot.index, one]));
  const at = (indexes: readonly number[]) => indexes.flatMap((index) => byIndex.get(index) ?? []);
  const isThing = ({ lot }: Standing) =>
    (lot.thing?.kind === 'part' || lot.thing?.kind === 'kit') && !lot.thing.fixing;
  const things = standing.filter(isThing);
  const shown = new Set(things.flatMap(({ lot }) => [...lot.heldBy, ...lot.plugs]));
  const loners = standing.filter(
    ({ lot }) => (lot.thing?.kind === 'fastener' || lot.thing?.kind === 'connector') && !shown.has(lot.index),
  );
  const box = (one: Standing) => thingBox(one, at([...one.lot.heldBy, ...one.lot.plugs]), say);
  const where = (...states: readonly StateName[]) => things.filter(({ state }) => states.includes(state));
  const onVehicle = [...where('in place', 'aside').map(box), ...loners.map((one) => signLine(one, say))];
  const bench = where('off').map(box);
  const boxed = where('in the box').map((one) => make('li', 'reh-thing reh-boxed', named(one, say)));
  const holds = standing.filter(
    ({ lot, state }) => state === 'holds' || state === 'set' || (state === 'on' && lot.thing?.temporary),
  );
  const set = [...new Set(holds.map(({ lot }) => data.names[lot.id]?.one ?? lot.id))].map((name) =>
    make('li', 'reh-set', capitalised(name)),
  );
  const immobile = standing.some(
    ({ lot, state }) =>
      lot.thing?.immobile && ['off', 'apart', 'started', 'loosened', 'aside', 'holds'].includes(state),
  );
  const { vehicle } = data.words;
  const section = make('section', 'reh-state', make('h2', '', 'As it stands'));
  section.append(
    ...(immobile ? [make('p', 'reh-pinned', `The ${vehicle} must not be moved.`)] : []),
    ...group(`On the ${vehicle}`, onVehicle),
    ...group('On the bench', bench),
    ...group('Still in the box', boxed),
    ...group('Set, and put on for a while', set),
  );
  return section;
}

function group(title: string, lines: readonly HTMLElement[]): readonly HTMLElement[] {
  return lines.length === 0 ? [] : [make('h3', '', title), make('ul', 'reh-things', ...lines)];
}

function named({ lot }: Standing, say: Speaker): string {
  return capitalised(say.thing(lot.id, lot.side ? [lot.side] : []).replace(/^the /, ''));
}

function thingBox(one: Standing, held: readonly Standing[], say: Speaker): HTMLElement {
  const { state, hangs } = one;
  const isFree = held.length > 0 && hangs && state === 'in place';
  const told = state === 'aside' ? ', moved aside' : isFree ? ', nothing holds it' : '';
  const own = held.filter((by) => signs[by.state] !== undefined);
  return make(
    'li',
    `reh-thing reh-${state === 'off' ? 'off' : state === 'aside' ? 'aside' : isFree ? 'free' : 'placed'}`,
    make('b', '', named(one, say) + told),
    ...(own.length > 0 ? [make('ul', 'reh-signs', ...own.map((by) => signLine(by, say)))] : []),
  );
}

/** A fastener or a plug: its name, a sign for each piece, and the same in words. */
function signLine(one: Standing, say: Speaker): HTMLElement {
  const { lot, state } = one;
  const sign = signs[state] ?? 'full';
  const row = make('span', 'reh-sign-row');
  row.setAttribute('aria-hidden', 'true');
  const form = lot.thing?.kind === 'connector' ? 'reh-plug' : 'reh-dot';
  const count = Math.min(lot.handled, MOST_SIGNS);
  for (let piece = 0; piece < count; piece += 1) row.append(make('i', `${form} reh-${sign}`));
  return make('li', 'reh-line', row, `${named(one, say)}: `, make('span', '', signWords[state] ?? state));
}
