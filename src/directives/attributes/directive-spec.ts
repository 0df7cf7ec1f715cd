import type { Report } from '../../diagnostics/report.ts';
import type { Condition, FastenerType, Part, Rating, Supply, Tool, Wear } from '../../model/item.ts';
import type { Origin } from '../../model/origin.ts';
import type { Prose } from '../../model/prose.ts';
import type { Written } from '../../source/span.ts';
import type { Directive, DocumentNode, RawProse } from '../../syntax/tree.ts';
import type { AttributeType, AttributeTypes } from './attribute.ts';

/** What a directive's file may ask of the guide that it stands in. */
export interface Scope {
  readonly report: Report;
  /** How the file came into the guide; empty for the guide's own file. */
  readonly origins: readonly Origin[];
  readonly crib: ReadonlyMap<string, Tool | Wear>;
  readonly fastenerTypes: ReadonlyMap<string, FastenerType>;
  readonly supplies: ReadonlyMap<string, Supply>;
  /** Parts that the platform declares. */
  readonly platformParts: ReadonlyMap<string, Part>;
  /** States of the vehicle that the platform declares. */
  readonly platformConditions: ReadonlyMap<string, Condition>;
  readonly platformRatings: ReadonlyMap<string, Rating>;
  /** Reads the directives within prose. */
  readonly prose: (raw: RawProse) => Prose;
  /** Reads the content of a container whose text is prose alone. */
  readonly body: (nodes: readonly DocumentNode[]) => Prose;
  /** A path as written, from the workspace's root; `null` where it leaves the workspace. */
  readonly resolve: (path: string) => string | null;
  /** The text of a file of the workspace; `null` where there is none. */
  readonly textOf: (path: string) => string | null;
}

/** The attributes of a directive, read. What is missing or could not be read is `null`. */
export type Values<A extends AttributeTypes> = {
  readonly [K in keyof A]: A[K] extends AttributeType<infer T> ? Written<T> | null : never;
};

/** A directive described as data: its attributes' types do the checking. */
export interface DirectiveSpec<A extends AttributeTypes, R> {
  readonly name: string;
  readonly form: Directive['form'];
  /** Whether `[…]` is asked for, allowed or refused. */
  readonly label: 'required' | 'optional' | 'none';
  readonly attributes: A;
  /** One sentence for the format reference. */
  readonly summary: string;
  /** A line or two as an author writes them; the format reference shows it and the tests read it. */
  readonly example: string;
  /** `null` where too much is missing to mean anything; the faults are reported by then. */
  readonly build: (read: {
    readonly values: Values<A>;
    /** Attributes that were written but could not be read. */
    readonly unknown: ReadonlySet<string>;
    readonly directive: Directive;
    readonly scope: Scope;
  }) => R | null;
}
