import { describe, expect, it } from 'vitest';
import type { Item } from '../../src/model/item.ts';
import { always } from '../../src/pages/frame/plans.ts';
import { mergeSets } from '../../src/pages/overview/gather-sets.ts';
import type { GatherRow } from '../../src/pages/overview/list-views.ts';
import { parseDrive } from '../../src/trade/drives.ts';
import * as make from '../job/builder.ts';
import * as fixture from './fixture.ts';
import { guideHtml } from './render.ts';

/** Tools by label and drive, in the order in which they are needed: the first in step 1, and so on. */
function merged(tools: readonly (readonly [label: string, drive: string, more?: Partial<GatherRow>])[]) {
  const items = tools.map(([label, text], index): [string, Item] => {
    const drive = parseDrive(text);
    if (!drive.ok) throw new Error(drive.message);
    const tool = make.tool(`tool-${index}`, { label });
    return [tool.id, { ...tool, drive: { value: drive.drive, at: tool.at } } as Item];
  });
  const rows = tools.map(
    ([label, , more], index): GatherRow => ({
      ...always,
      item: `tool-${index}`,
      id: `item_tool-${index}`,
      name: label,
      picture: null,
      page: null,
      detail: null,
      amount: [],
      used: [],
      first: [{ ...always, id: `step-${index + 1}`, number: index + 1, title: '' }],
      sizes: [],
      ...more,
    }),
  );
  return mergeSets(rows, new Map(items)).map(({ name, sizes }) =>
    [name, ...sizes.map((one) => `${one.size} in ${one.first.map(({ number }) => number)}`)]
      .join('; ')
      .replaceAll('\u00a0', ' '),
  );
}

/** The guide with two sockets of known size; the one takes the place of the nut driver. */
const withSocket10 = {
  ...fixture.guide,
  items: new Map([
    ...fixture.guide.items,
    ...[
      ['socket-13', '13 mm socket', 'hex 13'] as const,
      ['nut-driver-7', '10 mm socket', 'hex 10'] as const,
    ].map(([id, label, text]): [string, Item] => {
      const drive = parseDrive(text);
      const tool = make.tool(id, { label });
      if (!drive.ok || tool.kind !== 'tool') throw new Error(`no tool: ${label}`);
      return [id, { ...tool, drive: { value: drive.drive, at: tool.at } }];
    }),
  ]),
};

describe('sets of tools', () => {
  it('name each size once, smallest first, with the step that needs it first', () => {
    expect(
      merged([
        ['T20 bit', 'T20'],
        ['13 mm socket', 'hex 13'],
        ['T15 bit', 'T15'],
        ['7 mm socket', 'hex 7'],
      ]),
    ).toEqual(['T15, T20 bits; T15 in 3; T20 in 1', '7, 13 mm sockets; 7 mm in 4; 13 mm in 2']);
  });

  it('keep apart what is not one kind: sockets from spanners, inches from millimetres, crosses by their form', () => {
    const apart = [
      ['10 mm socket', 'hex 10'],
      ['13 mm spanner', 'hex 13'],
      ['1/2 in socket', 'hex 1/2 in'],
      ['PH2 bit', 'PH2'],
      ['PZ2 bit', 'PZ2'],
    ] as const;
    expect(merged(apart)).toEqual(apart.map(([label]) => label));
  });

  it('lose nothing that is said of a tool: its length, what serves as well, its builds', () => {
    const apart = [
      ['T40 bit', 'T40'],
      ['T50 bit, long', 'T50'],
      ['T25 bit', 'T25', { detail: 'or T25 key' }],
      ['T30 bit', 'T30', { plans: '1', only: 'with front fog lamps' }],
    ] as const;
    expect(merged(apart)).toEqual(apart.map(([label]) => label));
  });

  it('keep the anchor of each size, so that mentions still lead there', () => {
    const html = guideHtml(withSocket10);
    expect(html).toContain('10, 13\u00a0mm sockets');
    for (const id of ['socket-13', 'nut-driver-7']) {
      expect(html.match(new RegExp(`id="item_${id}"`, 'g'))).toHaveLength(1);
    }
  });
});

describe('a tool that serves as well', () => {
  it('is called by its name in the crib where the guide does not declare it', () => {
    const spanner = make.tool('nut-driver-7', { label: 'Clip pliers' });
    if (spanner.kind !== 'tool') throw new Error('no tool');
    const items = new Map([...fixture.guide.items].filter(([id]) => id !== spanner.id));
    const shop = { ...fixture.shop, crib: new Map([[spanner.id, spanner]]) };
    expect(guideHtml({ ...fixture.guide, items }, fixture.job, shop)).toContain('or clip pliers');
  });
});
