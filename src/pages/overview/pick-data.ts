/**
 * What the page's script looks up, so that the browser never works anything out: which plan a build belongs
 * to, and the QR code of each.
 */
export interface PickTable {
  readonly options: readonly string[];
  /** Plan by build: the values of the options in their order, parted by commas ("yes,led"). */
  readonly builds: { readonly [key: string]: number };
  /** What sets the builds of each plan apart, for the head of a printed sheet. */
  readonly statements: readonly string[];
  /** The codes of the page and of each plan; empty where the shop has no address. */
  readonly codes: readonly PlanCode[];
}

/** The QR code of the page as it shows a plan. */
export interface PlanCode {
  /** `null` for the page on which all builds stand. */
  readonly plan: number | null;
  readonly address: string;
  /** Its modules: see `qrModules`. */
  readonly modules: string;
}
