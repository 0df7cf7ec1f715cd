import { didYouMean, nearest } from '../../diagnostics/suggest.ts';
import type { Range } from '../directive-places.ts';
import { strayFences } from './directive-unreadable.ts';
import type { SyntaxFault, SyntaxPage, SyntaxRule } from './rule.ts';
import { openingOf, span } from './rule.ts';

const colons = { leaf: '::', container: ':::', text: ':' } as const;
const forms = ['leaf', 'container', 'text'] as const;
type Form = (typeof forms)[number];

/** A name that no directive has. */
export const directiveUnknown: SyntaxRule = {
  card: {
    code: 'directive-unknown',
    severity: 'error',
    title: 'A directive that does not exist',
    why: 'What Baybook does not know it cannot print, count or check, so a misspelt name is never passed over.',
    bad: '::stpe[Free the arch edge]{#arch}\n\nLook behind the edge.',
    good: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.',
  },
  stops: true,
  find: (page) => directives(page).flatMap(({ form, name, at }) => unknown(page, form, name, at)),
};

/** A name written in a form that it does not have. */
export const directiveForm: SyntaxRule = {
  card: {
    code: 'directive-form',
    severity: 'error',
    title: 'A directive written with the wrong number of colons',
    why: 'Two colons declare or place something, three hold content, one speaks within a sentence. In another form a directive would do nothing, in silence.',
    bad: ':::step[Free the arch edge]{#arch}\nLook behind the edge.\n:::',
    good: '::step[Free the arch edge]{#arch}\n\nLook behind the edge.',
  },
  stops: true,
  find: (page) => directives(page).flatMap((found) => wrongForm(page, found)),
};

interface Found {
  readonly form: Form;
  readonly name: string;
  readonly at: Range;
  readonly hasId: boolean;
}

function directives(page: SyntaxPage): Found[] {
  return page.placed.flatMap((placed) => {
    const { node } = placed;
    const form = node.data?.directive?.form;
    if (!form || !('name' in node) || typeof node.name !== 'string') return [];
    const { start } = openingOf(page, placed);
    const from = start + (/^:+/.exec(page.source.text.slice(start))?.[0].length ?? 0);
    const hasId = node.data?.directive?.attributes.some(({ name }) => name === 'id') ?? false;
    return [{ form, name: node.name, at: { start: from, end: from + node.name.length }, hasId }];
  });
}

function unknown(page: SyntaxPage, form: Form, name: string, at: Range): SyntaxFault[] {
  if (forms.some((other) => page.names[other].has(name))) return [];
  const meant = form === 'text' ? otherVerbs[name] : undefined;
  const likely =
    meant !== undefined && page.names.text.has(meant) ? [meant] : nearest(name, page.names[form]);
  const message = `there is no directive "${colons[form]}${name}"`;
  const [only, more] = likely;
  if (!only) return [unknownForm(page, form, name, at)];
  if (only && !more) return [{ at, message, suggestion: { at: span(page, at), text: only } }];
  return [{ at, message, notes: [{ message: didYouMean(likely) }] }];
}

/** What the trade also calls an action, by the verb that the action table has; `say=` prints the other one. */
const otherVerbs: { readonly [verb: string]: string | undefined } = {
  unscrew: 'remove',
  unbolt: 'remove',
  unclip: 'remove',
  detach: 'remove',
  install: 'fit',
  attach: 'fit',
  mount: 'fit',
  unplug: 'disconnect',
  plug: 'connect',
  torque: 'tighten',
  glue: 'bond',
  reinstall: 'refit',
  slacken: 'loosen',
};

/** A name that nothing written with as many colons is near to. */
function unknownForm(page: SyntaxPage, form: Form, name: string, at: Range): SyntaxFault {
  const elsewhere = forms.flatMap((other) =>
    nearest(name, page.names[other])
      .slice(0, 1)
      .map((near) => ({ form: other, text: `${colons[other]}${near}` })),
  );
  const [first] = elsewhere;
  const message = `there is no directive "${colons[form]}${name}"`;
  if (!first) {
    const known = `written with ${counted[form]}: ${[...page.names[form]].sort().join(', ')}`;
    return { at, message, notes: [{ message: known }] };
  }
  const covers = form === 'leaf' && first.form === 'container' ? fenceAfter(page, at) : [];
  const whole = { start: at.start - colons[form].length, end: at.end };
  return { at: whole, message, covers, suggestion: { at: span(page, whole), text: first.text } };
}

/** The line of colons that was to close what has not been opened. */
function fenceAfter(page: SyntaxPage, { end }: Range): readonly Range[] {
  const fence = strayFences(page).find(({ start }) => start >= end);
  return fence ? [fence] : [];
}

function wrongForm(page: SyntaxPage, { form, name, at, hasId }: Found): SyntaxFault[] {
  const right = forms.filter((other) => page.names[other].has(name));
  const declared = right.find((other) => other !== 'text');
  // Within a sentence something is named by its id; only what is declared is given one in braces.
  if (form === 'text' && hasId && declared) {
    const message = `":${name}" speaks of something within a sentence; with an id in braces, write ${howTo[declared](name)}`;
    const whole = { start: at.start - 1, end: at.end };
    const suggestion = { at: span(page, whole), text: `${colons[declared]}${name}` };
    return [{ at: whole, message, suggestion }];
  }
  if (right.includes(form) || right.length === 0) return [];
  const ways = right.map((other) => howTo[other](name)).join(', or ');
  const covers = form === 'leaf' && right.includes('container') ? fenceAfter(page, at) : [];
  return [{ at, message: `"${name}" is not written with ${counted[form]}; write ${ways}`, covers }];
}

const counted = { leaf: 'two colons', container: 'three colons', text: 'one colon' } as const;

const howTo: { readonly [F in Form]: (name: string) => string } = {
  leaf: (name) => `::${name} on a line of its own`,
  container: (name) => `:::${name} with its content below, closed by :::`,
  text: (name) => `:${name}[…] within a sentence`,
};
