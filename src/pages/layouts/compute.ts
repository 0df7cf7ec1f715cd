import {
  type Context,
  Drop,
  evalToken,
  type Filter,
  type Token,
  TypeGuards,
  toValueSync,
  Value,
} from 'liquidjs';

/** Works a value of a layout out of what it can see. */
type Compute = (context: Context) => unknown;

/** A value with its operators and filters. */
export function computeValue({ initial, filters: applied }: Value): Compute {
  const first = computePostfix(initial.postfix);
  return applied
    .map(computeFilter)
    .reduce<Compute>((compute, filter) => (context) => filter(compute(context), context), first);
}

/** Operands and operators in the order in which a stack takes them. */
function computePostfix(tokens: readonly Token[]): Compute {
  const [only] = tokens;
  if (only && tokens.length === 1) return computeToken(only);
  const parts = tokens.map((token) =>
    TypeGuards.isOperatorToken(token) ? token.operator : computeToken(token),
  );
  return (context) => {
    const operands: unknown[] = [];
    for (const part of parts) {
      if (typeof part !== 'string') {
        operands.push(part(context));
        continue;
      }
      const right = operands.pop();
      // `not` is the one operator with a single operand.
      const result =
        part === 'not' ? own(part, context)(right, context) : operate(part, operands.pop(), right, context);
      operands.push(result);
    }
    return operands[0];
  };
}

/** A comparison of two plain values, at once; of any others, as Liquid makes it. */
export function operate(operator: string, left: unknown, right: unknown, context: Context): unknown {
  if (typeof left === typeof right && (typeof left === 'string' || typeof left === 'number')) {
    if (operator === '==') return left === right;
    if (operator === '!=') return left !== right;
  }
  if (typeof left === 'number' && typeof right === 'number') {
    if (operator === '>') return left > right;
    if (operator === '<') return left < right;
  }
  return own(operator, context)(left, right, context);
}

/** An operator of Liquid's own; `not` takes one operand. */
function own(operator: string, { opts }: Context) {
  const known = opts.operators[operator] as ((...operands: unknown[]) => unknown) | undefined;
  if (!known) throw new Error(`the operator ${operator} is unknown`);
  return (...operands: unknown[]) => toValueSync(known(...operands));
}

function computeFilter(filter: Filter): (value: unknown, context: Context) => unknown {
  // Most of what a page puts out has nothing in it to escape.
  if (filter.name === 'escape') {
    return (value, context) =>
      typeof value === 'string' && !/[&<>"']/.test(value)
        ? value
        : toValueSync(filter.render(value, context));
  }
  return (value, context) => toValueSync(filter.render(value, context));
}

/** A literal, or a name with its properties; whatever else, Liquid works out. */
export function computeToken(token: Token): Compute {
  const byLiquid: Compute = (context) => toValueSync(evalToken(token, context));
  if ('content' in token) return () => token.content;
  if (!TypeGuards.isPropertyAccessToken(token) || token.variable) return byLiquid;
  const keys = token.props.map((prop) => ('content' in prop ? prop.content : null));
  if (!keys.every((key) => typeof key === 'string')) return byLiquid;
  return (context) => {
    let value: unknown = scopeOf(context, keys[0] ?? '');
    for (const key of keys) {
      if (typeof value !== 'object' || value === null) return byLiquid(context);
      value =
        Object.hasOwn(value, key) && !(value instanceof Drop)
          ? value[key as keyof typeof value]
          : context.readProperty(value, key);
      // Liquid tells what is unknown, with its place.
      if (value === undefined || typeof value === 'function') return byLiquid(context);
    }
    return value;
  };
}

/** What a tag takes: a value with filters, or a bare token. */
export function computeArgument(argument: Value | Token): Compute {
  return argument instanceof Value ? computeValue(argument) : computeToken(argument);
}

/** The innermost scope that knows a name. */
function scopeOf(context: Context, name: string): object {
  return (context as unknown as ScopeSearch).findScope(name);
}

/** What Liquid's context keeps to itself. */
interface ScopeSearch {
  readonly findScope: (name: string) => object;
}
