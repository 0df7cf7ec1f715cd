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
      /Ground clearance under the cradle<\/th><td>180–240\u00a0mm[^<]*<\/td><td class="write" data-found="clearance"><\/td>/,
    );
  });

  it('lists what was tightened from the box, with its torque and a blank for when', () => {
    expect(sheet(guideHtml())).toMatch(
      /M8 flange nuts, 4<span class="detail">25\u00a0N·m[^<]*<\/span><\/th><td class="write"><\/td>/,
    );
  });

  it('asks nobody to turn a fastener again that is used once', () => {
    const nut = fixture.guide.items.get('m8-nut') as Item & { kind: 'kit' };
    const items = new Map([...fixture.guide.items, ['m8-nut', { ...nut, reuse: false } as Item]]);
    expect(sheet(guideHtml({ ...fixture.guide, items }))).not.toContain('M8 flange nuts, 4');
  });
});
