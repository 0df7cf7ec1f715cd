import type { Guide } from '../../src/model/guide.ts';
import { inspect, memoryFiles } from '../../src/shop/index.ts';
import type { Inspection } from '../../src/shop/inspect/inspection.ts';
import * as fixture from '../pages/fixture.ts';
import { inspection } from './workspace.ts';

const lists = await inspect(
  memoryFiles({
    'shop.yaml': 'name: Quarrel Lane Fitting\n',
    'tools.yaml': `
trim-lever: {name: Trim lever, drive: pull-out, synonyms: [panel popper]}
socket-13: {name: 13 mm socket, drive: hex 13}
torque-60: {name: "Torque wrench, 10–60 N·m", range: 10..60 N·m, synonyms: [click wrench]}
bit-t25: {name: T25 bit, drive: T25, or: [bit-t20]}
bit-t20: {name: T20 bit, drive: T20}
eye-protection: {name: Eye protection, wear: yes, synonyms: [goggles]}
`,
    'fasteners.yaml': `
hex-head-screw: {name: Hexagon-head screw, drive: hex 7, reuse: yes, release: Turn out by hand tool., synonyms: [hex screw]}
panel-screw: {name: Panel screw, drive: T25, reuse: no}
`,
  }),
);

/** The crib and the kinds of fastener of a small shop. */
export const { crib, fastenerTypes } = lists.shop;

/** The fixture's guide, whose arch screw is of a kind that the shop knows. */
export const guide: Guide = {
  ...fixture.guide,
  items: new Map(
    [...fixture.guide.items].map(([id, item]) => [
      id,
      item.kind === 'fastener' ? { ...item, type: { value: 'hex-head-screw', at: item.at } } : item,
    ]),
  ),
};

/** The fixture's workspace with a crib and kinds of fastener. */
export function referenceInspection(): Inspection {
  const found = inspection(guide);
  return { ...found, shop: { ...found.shop, crib, fastenerTypes } };
}
