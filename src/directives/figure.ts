import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import { otherPlaces } from '../diagnostics/told-once.ts';
import type { Block, FigureMark } from '../model/block.ts';
import type { PictureFact } from '../model/guide.ts';
import type { Ref } from '../model/inline.ts';
import type { ProseElement } from '../model/prose.ts';
import type { Span } from '../source/span.ts';
import type { ContainerDirective, DocumentNode, RawProse, TextDirective } from '../syntax/tree.ts';
import { meant } from './attributes/attribute.ts';
import { oneOf, pictureBox, ref, words } from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import { directive, type Scope, type Values } from './directive.ts';
import { mark } from './mark.ts';
import { attributeMissing } from './rules/attribute-missing.ts';
import { attributeValue } from './rules/attribute-value.ts';
import { misplaced } from './rules/directive-misplaced.ts';
import { figureUnpictured } from './rules/figure-unpictured.ts';

const PATH = 'the path of the picture, as in `pictures/edge.jpg`';

const attributes = {
  src: meant(
    { ...words, expects: PATH },
    'Where the picture lies, from the folder of the guide. A figure has it, or `of`.',
  ),
  of: meant(
    ref,
    'A part or a state that the platform declares with a picture of its own, which is shown: so a procedure shows on each vehicle what that one looks like. Marks must point at the same things in all of them.',
  ),
  alt: meant(words, 'What the picture shows, for whoever cannot see it.'),
  shows: meant(
    oneOf('left', 'right'),
    'The side of the vehicle that is in the picture; the page says it. In a step for the other side alone it is a finding.',
  ),
  crop: meant(pictureBox, 'The part of the upright picture that is kept.'),
  blur: meant(pictureBox, 'A part of the upright picture that is made unreadable: a plate, a face.'),
  zoom: meant(pictureBox, 'A part of the upright picture that is shown large beside the whole.'),
  when,
};

/** A picture with a caption and lettered marks. */
export const figure = directive({
  name: 'figure',
  form: 'container',
  label: 'required',
  attributes,
  summary:
    'Shows a picture under the sentence before it, with lettered marks and their key. With `of` instead of `src` it is the own picture of what the platform declares, so that a procedure shows each vehicle as it is.',
  example:
    ':::figure[Where the lever goes in]{src=pictures/arch.jpg alt="Rear edge of the arch trim"}\n- :mark[A]{at="31%,44%"} lever tip, behind the lip\n:::',
  build: ({ values, unknown, directive: found, scope }): Block | null => {
    if (found.form !== 'container') return null;
    const { marks, rest } = readKey(found.children, scope);
    const own = values.of && ownOf(values.of.value, scope);
    reportSources(found, values, unknown, scope.report);
    return {
      type: 'figure',
      caption: scope.prose(found.label ?? []),
      src: values.src ?? own?.src ?? null,
      path: values.src ? scope.resolve(values.src.value) : (own?.path ?? null),
      alt: values.alt ?? own?.alt ?? null,
      shows: values.shows,
      crop: values.crop,
      blur: values.blur ? [values.blur] : [],
      zoom: values.zoom,
      marks,
      body: scope.body(rest),
      when: values.when,
      at: found.at,
    };
  },
});

/** A figure has one picture, of its own or of a thing. */
function reportSources(
  found: ContainerDirective,
  { src, of }: Pick<Values<typeof attributes>, 'src' | 'of'>,
  unknown: ReadonlySet<string>,
  report: Report,
): void {
  if (src && of) {
    const message = 'a figure shows the picture of "src" or the one of "of"; take one of them out';
    report(finding(attributeValue, of.at, message));
  }
  // It may be written under a name that is told of as unknown.
  const elsewhere =
    unknown.has('src') ||
    unknown.has('of') ||
    found.attributes.some(({ name }) => !Object.hasOwn(attributes, name));
  if (src || of || elsewhere) return;
  report(finding(attributeMissing, found.nameAt, `this figure lacks "src": ${PATH}`));
}

/** The own picture of what the platform declares. */
function ownOf({ value: id, at }: Ref, scope: Scope): PictureFact | null {
  const known = scope.platformParts.get(id) ?? scope.platformConditions.get(id);
  if (known?.picture) return known.picture;
  const declared = [...scope.platformParts.values(), ...scope.platformConditions.values()];
  const pictured = declared.flatMap((one) => (one.picture ? [one.id] : []));
  const likely = nearest(id, pictured)[0];
  const message = known
    ? `"${id}" has no picture of its own; name one where the platform declares it, as in picture=pictures/${id}.svg`
    : `the platform declares no part and no state "${id}"; with of= only such a one is shown, by its own picture`;
  const suggestion = likely === undefined ? undefined : { at, text: likely };
  scope.report(finding(figureUnpictured, at, message, { suggestion }));
  return null;
}

/** Parts the key, a list whose items begin with a mark, from the other text of a figure. */
function readKey(children: readonly DocumentNode[], scope: Scope) {
  const marks: FigureMark[] = [];
  const rest: DocumentNode[] = [];
  const undashed: Span[] = [];
  for (const child of children) {
    const lines = child.type === 'prose' ? keyLines(child.content) : null;
    if (!lines) {
      rest.push(
        child.type === 'prose' ? { ...child, content: withoutMarks(child.content, undashed) } : child,
      );
      continue;
    }
    for (const line of lines) {
      if (line.mark === null) {
        const message =
          'this line of the key lacks its mark; it begins like the others, as in :mark[A]{at="31%,44%"}';
        scope.report(finding(misplaced, line.at ?? child.at, message));
        continue;
      }
      const head = mark.read(line.mark, scope);
      if (head) marks.push({ ...head, text: scope.prose(withoutMarks(line.text, undashed)) });
    }
  }
  const [first, ...others] = undashed;
  if (first) {
    const message =
      'a line of the key begins with a dash, as in - :mark[A]{at="31%,44%"}; put one before this mark';
    scope.report(finding(misplaced, first, message, { notes: otherPlaces('and before this one', others) }));
  }
  return { marks, rest };
}

/** Text in which no mark can be: what it says stays, and where it stands is noted. */
function withoutMarks(content: RawProse, found: Span[]): RawProse {
  return content.flatMap((node): RawProse => {
    if (node.type === 'element') return [{ ...node, children: [...withoutMarks(node.children, found)] }];
    if (node.type !== 'directive' || node.name !== mark.name) return [node];
    found.push(node.at);
    return node.label ?? [];
  });
}

interface KeyLine {
  /** `null` in a line that lacks it, while others have theirs. */
  readonly mark: TextDirective | null;
  readonly text: RawProse;
  readonly at: Span | null;
}

function keyLines(content: RawProse): readonly KeyLine[] | null {
  const lists = content.filter((node) => node.type !== 'text' || node.value.trim() !== '');
  const lines: KeyLine[] = [];
  for (const list of lists) {
    if (list.type !== 'element' || list.tagName !== 'ul') return null;
    for (const item of list.children) {
      if (item.type !== 'element') continue;
      lines.push(keyLine(item));
    }
  }
  return lines.some((line) => line.mark) ? lines : null;
}

function keyLine(item: ProseElement<TextDirective>): KeyLine {
  const content = item.children.flatMap((node) =>
    node.type === 'element' && node.tagName === 'p' ? node.children : [node],
  );
  const start = content.findIndex((node) => node.type !== 'text' || node.value.trim() !== '');
  const first = content[start];
  return first?.type === 'directive' && first.name === 'mark'
    ? { mark: first, text: content.slice(start + 1), at: item.at }
    : { mark: null, text: content, at: item.at };
}
