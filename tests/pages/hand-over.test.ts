import { describe, expect, it } from 'vitest';
import type { Item } from '../../src/model/item.ts';
import * as fixture from './fixture.ts';
import { guideHtml } from './render.ts';

function sheet(html: string): string {
  return html.slice(html.indexOf('id="hand_over"'), html.indexOf('id="pick_table"'));
}

describe('the hand-over sheet', () => {
  it('says what the guide says to the owner', () => {
    expect(sheet(guideHtml())).toContain('The lowest point in front is now the cradle.');
  });

  it('has a blank for each reading, with what it should be', () => {
    expect(sheet(guideHtml())).toMatch(
      /Ground clearance under the cradle<\/th><td>180–\u2060240\u00a0mm[^<]*<\/td><td class="write" data-found="clearance"><\/td>/,
    );
  });

  it('lists what is looked at again, with its torque and when', () => {
    const nut = fixture.guide.items.get('m8-nut') as Item & { kind: 'kit' };
    const recheck = { value: [{ written: '500', amount: 500, unit: 'km' as const }], at: nut.at };
    const items = new Map([...fixture.guide.items, ['m8-nut', { ...nut, recheck } as Item]]);
    expect(sheet(guideHtml({ ...fixture.guide, items }))).toMatch(
      /M8 flange nuts, 4<span class="detail">25\u00a0N·m[^<]*<\/span><\/th><td>after 500 km \(310 mi\)<\/td>/,
    );
  });

  it('lists nothing else', () => {
    expect(sheet(guideHtml())).not.toContain('To be looked at again');
  });
});
