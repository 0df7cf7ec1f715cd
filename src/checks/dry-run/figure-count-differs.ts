import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { isCounted, stepsOf, totalCount } from '../../job/index.ts';
import type { FigureMark } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { Counted, Item } from '../../model/item.ts';
import type { Rule } from '../rule.ts';

const clip = (count: number) =>
  `::part[Liner]{#liner}\n::fastener[Liner clip]{#clip count=${count} holds=liner}\n\n::step[Free the liner]{#free}\n\n:remove[clip] and :move-aside[liner].\n\n:::figure[The liner]{src=pictures/liner.svg alt="Liner with its clips along the edge"}\n- :mark[A]{at="31%,44%"} :fastener[clip], three along the edge\n- :mark[B]{at="61%,44%"} :part[liner]\n:::\n\n::step[Close it]{#close}\n\n:move-back[liner] and :refit[clip].`;
const picture =
  '<svg xmlns="http://www.w3.org/2000/svg" width="40" height="30"><path d="M0 0h40v30H0z"/></svg>';
const files = (count: number) => ({
  'example/guide.md': clip(count),
  'example/pictures/liner.svg': picture,
});

const card: RuleCard = {
  code: 'figure-count-differs',
  severity: 'error',
  title: 'A picture counts otherwise than the declaration',
  why: 'The technician believes the picture. Where it tells three clips and the list four, one clip is looked for in vain or one is left in.',
  bad: files(4),
  good: files(3),
};

const numbers = [
  'zero',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** A number that follows the name of an item in the key of a figure is the item's count. */
export const figureCountDiffers: Rule = {
  card,
  run: ({ guide }, report) => {
    for (const mark of marksIn(guide)) {
      const told = countIn(mark, guide);
      if (!told || told.item.unknown.has('count') || told.item.unknown.has('side')) continue;
      const { item, number, eachSide } = told;
      const total = totalCount(item);
      const spare = item.kind === 'kit' ? (item.spare?.value ?? 0) : 0;
      const right = eachSide ? [total / 2] : [item.count.value, item.count.value - spare, total];
      if (right.includes(number)) continue;
      const message = `this tells ${number}${eachSide ? ' each side' : ''}, and ${total} of the ${item.noun.plural} are declared`;
      const notes = [{ message: 'declared here', at: item.count.at }];
      report(finding(card, mark.at, message, { notes }));
    }
  },
};

function marksIn(guide: Guide): readonly FigureMark[] {
  const steps = stepsOf(guide).filter((step) => !step.origins.some(({ kind }) => kind === 'reverse'));
  return steps.flatMap(({ blocks }) =>
    blocks.flatMap((block) => (block.type === 'figure' ? block.marks : [])),
  );
}

/** "…, three along the edge"; "one on each stud" counts something else. */
function countIn(
  { text }: FigureMark,
  guide: Guide,
): { readonly item: Item & Counted; readonly number: number; readonly eachSide: boolean } | null {
  const nodes = text.flatMap((node) =>
    node.type === 'element' && node.tagName === 'p' ? node.children : [node],
  );
  const index = nodes.findIndex((node) => node.type === 'mention');
  const node = nodes[index];
  const next = nodes[index + 1];
  if (node?.type !== 'mention' || next?.type !== 'text') return null;
  const item = guide.items.get(node.target.value);
  // "four, one at each corner" and "six in all, one under each cap" tell the number and then where they are.
  const match = /^, ([a-z]+|\d+)(?: in all)?(?:,|\s*$|\s+(.*))/s.exec(next.value);
  const word = match?.[1] ?? '';
  const number = numbers.includes(word) ? numbers.indexOf(word) : Number(word);
  const rest = match?.[2] ?? '';
  const eachSide = /\beach side\b/.test(rest);
  // "one above the other" and "one on each stud" do not count the item; "one each side" does.
  if (!item || !isCounted(item) || !Number.isInteger(number) || number < (eachSide ? 1 : 2)) return null;
  if (/\beach\b/.test(rest) && !eachSide) return null;
  return { item, number, eachSide };
}
