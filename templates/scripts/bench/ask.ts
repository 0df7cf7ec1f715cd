/** What the bench of the preview answers. */
export type Answer<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problem: string };

/** Where something is asked of the bench, or told to it. */
export function benchAddress(what: string, guide: string, src: string | null = null): string {
  const words = new URLSearchParams({ guide, ...(src === null ? {} : { src }) });
  return `/~preview/bench/${what}?${words}`;
}

/** Asks the bench, or sends it an order or a file. */
export async function askBench<T>(address: string, order: unknown): Promise<Answer<T>> {
  const body = order === null ? null : order instanceof Blob ? order : JSON.stringify(order);
  try {
    const answer = await fetch(address, { method: body === null ? 'GET' : 'POST', body });
    const value = await answer.json().catch(() => ({ problem: `the preview answered ${answer.status}` }));
    return answer.ok ? { ok: true, value } : { ok: false, problem: value.problem };
  } catch {
    return { ok: false, problem: 'the preview has ended; start it again' };
  }
}
