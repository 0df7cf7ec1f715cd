import type { Build, When } from '../../model/when.ts';

/** Whether a condition holds for a build. An option that the build does not know counts as not fitted. */
export function holds(when: When, build: Build): boolean {
  return evaluate(when, build) === true;
}

/** Whether all of several conditions hold for a build. */
export function allHold(whens: readonly When[], build: Build): boolean {
  return whens.every((when) => holds(when, build));
}

/**
 * The value of a condition for a build of which only some options are settled: `null` where the others
 * decide. An option whose value is `null` is not settled yet.
 */
export function evaluate(
  when: When,
  build: { readonly [option: string]: boolean | string | null },
): boolean | null {
  switch (when.kind) {
    case 'has': {
      const value = build[when.option];
      return value === null ? null : value === true;
    }
    case 'is': {
      const value = build[when.option];
      return value === null ? null : value === when.value;
    }
    case 'not': {
      const value = evaluate(when.of, build);
      return value === null ? null : !value;
    }
    case 'and':
    case 'or': {
      const decides = when.kind === 'or';
      const values = when.of.map((part) => evaluate(part, build));
      if (values.includes(decides)) return decides;
      return values.includes(null) ? null : !decides;
    }
  }
}

/** A text that two conditions share when they are written alike, apart from their places. */
export function whenKey(when: When): string {
  switch (when.kind) {
    case 'has':
      return when.option;
    case 'is':
      return `${when.option}=${when.value}`;
    case 'not':
      return `!${whenKey(when.of)}`;
    case 'and':
    case 'or':
      return `(${when.of.map(whenKey).join(when.kind === 'and' ? '&' : '|')})`;
  }
}

/** The options that a condition asks about. */
export function optionsIn(when: When): readonly string[] {
  switch (when.kind) {
    case 'has':
    case 'is':
      return [when.option];
    case 'not':
      return optionsIn(when.of);
    case 'and':
    case 'or':
      return when.of.flatMap(optionsIn);
  }
}
