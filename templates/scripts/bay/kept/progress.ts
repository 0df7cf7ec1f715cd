import type { BayData, BayStep } from '../../../../src/pages/guide/bay-data.ts';

/** What is ticked of a step: one side of it, or all of it. */
export type Part = 'left' | 'right' | 'whole';

/** What there is to tick of a step, the left side before the right. */
export function partsToTick({ sides }: Pick<BayStep, 'sides'>): readonly Part[] {
  return sides ? ['left', 'right'] : ['whole'];
}

/** What the text of a ticked box is, among what is typed in. */
export const TICKED = '✓';

/** A reading or a torque that was typed in, or a line that was ticked. */
export interface Value {
  /** What was asked for, in words: a value for another question is no answer to this one. */
  readonly asked: string;
  readonly text: string;
  /** The step it belongs to; `null` for one outside the steps. */
  readonly step: string | null;
  /** Whether it proves the finished job: it then stands only while every step does. */
  readonly proof: boolean;
}

/** A step as it read when it was ticked. */
export interface KnownStep {
  readonly id: string;
  readonly title: string;
  readonly fingerprint: string;
}

/** A step that reads otherwise than when the work began. */
export interface Change {
  readonly step: string;
  /** The whole line for the technician. */
  readonly words: string;
}

/** How far a job has come. Never changed in place. */
export interface Progress {
  readonly guide: string;
  readonly title: string;
  readonly edition: string;
  readonly fingerprint: string;
  /** The build that it was ticked for, as a link names it; empty while every build was shown. */
  readonly build: string;
  /** Milliseconds since 1970, by this device's clock: the latest of several is taken over. */
  readonly saved: number;
  readonly steps: readonly KnownStep[];
  readonly ticks: ReadonlyMap<string, ReadonlySet<Part>>;
  readonly values: ReadonlyMap<string, Value>;
  /** When each running wait was begun, by step, in milliseconds since 1970. */
  readonly waits: ReadonlyMap<string, number>;
  /** The edition that the work was begun with, and what has changed since; `null` where nothing has. */
  readonly changed: { readonly edition: string; readonly lines: readonly Change[] } | null;
}

/** A job of which nothing is done. */
export function fresh({ guide, title, edition, fingerprint, steps }: BayData): Progress {
  return {
    guide,
    title,
    edition,
    fingerprint,
    build: '',
    saved: 0,
    steps: steps.map((step) => ({ id: step.id, title: step.title, fingerprint: step.fingerprint })),
    ticks: new Map(),
    values: new Map(),
    waits: new Map(),
    changed: null,
  };
}

/** Whether anything at all is ticked, typed in or waiting. */
export function isBegun({ ticks, values, waits }: Progress): boolean {
  return ticks.size + values.size + waits.size > 0;
}

/** Ticks a part of a step, or takes the tick away. */
export function withTick(progress: Progress, step: string, part: Part, on: boolean): Progress {
  const parts = new Set(progress.ticks.get(step) ?? []);
  if (on) parts.add(part);
  else parts.delete(part);
  return { ...progress, ticks: put(progress.ticks, step, parts.size > 0 ? parts : null) };
}

/** Keeps what was typed in or ticked; an empty text takes the value away. */
export function withValue(progress: Progress, key: string, value: Value): Progress {
  return { ...progress, values: put(progress.values, key, value.text.trim() === '' ? null : value) };
}

/** Begins a wait, or with `null` ends it. */
export function withWait(progress: Progress, step: string, begun: number | null): Progress {
  return { ...progress, waits: put(progress.waits, step, begun) };
}

function put<T>(map: ReadonlyMap<string, T>, key: string, value: T | null): ReadonlyMap<string, T> {
  const copy = new Map(map);
  if (value === null) copy.delete(key);
  else copy.set(key, value);
  return copy;
}
