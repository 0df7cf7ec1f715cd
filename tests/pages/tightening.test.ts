import { describe, expect, it } from 'vitest';
import { passesInWords } from '../../src/pages/steps/tightening/tightening.ts';
import { parseTorque } from '../../src/units/torque.ts';
import * as fixture from './fixture.ts';
import { guideHtml } from './render.ts';

function passes(text: string) {
  const parsed = parseTorque(text);
  if (!parsed.ok) throw new Error(parsed.message);
  return parsed.passes;
}

/** The page of the guide with another number of nuts. */
function withNuts(count: number, spare = 0): string {
  const nut = fixture.guide.items.get('m8-nut');
  if (nut?.kind !== 'kit') throw new Error('the fixture has no nut');
  const value = <T>(value: T) => ({ value, at: nut.at });
  const changed = { ...nut, count: value(count), spare: spare > 0 ? value(spare) : null };
  return guideHtml({ ...fixture.guide, items: new Map([...fixture.guide.items, ['m8-nut', changed]]) });
}

const drawings = (html: string) => html.match(/<svg class="tightening-order/g) ?? [];

describe('the order of tightening', () => {
  it('is drawn under the step that tightens, with its passes in words', () => {
    const html = guideHtml();
    const hang = html.slice(html.indexOf('<article class="step" id="hang"'));
    const step = hang.slice(0, hang.indexOf('</article>'));
    expect(drawings(html)).toHaveLength(1);
    expect(drawings(step)).toHaveLength(1);
    expect(step).toContain('M8 flange nuts: the order of tightening');
    expect(step).toContain('In one pass, in this order: each to 25\u00a0N·m (18.4\u00a0lbf·ft).');
    expect(step).toContain('aria-label="Tightening order, clockwise from the upper left: 1, 3, 2, 4"');
  });

  it('is drawn for 3 to 16 fasteners, of which named spares are none', () => {
    expect([2, 3, 16, 17].map((count) => drawings(withNuts(count)).length)).toEqual([0, 1, 1, 0]);
    expect(drawings(withNuts(17, 1))).toHaveLength(1);
    expect(withNuts(6, 2)).toContain('<dd>4 M8 flange nuts: ');
  });

  it('tells all passes', () => {
    expect(passesInWords(passes('20 N·m, 50 N·m, +90°'))).toBe(
      'In 3 passes, each in this order: all to 20\u00a0N·m (14.8\u00a0lbf·ft), ' +
        'then all to 50\u00a0N·m (36.9\u00a0lbf·ft), then all through a further 90°.',
    );
    expect(passesInWords([])).toBe('Tighten them in this order.');
  });
});
