/** A typed value of the trade (a drive, a thread, a wire size) that cannot be used, and the likely mend. */
export interface TradeProblem {
  readonly ok: false;
  /** What was found and what was expected, without a closing full stop. */
  readonly message: string;
  /** Text to put in the place of the whole value, where there is one likely meaning. */
  readonly suggestion?: string;
}

/** Makes a problem. */
export function tradeProblem(message: string, suggestion?: string): TradeProblem {
  return { ok: false, message, ...(suggestion === undefined ? {} : { suggestion }) };
}
