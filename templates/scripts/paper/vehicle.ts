import { say } from '../bay/elements.ts';
import { sayAtHead } from '../guide/sheet-heads.ts';
import { wordsIn } from './copy.ts';

/**
 * Writes what was typed of the vehicle, by hand or from its record, wherever a print has a place for it; an empty place
 * is written on by hand.
 */
export function fillVehicle(place: ParentNode): void {
  const typed = typedFacts();
  for (const to of place.querySelectorAll<HTMLElement>('[data-fact-of]')) {
    say(to, typed.get(to.dataset.factOf) ?? '');
  }
}

function typedFacts(): ReadonlyMap<string | undefined, string> {
  const fields = [...document.querySelectorAll<HTMLInputElement>('input[data-fact]')];
  return new Map(fields.map(({ dataset, value }) => [dataset.fact, value.trim()]));
}

const heads = new CSSStyleSheet();

/** The head of each sheet of the whole guide tells the vehicle; without one there is a line to write it on. */
export function tellVehicle(main: HTMLElement): void {
  sayAtHead(heads, 'right', typedFacts().get('identity') ? vehicleWords(main, '') : '');
}

/** "Vehicle registration or VIN: QL 4711". @param blank what stands there where nothing was typed */
export function vehicleWords(main: HTMLElement, blank: string): string {
  return `${wordsIn(main.querySelector('.cover .job th'))}: ${typedFacts().get('identity') || blank}`;
}
