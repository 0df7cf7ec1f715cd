/** What the part of the address after `#` says: `#build=fog:yes,lamps:led&at=arch`, or a plain `#arch`. */
export interface Address {
  /** Choices by option; `null` where the link names no build. */
  readonly build: ReadonlyMap<string, string> | null;
  /** The place on the page; `null` for its beginning. */
  readonly at: string | null;
}

/** Reads the address of the page; whatever someone has typed there, the page goes on. */
export function readAddress(hash: string = location.hash): Address {
  const text = hash.slice(1);
  if (!/(?:^|&)build=/.test(text)) return { build: null, at: text === '' ? null : text };
  const parameters = new URLSearchParams(text);
  return { build: readBuild(parameters.get('build') ?? ''), at: parameters.get('at') };
}

/** Choices by option, from `fog:yes,lamps:led`; what is no choice is left out. */
export function readBuild(text: string): ReadonlyMap<string, string> {
  const pairs = text.split(',').flatMap((pair): [string, string][] => {
    const [option, value] = pair.split(':');
    return option && value ? [[option, value]] : [];
  });
  return new Map(pairs);
}

/** The other way round. */
export function buildText(build: ReadonlyMap<string, string>): string {
  return [...build].map(([option, value]) => `${option}:${value}`).join(',');
}

/** Keeps the pick in the address, so that the link, a copy of it and the way back show the same build. */
export function writeAddress(build: ReadonlyMap<string, string>, at: string | null): void {
  const choices = buildText(build);
  const place = at === null ? '' : `at=${at}`;
  const parts = [choices === '' ? '' : `build=${choices}`, choices === '' ? (at ?? '') : place];
  const hash = parts.filter((part) => part !== '').join('&');
  history.replaceState(null, '', hash === '' ? location.pathname + location.search : `#${hash}`);
}
