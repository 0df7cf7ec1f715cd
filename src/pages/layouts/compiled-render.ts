import {
  AssignTag,
  CaseTag,
  type Context,
  Drop,
  type Emitter,
  ForTag,
  IfTag,
  isTruthy,
  type Liquid,
  LiquidError,
  Output,
  RenderError,
  RenderTag,
  type Template,
  TokenKind,
  toValue,
  toValueSync,
  UnlessTag,
} from 'liquidjs';
import { computeArgument, computeToken, computeValue, operate } from './compute.ts';
import { ForLoop } from './for-loop.ts';

/** Does one piece of a layout: writes what it puts out, or changes what the pieces after it read. */
type Step = (context: Context, emitter: Emitter) => void;

/** What a layout wrote for some values, and how much work that was. */
interface Written {
  readonly given: readonly unknown[];
  readonly text: string;
  readonly work: number;
}

/** Layouts that may stand within each other; the built-in ones need 7. */
const DEPTH_LIMIT = 100;

/** What {@link compiledRender} puts in the place of Liquid's own rendering. */
interface CompiledRender {
  readonly renderTemplates: (
    templates: Template[],
    context: Context,
    emitter?: Emitter,
  ) => IterableIterator<string>;
  /** Counts the work of a page from here. */
  readonly startPage: () => void;
}

/**
 * Liquid reads a layout into a tree, and walks it by generators each time. Here every list of the tree becomes
 * functions once. What a layout does a thousand times for a page (text, values, if, case, for, render) is compiled;
 * any other tag is Liquid's own, with its lists compiled in turn. Faults are Liquid's, with line and column.
 *
 * @param workLimit pieces that the layouts of one page may do
 * @param mark what each piece puts before its own output
 */
export function compiledRender(
  engine: Liquid,
  workLimit: number,
  mark?: (template: Template) => string,
): CompiledRender {
  const compiled = new WeakMap<readonly Template[], readonly (readonly [Template, Step])[]>();
  let work = 0;
  let depth = 0;

  const run = (templates: readonly Template[], context: Context, emitter: Emitter): void => {
    let steps = compiled.get(templates);
    if (!steps) {
      steps = templates.map((template) => [template, stepOf(template)] as const);
      compiled.set(templates, steps);
    }
    for (const [template, step] of steps) {
      work += 1;
      try {
        if (work > workLimit) throw new Error('the layout is still at work: has it a loop without an end?');
        if (mark) emitter.buffer += mark(template);
        step(context, emitter);
      } catch (error) {
        throw LiquidError.is(error) || !(error instanceof Error) ? error : new RenderError(error, template);
      }
      if (context.breakCalled || context.continueCalled) break;
    }
  };

  const stepOf = (template: Template): Step => {
    if (template.token.kind === TokenKind.HTML) return textStep(template);
    if (template instanceof Output) return outputStep(template);
    if (template instanceof IfTag || template instanceof UnlessTag) return ifStep(template);
    if (template instanceof CaseTag) return caseStep(template);
    if (template instanceof ForTag) return forStep(template);
    if (template instanceof AssignTag) return assignStep(template);
    if (template instanceof RenderTag) return renderStep(template);
    return ownStep(template);
  };

  const ifStep = ({ branches, elseTemplates = [] }: IfTag | UnlessTag): Step => {
    const ways = branches.map((branch) => ({
      test: 'test' in branch ? branch.test : isTruthy,
      compute: computeValue(branch.value),
      templates: branch.templates,
    }));
    return (context, emitter) => {
      const way = ways.find(({ test, compute }) => test(compute(context), context));
      run(way ? way.templates : elseTemplates, context, emitter);
    };
  };

  const caseStep = ({ value, branches, elseTemplates }: CaseTag): Step => {
    const target = computeValue(value);
    const ways = branches.map(({ values, templates }) => ({ values: values.map(computeToken), templates }));
    return (context, emitter) => {
      const found = toValue(target(context));
      const hits = ways.filter(({ values }) => values.some((one) => areEqual(found, one(context), context)));
      for (const { templates } of hits) run(templates, context, emitter);
      if (hits.length === 0) run(elseTemplates, context, emitter);
    };
  };

  const forStep = (tag: ForTag): Step => {
    const { variable, templates, elseTemplates } = tag;
    const own = ownStep(tag);
    if (Object.keys(tag.hash.hash).length > 0) return own;
    const collection = computeToken(tag.collection);
    const name = tag.collection.getText();
    return (context, emitter) => {
      const items = collection(context);
      if (!Array.isArray(items)) return own(context, emitter);
      if (items.length === 0) return run(elseTemplates, context, emitter);
      context.setRegister(`continue-${variable}-${name}`, items.length);
      const forloop = new ForLoop(items.length, `${variable}-${name}`);
      const scope: Record<string, unknown> = Object.assign(Object.create(null), { forloop });
      context.push(scope);
      for (const item of items) {
        scope[variable] = item;
        context.continueCalled = context.breakCalled = false;
        work += 1;
        run(templates, context, emitter);
        if (context.breakCalled) break;
        forloop.next();
      }
      context.continueCalled = context.breakCalled = false;
      context.pop();
    };
  };

  /** Another layout, with values of its own. */
  const renderStep = (tag: RenderTag): Step => {
    const { name: file = null, scope: names = [] } = tag.partialScope() ?? {};
    const keys = [...names].flatMap((name) => (typeof name === 'string' ? name : []));
    const values = [...tag.arguments()].map(computeArgument);
    // `with`, `for`, a name without a value or a file that is worked out: Liquid's own business.
    if (file === null || keys.length !== [...names].length || keys.length !== values.length)
      return ownStep(tag);
    let templates: Template[] | undefined;
    // What a layout writes follows from its values alone, and a guide's two pages share most of theirs.
    const written = new WeakMap<object, Written[]>();
    return (context, emitter) => {
      const given = values.map((value) => value(context));
      const known = sharedBy(given);
      const before = known && written.get(known);
      const same = before?.find((one) => one.given.every((value, index) => value === given[index]));
      if (same) {
        work += same.work;
        emitter.buffer += same.text;
        return;
      }
      const inner = context.spawn();
      const scope = inner.bottom() as Record<string, unknown>;
      for (const [index, key] of keys.entries()) scope[key] = given[index];
      templates ??= templatesOf(toValueSync(engine._parsePartialFile(file, true, tag.token.file)));
      if (depth >= DEPTH_LIMIT) throw new Error('the layouts stand within each other without an end');
      depth += 1;
      const own = textEmitter();
      const workBefore = work;
      run(templates, inner, own);
      depth -= 1;
      emitter.buffer += own.buffer;
      if (known)
        written.set(known, [...(before ?? []), { given, text: own.buffer, work: work - workBefore }]);
    };
  };

  return {
    *renderTemplates(templates, context, emitter = textEmitter()) {
      run(templates, context, emitter);
      return yield emitter.buffer;
    },
    startPage: () => {
      work = 0;
      depth = 0;
    },
  };
}

/** An object by which what a layout wrote for some values can be found again; none where one of them may change. */
function sharedBy(given: readonly unknown[]): object | undefined {
  if (given.some((value) => value instanceof Drop)) return undefined;
  return given.find((value): value is object => typeof value === 'object' && value !== null);
}

function templatesOf(parsed: string | Template[]): Template[] {
  if (typeof parsed === 'string') throw new Error('a layout was not read');
  return parsed;
}

function textEmitter(): Emitter {
  return {
    buffer: '',
    write(text: unknown) {
      this.buffer += textOf(text);
    },
  };
}

/** A value as Liquid puts it out. */
function textOf(value: unknown): string {
  const plain = toValue(value);
  if (plain === undefined || plain === null) return '';
  return Array.isArray(plain) ? plain.map(textOf).join('') : String(plain);
}

/** Text between tags, without the blanks that its neighbours ask to leave out. */
function textStep(template: Template): Step {
  let text: string | undefined;
  return (context, emitter) => {
    if (text === undefined) {
      const own = textEmitter();
      toValueSync(template.render(context, own));
      text = own.buffer;
    }
    emitter.buffer += text;
  };
}

function outputStep({ value }: Output): Step {
  const compute = computeValue(value);
  return (context, emitter) => emitter.write(compute(context));
}

function assignStep(tag: AssignTag): Step {
  const [compute = () => undefined] = [...tag.arguments()].map(computeArgument);
  const [key = ''] = [...tag.localScope()].map(({ content }) => content);
  return (context) => {
    const scope = context.bottom() as Record<string, unknown>;
    scope[key] = compute(context);
  };
}

/** A tag as Liquid does it. */
function ownStep(tag: Template): Step {
  return (context, emitter) => {
    const text = toValueSync(tag.render(context, emitter));
    if (text) emitter.write(text);
  };
}

function areEqual(one: unknown, other: unknown, context: Context): boolean {
  return Boolean(operate('==', one, other, context));
}
