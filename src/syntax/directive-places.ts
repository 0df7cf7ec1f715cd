import type { Nodes } from 'mdast';
import type { CompileContext, Handle, Token } from 'mdast-util-from-markdown';
import type { Code, Construct, TokenizeContext } from 'micromark-util-types';
import type { Processor } from 'unified';

/** Offsets into the parsed text, half-open. */
export interface Range {
  readonly start: number;
  readonly end: number;
}

/** One attribute as the parser met it: its decoded value and the range of the whole of it. */
export interface MetAttribute extends Range {
  readonly name: string;
  readonly value: string;
}

/** What the parser would forget about a directive; kept as plain data, since the sanitiser clones it. */
export interface DirectiveFacts {
  readonly form: 'leaf' | 'container' | 'text';
  readonly name: string;
  /** In the order met; repeated ones are all here. */
  readonly attributes: MetAttribute[];
  /** The brackets of the label, `[` and `]` apart; empty where no label is written. */
  readonly brackets: Range[];
  /** A container's opening line and, where it is closed, its closing fence. */
  readonly fences: Range[];
}

declare module 'unist' {
  interface Data {
    directive?: DirectiveFacts;
    /** Directives that an author wrote into a picture's alternative text, where they cannot work. */
    directivesInAlt?: Range[];
  }
}

const forms = { containerDirective: 'container', leafDirective: 'leaf', textDirective: 'text' } as const;

/**
 * Amends remark-directive, which must be used first: the place of every attribute, label and fence is kept,
 * a colon after a letter or a digit is text, and so is a bare `:name` ("at 10:30", ":smile").
 */
export function directivePlaces(this: Processor): void {
  const data = this.data();
  for (const extension of data.micromarkExtensions ?? []) {
    const construct = extension.text?.[58];
    if (construct && !Array.isArray(construct))
      extension.text = { ...extension.text, 58: colonAware(construct) };
  }
  data.fromMarkdownExtensions?.push({
    exit: {
      directiveContainerAttribute: attribute,
      directiveLeafAttribute: attribute,
      directiveTextAttribute: attribute,
      directiveContainerLabelMarker: bracket,
      directiveLeafLabelMarker: bracket,
      directiveTextLabelMarker: bracket,
      directiveContainerFence: fence,
      directiveLeaf: bareLeaf,
      directiveText: bareAsText,
    },
  });
}

function colonAware(construct: Construct): Construct {
  function previous(this: TokenizeContext, code: Code): boolean {
    if (code !== null && code > 0 && /[\p{L}\p{N}]/u.test(String.fromCodePoint(code))) return false;
    return construct.previous?.call(this, code) ?? true;
  }
  return { ...construct, previous };
}

const attribute: Handle = function (token) {
  const met = this.data.directiveAttributes?.at(-1);
  if (met) facts(this)?.attributes.push({ name: met[0], value: met[1], ...range(token) });
};

const bracket: Handle = function (token) {
  facts(this)?.brackets.push(range(token));
};

const fence: Handle = function (token) {
  facts(this)?.fences.push(range(token));
};

/** A leaf with neither label nor attributes has met none of the above. */
const bareLeaf: Handle = function (token) {
  facts(this);
  this.exit(token);
};

/**
 * Puts a bare `:name` back as the text it is, and within a picture's alternative text any directive: there
 * the tree keeps plain text only, and what is not text would vanish.
 */
const bareAsText: Handle = function (token) {
  const node = this.stack.at(-1);
  const written = this.sliceSerialize(token);
  const bare = node?.type === 'textDirective' && written === `:${node.name}`;
  const picture = this.stack.findLast((above) => above.type === 'image');
  facts(this);
  this.exit(token);
  if (!bare && !picture) return;
  const parent = this.stack.at(-1);
  if (!parent || !('children' in parent)) return;
  const last = parent.children.pop();
  (parent.children as Nodes[]).push({
    type: 'text',
    value: written,
    ...(last?.position && { position: last.position }),
  });
  if (!picture || bare) return;
  picture.data = {
    ...picture.data,
    directivesInAlt: [...(picture.data?.directivesInAlt ?? []), range(token)],
  };
};

/** The facts of the innermost open directive: attributes and a container's label stand one level deeper. */
function facts(context: CompileContext): DirectiveFacts | undefined {
  for (const node of [context.stack.at(-1), context.stack.at(-2)]) {
    if (
      node?.type !== 'containerDirective' &&
      node?.type !== 'leafDirective' &&
      node?.type !== 'textDirective'
    )
      continue;
    const kept = node.data?.directive;
    if (kept) return kept;
    const met = { form: forms[node.type], name: node.name, attributes: [], brackets: [], fences: [] };
    node.data = { ...node.data, directive: met };
    return met;
  }
  return undefined;
}

function range(token: Token): Range {
  return { start: token.start.offset, end: token.end.offset };
}
