/**
 * What the page's script looks up, so that the browser never works anything out: which plan a build belongs
 * to, and the QR code of each.
 */
export interface PickTable {
  readonly options: readonly string[];
  /** Those of the options that are known only once an inspection has found them. */
  readonly inspections: readonly string[];
  /** Plan by build: the values of the options in their order, parted by commas ("yes,led"). */
  readonly builds: { readonly [key: string]: number };
  /** What sets the builds of each plan apart, for the head of a printed sheet. */
  readonly statements: readonly string[];
  /** The code of the page, then of each plan; empty where the shop has no address. */
  readonly codes: readonly PlanCode[];
}

/** A QR code: what its address has behind that of the page, and its modules (see `qrModules`). */
export type PlanCode = readonly [fragment: string, modules: string];
