/**
 * A function that works out what is asked of an object only once: many rules and views ask a guide for the same.
 * The object must never change; what was worked out is forgotten with it.
 */
export function oncePer<Of extends object, Result>(work: (of: Of) => Result): (of: Of) => Result {
  const known = new WeakMap<Of, { readonly result: Result }>();
  return (of) => {
    const before = known.get(of);
    if (before) return before.result;
    const result = work(of);
    known.set(of, { result });
    return result;
  };
}

/** A function that works something out the first time that it is asked, for as long as the process runs. */
export function once<Result>(work: () => Result): () => Result {
  let known: { readonly result: Result } | null = null;
  return () => {
    known ??= { result: work() };
    return known.result;
  };
}
