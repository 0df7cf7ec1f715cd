import { actionWords, findTarget, mentionWords, targetNoun } from '../job/index.ts';
import { capitalised } from '../job/words/noun.ts';
import type { Block, Figure } from '../model/block.ts';
import type { Action, Mention } from '../model/inline.ts';
import type { Side } from '../model/item.ts';
import type { Prose } from '../model/prose.ts';
import { formatEstimate } from '../units/estimate.ts';
import { names, onlyFor, quantityFact, spaced, type Telling, told } from './facts.ts';
import type { Act, Fact, RecordLine } from './record.ts';

/** What a line is put together from, in the order of reading. */
interface Draft {
  text: string;
  words: string;
  readonly acts: Act[];
}

/** Elements that stand apart from what is around them. */
const apart = /^(?:p|li|tr|td|th|h[1-6]|dt|dd|blockquote|pre|br)$/;

/** The lines of some blocks, one for each block that a technician reads there. */
export function linesOf(
  blocks: readonly Block[],
  telling: Telling,
  stepSide: Side | null,
): readonly RecordLine[] {
  return blocks.flatMap((block) => lineOf(block, telling, stepSide));
}

function lineOf(block: Block, telling: Telling, side: Side | null): readonly RecordLine[] {
  const line = (
    kind: string,
    proses: readonly Prose[],
    facts: readonly Fact[] = [],
  ): readonly RecordLine[] => {
    const draft = read(proses, telling, side);
    const only = block.type === 'prose' ? [] : onlyFor(block.when?.value, telling);
    return [
      {
        kind,
        text: spaced(draft.text),
        words: spaced(draft.words),
        acts: draft.acts,
        facts: [...only, ...facts],
      },
    ];
  };
  switch (block.type) {
    case 'prose':
      return line('prose', [block.content]);
    case 'message':
      return line(block.word, [[...block.hazard, full], block.body]);
    case 'note':
    case 'why':
    case 'owner':
      return line(block.type, [block.title ?? [], block.body]);
    // Printed where the step is reversed, and there a note of its own.
    case 'refit-note':
      return [];
    case 'figure':
      return line(
        'figure',
        [block.caption, ...block.marks.map(({ text }) => text), block.body],
        figureFacts(block),
      );
    case 'photo':
      return line('photo', [block.shows]);
    case 'template':
      return line('template', [], names('template', [block.template], telling));
    case 'prove':
      return line(
        'prove',
        [[...block.title, full], block.body],
        [
          ...names('needs', block.needs, telling),
          ...told('time', block.time && formatEstimate(block.time.value)),
        ],
      );
  }
}

/** The end of a heading that is read together with what follows it. */
const full: Prose[number] = { type: 'text', value: '.', at: null };

function figureFacts(figure: Figure): readonly Fact[] {
  const { path, shows, crop, blur, zoom, marks } = figure;
  const boxes = [crop, ...blur, zoom].map((box) => (box ? Object.values(box.value).join(' ') : ''));
  const places = marks.map(({ letter, point, also }) =>
    [letter, point ? `${point.x} ${point.y}` : '', ...also.map(({ x, y }) => `${x} ${y}`)].join(' '),
  );
  return [
    ...told('picture', [path ?? '', ...boxes, ...places].join(' ')),
    ...told('shows', shows?.value),
    ...told('described as', figure.alt?.value),
  ];
}

function read(proses: readonly Prose[], telling: Telling, side: Side | null): Draft {
  const draft: Draft = { text: '', words: '', acts: [] };
  const add = (text: string, words = text) => {
    draft.text += text;
    draft.words += words;
  };
  const say = (nodes: Prose): void => {
    for (const node of nodes) {
      switch (node.type) {
        case 'text':
          add(node.value);
          break;
        case 'element':
          if (apart.test(node.tagName)) add(' ');
          if (node.tagName === 'img') add(String(node.properties.alt ?? ''));
          if (node.tagName === 'a') add('', `(${String(node.properties.href ?? '')})`);
          say(node.children);
          if (apart.test(node.tagName)) add(' ');
          break;
        case 'where': {
          const facts = onlyFor(node.when.value, telling);
          add('', `{${draft.acts.length}`);
          draft.acts.push({ verb: 'only', target: '', facts: [...facts] });
          add('', ' ');
          say(node.children);
          add('', '}');
          break;
        }
        case 'mention':
        case 'action': {
          const own = [node.type === 'action' ? node.say : null, node.as].filter((one) => one !== null);
          const place = `{${[draft.acts.length, ...own].join(' ')}}`;
          add(phrase(node, startsSentence(draft.text), telling, side), place);
          draft.acts.push(actOf(node, telling));
        }
      }
    }
  };
  for (const prose of proses) {
    say(prose);
    add(' ');
  }
  return draft;
}

function startsSentence(sofar: string): boolean {
  return /(?:^|[.!?:])\s*$/.test(sofar);
}

function phrase(
  node: Action | Mention,
  starts: boolean,
  { guide, label }: Telling,
  stepSide: Side | null,
): string {
  const target = findTarget(guide, node.target.value);
  if (node.type === 'action') {
    return target ? actionWords(node, target, { stepSide, starts, words: guide.words }) : node.target.value;
  }
  if (target) return mentionWords(node, targetNoun(target), starts);
  const words = node.as ?? `“${label(node.target.value)}”`;
  return starts ? capitalised(words) : words;
}

function actOf(node: Action | Mention, telling: Telling): Act {
  const only = onlyFor(node.when?.value, telling);
  if (node.type === 'mention')
    return { verb: node.of === 'step' ? 'name step' : 'name', target: node.target.value, facts: [...only] };
  return {
    verb: node.verb,
    target: node.target.value,
    facts: [
      ...only,
      ...names('with', node.with, telling),
      ...names('on', node.on, telling),
      ...quantityFact('amount', node.amount),
      ...quantityFact('over', node.over),
      ...told('goes to', node.to),
      ...names('after the trial in', node.trial ? [node.trial] : [], telling),
      ...(node.inSequence ? told('place', `${node.inSequence.place + 1} of ${node.inSequence.of}`) : []),
    ],
  };
}
