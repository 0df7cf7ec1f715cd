import { describe, expect, it } from 'vitest';
import { pageFeet } from '../../src/site/page-feet.ts';
import { usualWords } from '../../src/trade/words.ts';
import { nowhere } from '../job/builder.ts';

const guide = (title: string, words = usualWords) => ({ title: { value: title, at: nowhere }, words });

describe('the foot of each printed sheet', () => {
  it('names the guide, its identity, and page x of y', () => {
    const css = pageFeet(guide('Lamp cradle'), 'revision 3', 'all');
    expect(css).toContain('content: "Lamp cradle"');
    expect(css).toContain('content: "revision 3"');
    expect(css).toContain('content: "Build\\3a  all"');
    expect(css).toContain('content: "Vehicle registration');
    expect(css).toContain('"Page " counter(page) " of " counter(pages)');
  });

  it('asks for what the trade knows a vehicle by', () => {
    const boats = { ...usualWords, registration: 'hull number' };
    expect(pageFeet(guide('Thruster', boats), '', 'all')).toContain('content: "Hull number\\3a  ');
  });

  it('lets no title break out of its string', () => {
    const css = pageFeet(guide('a"; } * { display: none } \\ \n–'), '', 'all');
    const title = /@bottom-left \{ content: "(.*?)"; font/.exec(css)?.[1] ?? '';
    expect(title).toBe('a\\22 \\3b  \\7d  \\2a  \\7b  display\\3a  none \\7d  \\5c  \\a \\2013 ');
    expect(css.split('\n')).toHaveLength(8);
  });
});
