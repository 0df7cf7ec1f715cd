import type { Markup } from '../../html/markup.ts';
import { proseToHtml } from '../../html/prose.ts';
import { stringify } from '../../html/stringify.ts';
import { withTableHeads } from '../../html/table-heads.ts';
import { actionWords, capitalised, findTarget } from '../../job/index.ts';
import type { Action } from '../../model/inline.ts';
import type { Side } from '../../model/item.ts';
import type { Inline, Prose, ProseElement, ProseNode, Where } from '../../model/prose.ts';
import { aloneContext } from './alone.ts';
import type { GuideContext } from './context.ts';
import { element, type PlainNode, type PlainProse, text } from './elements.ts';
import { mentionElement } from './mention.ts';
import { shownWhen } from './plans.ts';
import { linkElement, pictureElements } from './references.ts';
import type { Shown } from './shared-views.ts';

/** Where prose is printed: its guide, and the side of its step. */
interface ProsePlace {
  readonly context: GuideContext;
  readonly stepSide: Side | null;
  /** True for words that are no sentence, such as the key of a picture: nothing in them is capitalised. */
  readonly fragment?: boolean;
  /** True where the same words stand elsewhere on the page: the anchors in them are left out. */
  readonly repeated?: boolean;
}

/** Elements at whose beginning a sentence begins. */
const blocks = new Set([
  'p',
  'li',
  'td',
  'th',
  'dd',
  'dt',
  'blockquote',
  'div',
  'h2',
  'h3',
  'h4',
  'h5',
  'h6',
]);

/** Prose as HTML: nouns and actions in words, links and pictures resolved, conditions told in words. */
export function proseMarkup(prose: Prose, place: ProsePlace): Markup {
  const { nodes, ofSite } = plainProse(prose, place);
  const html = stringify(withTableHeads(proseToHtml(nodes, () => [])));
  if (ofSite) {
    place.context.twins.set(html, (inline) =>
      proseMarkup(prose, { ...place, context: aloneContext(place.context, inline) }),
    );
  }
  return html;
}

/** What prose comes to as a tree of plain elements. */
interface PlainPage {
  readonly nodes: PlainProse;
  /** Whether it holds a picture or a link to another page, so that it reads otherwise where the guide stands alone. */
  readonly ofSite: boolean;
}

function plainProse(prose: Prose, place: ProsePlace): PlainPage {
  const { context } = place;
  let ofSite = false;
  /** The text since the block began: tells whether a sentence begins here. */
  let before = place.fragment ? '…' : '';

  const say = (words: string): PlainNode => {
    before += words;
    return text(words);
  };

  const many = (nodes: Prose): PlainProse => nodes.flatMap(one);

  const one = (node: ProseNode<Inline>): PlainProse => {
    switch (node.type) {
      case 'text':
        return [say(node.value)];
      case 'element':
        if (node.tagName !== 'img') return [elementOf(node)];
        ofSite = true;
        return pictureElements(context, node);
      case 'mention':
        return conditional(shownWhen(context, node.when), () => [
          mentionElement(node, context, beginsSentence(before), say),
        ]);
      case 'action':
        return conditional(shownWhen(context, node.when), () => [action(node)]);
      case 'where':
        return conditional(shownWhen(context, node.when), () => many(node.children));
    }
  };

  const elementOf = (node: ProseElement<Inline>): PlainNode => {
    if (blocks.has(node.tagName)) before = '';
    const only = node.tagName === 'li' ? loneWhere(node.children) : null;
    if (only) return conditionalItem(node, only);
    const children = many(node.children);
    const { id, ...rest } = node.properties;
    const properties = place.repeated ? rest : node.properties;
    if (node.tagName === 'a') {
      ofSite ||= !String(node.properties.href ?? '').startsWith('#');
      return linkElement(context, { ...node, properties }, children);
    }
    return element(node.tagName, properties, children);
  };

  /** A list item that stands for some builds as a whole: hidden with its bullet. */
  const conditionalItem = (node: ProseElement<Inline>, where: Where): PlainNode => {
    const shown = shownWhen(context, where.when);
    const children = many(where.children);
    if (shown.plans === null) return element('li', node.properties, children);
    const label = element('span', { className: ['only'] }, [text(`${capitalised(shown.only ?? '')}: `)]);
    return element('li', { ...node.properties, dataPlans: shown.plans }, [label, ...children]);
  };

  const conditional = ({ plans, only }: Shown, content: () => PlainProse): PlainProse => {
    if (plans === null) return content();
    const label = (words: string) => element('span', { className: ['only'] }, [text(words)]);
    return [element('span', { dataPlans: plans }, [label(`[${only}: `), ...content(), label(']')])];
  };

  const action = (node: Action): PlainNode => {
    const target = findTarget(context.guide, node.target.value);
    if (!target) throw new Error(`an action without a target reached the page: ${node.target.value}`);
    const words = actionWords(node, target, {
      stepSide: place.stepSide,
      starts: beginsSentence(before),
      words: place.context.guide.words,
    });
    return element('strong', { className: ['action'] }, [say(words)]);
  };

  return { nodes: many(prose), ofSite };
}

/** Whether a sentence begins after these words: at the beginning of a block, or after a full stop. */
function beginsSentence(before: string): boolean {
  return /(?:^|[.!?]["”’)\]]*)\s*$/.test(before);
}

/** The `:where` that is all that a list item holds, in a paragraph or not. */
function loneWhere(children: Prose): Where | null {
  const [only, more] = children.filter((node) => node.type !== 'text' || node.value.trim() !== '');
  if (!only || more) return null;
  if (only.type === 'where') return only;
  return only.type === 'element' && only.tagName === 'p' ? loneWhere(only.children) : null;
}

/** Whether prose has nothing to read. */
export function isBlank(prose: Prose): boolean {
  return prose.every((node) => node.type === 'text' && node.value.trim() === '');
}
