import { expect } from 'vitest';

/** Compares bytes as bytes: the runner would look at each of them as at a property, which takes seconds for a site. */
expect.addEqualityTesters([
  (a: unknown, b: unknown) =>
    a instanceof Uint8Array && b instanceof Uint8Array ? Buffer.compare(a, b) === 0 : undefined,
]);
