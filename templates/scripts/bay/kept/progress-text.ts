import type { Change, KnownStep, Part, Progress, Value } from './progress.ts';

/** The first thing in the text of any progress; the number is raised when its form changes. */
const form = 'Baybook progress 1';

/** Progress as text, for the device's storage and to be carried to another device. */
export function progressText(progress: Progress): string {
  const { ticks, values, waits, ...rest } = progress;
  return JSON.stringify({
    form,
    ...rest,
    ticks: [...ticks].map(([step, parts]) => [step, [...parts]]),
    values: [...values],
    waits: [...waits],
  });
}

/** Progress from its text; `null` for any other text, whoever wrote it. */
export function readProgress(text: string): Progress | null {
  const found = parsed(text);
  if (!isObject(found) || found.form !== form) return null;
  const { guide, title, edition, fingerprint, build, saved, steps, changed } = found;
  const ticks = listOf(found.ticks, isTick);
  const values = listOf(found.values, isNamed(isValue));
  const waits = listOf(found.waits, isNamed(isNumber));
  if (!isText(guide) || !isText(title) || !isText(edition) || !isText(fingerprint)) return null;
  if (!isText(build)) return null;
  if (!isNumber(saved) || !Array.isArray(steps) || !steps.every(isStep)) return null;
  if (!ticks || !values || !waits || !(changed === null || isChanged(changed))) return null;
  return {
    guide,
    title,
    edition,
    fingerprint,
    build,
    saved,
    steps,
    ticks: new Map(ticks.map(([step, marked]) => [step, new Set(marked)])),
    values: new Map(values),
    waits: new Map(waits),
    changed,
  };
}

function parsed(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

const parts: ReadonlySet<unknown> = new Set<Part>(['left', 'right', 'whole']);

function isObject(value: unknown): value is { readonly [key: string]: unknown } {
  return typeof value === 'object' && value !== null && !Array.isArray(value);
}

function isText(value: unknown): value is string {
  return typeof value === 'string';
}

function isNumber(value: unknown): value is number {
  return typeof value === 'number' && Number.isFinite(value);
}

function isStep(value: unknown): value is KnownStep {
  return isObject(value) && [value.id, value.title, value.fingerprint].every(isText);
}

function isValue(value: unknown): value is Value {
  if (!isObject(value)) return false;
  const { asked, text, step, proof } = value;
  return isText(asked) && isText(text) && (step === null || isText(step)) && typeof proof === 'boolean';
}

function isChange(value: unknown): value is Change {
  return isObject(value) && isText(value.step) && isText(value.words);
}

function isChanged(value: unknown): value is NonNullable<Progress['changed']> {
  return (
    isObject(value) && isText(value.edition) && Array.isArray(value.lines) && value.lines.every(isChange)
  );
}

function isTick(value: unknown): value is [string, Part[]] {
  return isNamed(
    (marked): marked is Part[] => Array.isArray(marked) && marked.every((part) => parts.has(part)),
  )(value);
}

function isNamed<T>(is: (value: unknown) => value is T) {
  return (value: unknown): value is [string, T] =>
    Array.isArray(value) && value.length === 2 && isText(value[0]) && is(value[1]);
}

function listOf<T>(value: unknown, is: (one: unknown) => one is T): readonly T[] | null {
  return Array.isArray(value) && value.every(is) ? value : null;
}
