import type { Block } from '../model/block.ts';
import type { Directive } from '../syntax/tree.ts';
import type { AttributeTypes } from './attribute.ts';
import type { DirectiveSpec, Scope } from './directive-spec.ts';
import { readAttributes } from './read-attributes.ts';

export type { Scope, Values } from './directive-spec.ts';

/** A directive's description with the way to read one. */
export interface DirectiveReader<R> extends Omit<DirectiveSpec<AttributeTypes, R>, 'build'> {
  readonly read: (directive: Directive, scope: Scope) => R | null;
}

/** Makes the reader of a directive. */
export function directive<const A extends AttributeTypes, R>(spec: DirectiveSpec<A, R>): DirectiveReader<R> {
  const { build, ...described } = spec;
  return {
    ...described,
    read: (found, scope) =>
      build({ ...readAttributes<A>(spec, found, scope.report), directive: found, scope }),
  };
}

/** What a directive that stands as a block of text becomes. */
export type BlockReader = DirectiveReader<Block>;
