/** A typed value of the trade (a drive, a thread, a wire size) that cannot be used, and the likely mend. */
export interface TradeProblem {
  readonly ok: false;
  /** What was found and what was expected, without a closing full stop. */
  readonly message: string;
  /** Text to put in the place of the whole value, where there is one likely meaning. */
  readonly suggestion?: string;
}

/** Makes a problem. */
export function tradeProblem(message: string, suggestion?: string | undefined): TradeProblem {
  return { ok: false, message, ...(suggestion === undefined ? {} : { suggestion }) };
}

/** A decimal comma, if the text has one; the point is suggested where the mended text would be accepted. */
export function decimalComma(text: string, accepts: (mended: string) => boolean): TradeProblem | undefined {
  if (!/\d,\d/.test(text)) return undefined;
  const mended = text.replace(/(\d),(?=\d)/g, '$1.');
  return tradeProblem(
    `"${text}" has a decimal comma; write a decimal point`,
    accepts(mended) ? mended : undefined,
  );
}
