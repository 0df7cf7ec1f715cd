import { describe, expect, it } from 'vitest';
import { summaryOf } from '../../src/pages/reference/guide-summary.ts';
import { cardsOf, foldCards, unfoldCards } from '../../src/pages/rehearsal/cards.ts';
import { platformCardsPage } from '../../src/pages/rehearsal/cards-page.ts';
import { inspect } from '../../src/shop/index.ts';
import { page } from '../pages/render.ts';
import { files } from './workspace.ts';

const { shop, guides } = await inspect(files);
const [read] = guides;
const platform = shop.platforms.get('test-van');
if (!read || !platform) throw new Error('the guide cannot be read');

/** Words with ordinary spaces, as a test can be read. */
const plain = (words: string) => words.replaceAll('\u00a0', ' ');

describe('the card set of a guide', () => {
  it('asks each thing once, from what the guide states, and leads to its step', () => {
    const cards = cardsOf(read.guide, read.job, shop);
    expect(cards.map(({ ask, answer, at }) => plain(`${ask} ${answer} (${at})`))).toEqual([
      '4 of these hold the light bar. They come in the box. What are they, and which tool do they take? Bar bolt: torque wrench and 10 mm socket (bar)',
      '6 of these, 3 each side, hold the cover. What are they, and which tool do they take? Side screw: T25 bit (free)',
      'Cover: what is undone before it comes off? Out: 6 side screws (3 each side), old clip. Unplugged: 2 lamp plugs (1 each side) (free)',
      'Bar bolt, 4: how tight? 20 N·m (14.8 lbf·ft); crosswise; with thread-lock on the thread; torque wrench and 10 mm socket (bar)',
      'What serves only once here, and what goes in its place? Old clip: new clip (free)',
      'Side screw, 6, off in “Free the cover”: in which bag, and what becomes of them? Bag 1; back in with “Refit the cover” (free)',
      'Old clip, off in “Free the cover”: in which bag, and what becomes of it? Bag 1; discarded (free)',
    ]);
  });
});

describe('the card set of a platform', () => {
  const summary = summaryOf(read.guide, read.job, shop, cardsOf(read.guide, read.job, shop), null);
  const pageOf = (...list: readonly (typeof summary)[]) =>
    platformCardsPage(platform, list, page('../../', shop));

  it('tells what several guides have alike once, with both places', () => {
    const twin = { ...summary, id: 'twin', title: 'Twin' };
    const cards = pageOf(summary, twin)?.groups.flatMap((group) => group.cards) ?? [];
    expect(cards).toHaveLength(summary.cards.count);
    expect(cards[0]?.places).toEqual([
      { text: 'Front light bar, step 6, Fit the bar', href: '../../guides/light-bar/index.html#bar' },
      { text: 'Twin, step 6, Fit the bar', href: '../../guides/twin/index.html#bar' },
    ]);
  });

  it('names the guide where the answers differ', () => {
    const other = {
      ...summary,
      id: 'other',
      title: 'Other',
      cards: foldCards(
        unfoldCards(summary.cards).map((card) =>
          card.about === 'torque' ? { ...card, answer: '8 N·m' } : card,
        ),
      ),
    };
    const torques = pageOf(summary, other)?.groups.find(({ title }) => title === 'How tight')?.cards;
    expect(torques?.map(({ ask, answer }) => `${ask} ${plain(answer)}`)).toEqual([
      'Front light bar: Bar bolt, 4: how tight? 20 N·m (14.8 lbf·ft); crosswise; with thread-lock on the thread; torque wrench and 10 mm socket',
      'Other: Bar bolt, 4: how tight? 8 N·m',
    ]);
  });

  it('is none where no guide has a card, or where all have more than anybody is asked', () => {
    expect(pageOf({ ...summary, cards: foldCards([]) })).toBeNull();
    const enough = Math.floor(2000 / summary.cards.count);
    const many = Array.from({ length: enough + 1 }, (_, index) => ({ ...summary, id: `one-${index}` }));
    expect(pageOf(...many.slice(1))).not.toBeNull();
    expect(pageOf(...many)).toBeNull();
  });
});
