/**
 * Whether a revision is higher than another: numbers by their size, letters by the alphabet, part by part, so that 10
 * comes after 9, B after A and 2.1 after 2.
 */
export function isRaised(from: string, to: string): boolean {
  const [old, now] = [parts(from), parts(to)];
  for (let place = 0; place < Math.max(old.length, now.length); place += 1) {
    const [one, other] = [old[place], now[place]];
    if (one === undefined || other === undefined) return other !== undefined;
    if (one === other) continue;
    const numbers = typeof one === 'number' && typeof other === 'number';
    return numbers ? other > one : String(other) > String(one);
  }
  return false;
}

/** A revision that can be the name of a file on every system. */
export function isNameable(revision: string): boolean {
  return /^[a-z0-9](?:[a-z0-9.-]{0,30}[a-z0-9])?$/i.test(revision);
}

function parts(revision: string): readonly (number | string)[] {
  return (revision.toLowerCase().match(/\d+|[a-z]+/g) ?? []).map((part) =>
    /^\d/.test(part) ? Number(part) : part,
  );
}
