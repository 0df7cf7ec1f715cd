import { joinWords, type PlacedAttribute, placeAttributes } from '../attributes.ts';
import type { SyntaxFault, SyntaxPage, SyntaxRule } from './rule.ts';
import { span } from './rule.ts';

const step = '::step[Free the arch edge]';
const text = '\n\nLook behind the edge.';

/** A class in the braces: `.x`, or an id with a point in it. */
export const attributeClass: SyntaxRule = {
  card: {
    code: 'attribute-class',
    severity: 'error',
    title: 'A point in the braces',
    why: 'In braces a point begins a class, which means nothing in a guide: {#m8.8} would be the id m8, and another part might have that id.',
    bad: `${step}{#arch.left}${text}`,
    good: `${step}{#arch-left}${text}`,
  },
  stops: false,
  find: (page) =>
    eachDirective(page, (attributes) =>
      attributes.flatMap((one, index) => classFault(page, one, attributes[index - 1])),
    ),
};

function classFault(
  page: SyntaxPage,
  { writing, value, nameAt }: PlacedAttribute,
  before: PlacedAttribute | undefined,
): SyntaxFault[] {
  if (writing !== 'class') return [];
  if (before?.writing !== 'id' || before.nameAt.end !== nameAt.start) {
    return [{ at: nameAt, message: `".${value}" means nothing here; attributes are written name=value` }];
  }
  const text = `#${before.value}-${value}`;
  const at = { start: before.nameAt.start, end: nameAt.end };
  return [
    {
      at,
      message: 'an id has letters, digits and hyphens, but no point',
      suggestion: { at: span(page, at), text },
    },
  ];
}

/** A value of several words without quotes. */
export const valueUnquoted: SyntaxRule = {
  card: {
    code: 'value-unquoted',
    severity: 'error',
    title: 'A value of several words without quotes',
    why: 'Without quotes a value ends at the first space, and its other words turn into attributes of their own.',
    bad: `${step}{#arch time=4 min}${text}`,
    good: `${step}{#arch time="4 min"}${text}`,
  },
  stops: false,
  find: (page) =>
    eachDirective(page, (attributes) =>
      joinWords(page.source, attributes, page.names.flags).flatMap(({ name, value, valueAt, words }) => {
        if (words === 1) return [];
        const text = `"${value}"`;
        return [
          {
            at: valueAt,
            message: `put the value of "${name}" in quotes: ${text}`,
            suggestion: { at: valueAt, text },
          },
        ];
      }),
    ),
};

/** A value in the curly quotes that word processors make. */
export const quotesCurly: SyntaxRule = {
  card: {
    code: 'quotes-curly',
    severity: 'error',
    title: 'Curly quotes around a value',
    why: 'Word processors and phones turn straight quotes into curly ones. Those do not hold a value together; they become part of it.',
    bad: `${step}{#arch time=“4min”}${text}`,
    good: `${step}{#arch time="4 min"}${text}`,
  },
  stops: false,
  find: (page) =>
    eachDirective(page, (attributes) =>
      attributes.flatMap(({ writing, value, valueAt }) => {
        if (writing !== 'curly') return [];
        const at = { start: valueAt.start - 1, end: valueAt.end + 1 };
        const straight = `"${value}"`;
        return [
          {
            at,
            message: `write straight quotes: ${straight}`,
            suggestion: { at: span(page, at), text: straight },
          },
        ];
      }),
    ),
};

function eachDirective(
  page: SyntaxPage,
  find: (attributes: readonly PlacedAttribute[]) => SyntaxFault[],
): SyntaxFault[] {
  return page.placed.flatMap(({ node }) => {
    const facts = node.data?.directive;
    return facts ? find(placeAttributes(page.source, facts)) : [];
  });
}
