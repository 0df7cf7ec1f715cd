import { describe, expect, it } from 'vitest';
import {
  boltedTemplate,
  drilledTemplate,
  rivetNutTemplate,
} from '../../../src/checks/trade/example-template.ts';
import { check, codesOf } from './check.ts';

/** A bolt of this thread through this hole; without a drive, so that only the hole is in question. */
const bolted = (thread: string, hole: string) =>
  boltedTemplate(hole)
    .replace('M8x1.25', thread)
    .replace(/::tool\[13 mm socket\].*\n/, '')
    .replace(' drive="hex 13"', '')
    .replace('{with=socket-13}', '');

describe('a hole for a bolt', () => {
  // ISO 273, fine and coarse series.
  it.each([
    ['M5x0.8', '5.3 mm', '5.8 mm'],
    ['M6x1', '6.4 mm', '7 mm'],
    ['M8x1.25', '8.4 mm', '10 mm'],
    ['M10x1.5', '10.5 mm', '12 mm'],
  ])('%s passes from %s to %s', async (thread, fine, coarse) => {
    expect(await codesOf(bolted(thread, fine))).toEqual([]);
    expect(await codesOf(bolted(thread, coarse))).toEqual([]);
  });

  it.each([
    ['M8x1.25', '8 mm', 'clearance-hole-small'],
    ['M8x1.25', '8.3 mm', 'clearance-hole-small'],
    ['M6x1', '8 mm', 'clearance-hole-large'],
    // ASME B18.2.8: 1/4 in passes 17/64 to 19/64.
    ['1/4-20', '1/4 in', 'clearance-hole-small'],
    ['1/4-20', '17/64 in', undefined],
    // Tap drills, ISO 2306: nothing taps them here.
    ['M8x1.25', '6.8 mm', 'clearance-hole-small'],
    ['M6x1', '5 mm', 'clearance-hole-small'],
    // From memory: ASME B18.2.8 begins at 17/32 for 1/2 in, ISO 273 at 21 for M20.
    ['1/2-13', '12.7 mm', 'clearance-hole-small'],
    ['1/2-13', '9/16 in', undefined],
    ['M20x2.5', '5 mm', 'clearance-hole-small'],
    // No table here has it.
    ['M30', '5 mm', undefined],
  ])('%s in %s: %s', async (thread, hole, code) => {
    expect(await codesOf(bolted(thread, hole))).toEqual(code === undefined ? [] : [code]);
  });

  it('of the tap drill is sound where a tap is declared', async () => {
    const tapped = bolted('M8x1.25', '6.8 mm').replace(
      '::kit[M8 bolt]',
      '::tool[M8 tap]{#tap}\n::kit[M8 bolt]',
    );
    const used = tapped.replace(':start[bolt]', 'Cut the thread with the :tool[tap]. Then :start[bolt]');
    expect(await codesOf(used)).toEqual([]);
  });

  it('into which a rivet nut goes is that of the rivet nut', async () => {
    const joint = (hole: string) =>
      bolted('M8x1.25', hole)
        .replace('grade=8.8', 'grade=8.8 stack=rivet-nut')
        .replace('::kit[M8 bolt]', '::kit[Rivet nut]{#rivet-nut thread=M8x1.25}\n::kit[M8 bolt]')
        .replace(':start[bolt]', ':fit[rivet-nut] and :start[bolt]');
    expect(await codesOf(joint('9 mm'))).toContain('rivet-nut-hole');
    expect(await codesOf(joint('11 mm'))).not.toContain('rivet-nut-hole');
  });

  it('is told with the thread as the second place', async () => {
    expect(await check(bolted('M8x1.25', '8 mm'))).toMatchObject([{ notes: ['M8x1.25'] }]);
  });
});

describe('a hole for a rivet nut', () => {
  // Makers give 11 mm for a round M8; 10.9 to 11.2 are seen. There is no standard.
  it.each([
    ['11 mm', []],
    ['9 mm', ['rivet-nut-hole']],
    ['12 mm', ['rivet-nut-hole']],
  ])('of %s', async (hole, codes) => {
    expect(await codesOf(rivetNutTemplate(hole))).toEqual(codes);
  });
});

describe('the bit for a hole', () => {
  it('is told with the one that is declared', async () => {
    expect(await check(drilledTemplate('drill-6'))).toMatchObject([
      { code: 'hole-bit-mismatch', at: 'drill-6', mend: 'drill-9' },
    ]);
  });

  it('is left to the template’s own rule where no declared bit makes the hole', async () => {
    const codes = await codesOf(
      drilledTemplate('drill-6').replace('diameter="9 mm" unit', 'diameter="12 mm" unit'),
    );
    expect(codes).toEqual(['cut-hole-no-bit']);
  });

  it('must be named beside the machine that turns it', async () => {
    const body = drilledTemplate('drill').replace('::kit', '::tool[Battery drill]{#drill}\n::kit');
    expect(await check(body)).toMatchObject([
      {
        code: 'hole-bit-mismatch',
        message: 'nothing says how wide the battery drill drills, and the bolt hole is 9 mm (23/64 in)',
      },
    ]);
  });

  it('is missing where nothing is named', async () => {
    const body = drilledTemplate('none').replace('with=none ', '');
    expect(await check(body)).toMatchObject([
      { code: 'tool-missing', message: expect.stringMatching(/^no tool is named to drill the bolt hole;/) },
    ]);
  });
});
