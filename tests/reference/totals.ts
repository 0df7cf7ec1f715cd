import type { GuideJson } from '../../src/pages/guide/guide-schema.ts';

/**
 * Sums over a guide's JSON, written without a look at how Baybook computes: what a shop with a spreadsheet would
 * do. Only the type of the data is shared.
 */

type Step = GuideJson['sections'][number]['steps'][number];
type Build = GuideJson['plans'][number]['builds'][number];

/** Whether `fog and not (sensors or lamps is led)` holds for a build; `null` holds for all. */
export function holds(when: string | null, build: Build): boolean {
  if (when === null) return true;
  const words = when.match(/[()]|[^\s()]+/g) ?? [];
  let at = 0;
  const next = () => words[at++] ?? '';
  const one = (): boolean => {
    const word = next();
    if (word === 'not') return !one();
    if (word === '(') {
      const value = any();
      next();
      return value;
    }
    if (words[at] !== 'is') return build[word] === true;
    next();
    return build[word] === next();
  };
  // Every operand is read, whatever the first says.
  const all = (): boolean => {
    let value = one();
    while (words[at] === 'and') {
      next();
      value = one() && value;
    }
    return value;
  };
  const any = (): boolean => {
    let value = all();
    while (words[at] === 'or') {
      next();
      value = all() || value;
    }
    return value;
  };
  return any();
}

/** The steps that a build does. */
export function stepsOf(json: GuideJson, build: Build): readonly Step[] {
  return json.sections.flatMap(({ steps }) => steps.filter(({ when }) => holds(when, build)));
}

/** What the steps come to, in minutes, and labour in tenths of an hour. */
export interface Totals {
  readonly least: number;
  readonly likely: number;
  readonly most: number;
  readonly mean: number;
  readonly spread: number;
  /** Where a second person is needed, likely. */
  readonly shared: number;
  readonly waiting: number;
  readonly labour: number;
}

/** PERT (Malcolm and others, 1959): mean (a + 4m + b)/6, deviation (b - a)/6, squares of which add. */
export function totalsOf(steps: readonly Step[]): Totals {
  const done = steps.flatMap((step) => {
    if (step.time === null) return [];
    const one = { ...step.time, people: step.people };
    return step.side === 'each' ? [one, one] : [one];
  });
  const sum = (of: (one: (typeof done)[number]) => number) => done.reduce((total, one) => total + of(one), 0);
  const mean = (one: (typeof done)[number]) => (one.least + 4 * one.likely + one.most) / 6;
  return {
    least: sum(({ least }) => least),
    likely: sum(({ likely }) => likely),
    most: sum(({ most }) => most),
    mean: sum(mean),
    spread: Math.sqrt(sum(({ least, most }) => ((most - least) / 6) ** 2)),
    shared: sum(({ likely, people }) => (people > 1 ? likely : 0)),
    waiting: steps.reduce((total, { wait }) => total + (wait ?? 0), 0),
    labour: Math.round(sum((one) => mean(one) * one.people) / 6 + 1e-9) / 10,
  };
}

/** How much of a supply the actions of a build use, in its base unit; `null` where none says. */
export function usedOf(supply: string, steps: readonly Step[], build: Build): number | null {
  const amounts = steps.flatMap((step) =>
    step.actions
      .filter(({ target, when }) => target === supply && when.every((one) => holds(one, build)))
      .flatMap(({ amount }) => (amount ? [amount.base * (step.side === 'each' ? 2 : 1)] : [])),
  );
  return amounts.length > 0 ? amounts.reduce((total, one) => total + one, 0) : null;
}
