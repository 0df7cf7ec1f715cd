/**
 * What the page's script looks up, so that the browser never works anything out: which plan a build belongs
 * to, and each step's number in each plan.
 */
export interface PickTable {
  readonly options: readonly string[];
  /** Plan by build: the values of the options in their order, parted by commas ("yes,led"). */
  readonly builds: { readonly [key: string]: number };
  readonly numbers: { readonly [step: string]: StepNumbers };
}

/** How a step is numbered. */
export interface StepNumbers {
  /** On the page on which all builds stand. */
  readonly every: number;
  /** In each plan; 0 where the plan leaves the step out. */
  readonly plans: readonly number[];
}
