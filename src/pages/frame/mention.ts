import { capitalised, findTarget, mentionWords, nounOf, targetNoun } from '../../job/index.ts';
import type { Mention } from '../../model/inline.ts';
import type { Item, Noun } from '../../model/item.ts';
import { type GuideContext, stepRef } from './context.ts';
import { element, type PlainNode } from './elements.ts';
import { printedNumber, stepNumber } from './references.ts';

/** Puts words on the page and keeps count of where a sentence begins. */
type Say = (words: string) => PlainNode;

/** A mention as a link to where its target stands on the page: a row of a list or table, a step or a template. */
export function mentionElement(
  mention: Mention,
  context: GuideContext,
  starts: boolean,
  say: Say,
): PlainNode {
  const id = mention.target.value;
  if (mention.of === 'step') return stepElement(mention, context, starts, say);
  const noun = nounOfMention(mention, context);
  const words = say(mentionWords(mention, noun, starts));
  if (mention.of === 'cut-template') return element('a', { href: `${context.places}#${id}` }, [words]);
  if (mention.of !== 'hole' && !context.listed.has(id)) return words;
  return element('a', { className: ['item'], href: `${context.places}#${itemAnchor(id)}` }, [words]);
}

/** The id on the page of the row of an item or a hole. The underscore keeps it apart from the ids that authors write. */
export function itemAnchor(id: string): string {
  return `item_${id}`;
}

/** "Step 4", whose number the page's script sets to that of the build. */
function stepElement(mention: Mention, context: GuideContext, starts: boolean, say: Say): PlainNode {
  const ref = stepRef(context, mention.target.value);
  if (!ref) return say(mention.as ?? mention.target.value);
  if (mention.as !== null) {
    return element('a', { href: `${context.places}#${ref.id}` }, [
      say(mention.as),
      ...printedNumber(ref.id, context),
    ]);
  }
  const word = say(starts ? capitalised('step ') : 'step ');
  return element('a', { href: `${context.places}#${ref.id}` }, [word, stepNumber(ref)]);
}

function nounOfMention(mention: Mention, { guide, shop }: GuideContext): Noun {
  const id = mention.target.value;
  const item: Item | undefined = guide.items.get(id) ?? shop.crib.get(id);
  if (item) return item.noun;
  const type = mention.of === 'fastener' ? shop.fastenerTypes.get(id) : undefined;
  if (type) return type.noun;
  const target = findTarget(guide, id);
  return target ? targetNoun(target) : nounOf(id);
}
