import { finding } from '../diagnostics/rule-card.ts';
import { otherPlaces } from '../diagnostics/told-once.ts';
import type { Block, FigureMark } from '../model/block.ts';
import type { ProseElement } from '../model/prose.ts';
import type { Span } from '../source/span.ts';
import type { DocumentNode, RawProse, TextDirective } from '../syntax/tree.ts';
import { meant, required } from './attributes/attribute.ts';
import { oneOf, pictureBox, words } from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import { directive, type Scope } from './directive.ts';
import { mark } from './mark.ts';
import { misplaced } from './rules/directive-misplaced.ts';

/** A picture with a caption and lettered marks. */
export const figure = directive({
  name: 'figure',
  form: 'container',
  label: 'required',
  attributes: {
    src: meant(
      required({ ...words, expects: 'the path of the picture, as in `pictures/edge.jpg`' }),
      'Where the picture lies, from the folder of the guide.',
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
  },
  summary: 'Shows a picture under the sentence before it, with lettered marks and their key.',
  example:
    ':::figure[Where the lever goes in]{src=pictures/arch.jpg alt="Rear edge of the arch trim"}\n- :mark[A]{at="31%,44%"} lever tip, behind the lip\n:::',
  build: ({ values, directive: found, scope }): Block | null => {
    if (found.form !== 'container') return null;
    const { marks, rest } = readKey(found.children, scope);
    return {
      type: 'figure',
      caption: scope.prose(found.label ?? []),
      src: values.src,
      path: values.src && scope.resolve(values.src.value),
      alt: values.alt,
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
