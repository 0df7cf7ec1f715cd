import type { Block } from '../model/block.ts';
import type { Directive } from '../syntax/tree.ts';
import type { AttributeTypes } from './attributes/attribute.ts';
import type { DirectiveSpec, Scope } from './attributes/directive-spec.ts';
import { readAttributes } from './attributes/read-attributes.ts';

export type { Scope, Values } from './attributes/directive-spec.ts';

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
