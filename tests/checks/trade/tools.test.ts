import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { runs } from '../../samples.ts';
import { check, codesOf } from './check.ts';

/** A bolt that is loosened and tightened again with the tools that `with` and `sentence` name. */
function guide({
  drive,
  tools,
  withTools = '',
  sentence = '',
}: {
  drive: string;
  tools: string;
  withTools?: string;
  sentence?: string;
}): string {
  const named = withTools === '' ? '' : `{with="${withTools}"}`;
  return `${tools}
::fastener[Bolt]{#bolt drive="${drive}"}

::step[Turn the bolt]{#turn}

${sentence} :loosen[bolt]${named} and :tighten[bolt]${named}.`;
}

const oneTool = (tool: string, item: string) =>
  guide({ drive: item, tools: `::tool[Tool in hand]{#tool drive="${tool}"}`, withTools: 'tool' });

describe('a tool on a fastener', () => {
  // What goes on and what rounds a head: common practice, no source. The sizes themselves are ISO 272's.
  it.each([
    ['hex 13', 'hex 13', undefined],
    ['twelve-point 13', 'hex 13', undefined],
    ['hex 5/16 in', 'hex 8', 'tool-near-fit'],
    ['hex 3/4 in', 'hex 19', 'tool-near-fit'],
    ['hex 7/16 in', 'hex 11', 'tool-near-fit'],
    ['hex 16', 'hex 5/8 in', 'tool-near-fit'],
    ['hex 5/8 in', 'hex 16', 'tool-misfit'],
    ['hex 1/2 in', 'hex 13', 'tool-misfit'],
    ['hex 13', 'hex 1/2 in', 'tool-misfit'],
    ['hex 10', 'hex 3/8 in', 'tool-misfit'],
    ['T20', 'T25', 'tool-misfit'],
    ['T25', 'T25 security', 'tool-misfit'],
    ['T25 security', 'T25', undefined],
    // A JIS driver seats in a PH recess and not the other way round (common practice, no source).
    ['JIS2', 'PH2', 'tool-near-fit'],
    ['PH2', 'JIS2', 'tool-misfit'],
    ['PH2', 'PZ2', 'tool-misfit'],
    ['pull-out', 'push-in', 'tool-misfit'],
  ])('%s on %s', async (tool, item, code) => {
    const codes = new Set(await codesOf(oneTool(tool, item)));
    expect([...codes]).toEqual(code === undefined ? [] : [code]);
  });

  it('is never told where its drive is the fastener’s own', async () => {
    const flats = fc.integer({ min: 10, max: 80 }).map((halves) => `hex ${halves / 2}`);
    const lobed = fc.constantFrom('T10', 'T25', 'T30 security', 'E12', 'square 2', 'PH2', 'slotted');
    await fc.assert(
      fc.asyncProperty(fc.oneof(flats, lobed), async (drive) => {
        expect(await codesOf(oneTool(drive, drive))).toEqual([]);
      }),
      runs(25, 25),
    );
  });

  it('names the drives of both, and the declared tool that fits', async () => {
    const [told] = await check(
      guide({
        drive: 'T15',
        tools: '::tool[T15 bit]{#bit-t15 drive=T15}\n::tool[Slotted driver]{#driver drive=slotted}',
        withTools: 'driver',
        sentence: 'Hold the :tool[bit-t15] ready.',
      }),
    );
    expect(told).toMatchObject({
      code: 'tool-misfit',
      message: 'the slotted driver (slot) does not fit the bolt (T15)',
      at: 'driver',
      notes: ['T15'],
      mend: 'bit-t15',
    });
  });

  it('may stand in the sentence, or be what serves as well', async () => {
    const bit = '::tool[T15 bit]{#bit-t15 drive=T15}';
    const tools = `${bit}\n::tool[T20 bit]{#bit-t20 drive=T20 or=bit-t15}`;
    const mentioned = guide({ drive: 'T15', tools: bit, sentence: 'Take the :tool[bit-t15].' });
    expect(await codesOf(mentioned)).toEqual([]);
    expect(
      await codesOf(
        guide({ drive: 'T15', tools, withTools: 'bit-t20', sentence: 'Hold the :tool[bit-t15].' }),
      ),
    ).toEqual([]);
  });

  it('may serve as well from the crib, undeclared', async () => {
    const body = guide({
      drive: 'push-in',
      tools: '::tool{#fork}',
      withTools: 'fork',
    });
    const crib =
      'fork: {name: Fork, drive: pull-out, or: [pliers]}\npliers: {name: Pliers, drive: push-in}\n';
    expect(await codesOf({ 'tools.yaml': crib, 'example/guide.md': body })).toEqual([]);
  });

  it('is not on the print where only the explanation names it', async () => {
    const tools = '::tool[T15 bit]{#bit-t15 drive=T15}';
    const body = `${guide({ drive: 'T15', tools })}\n\n:::why\nA :tool[bit-t15] seats deeper than it looks.\n:::`;
    expect(await codesOf(body)).toEqual(['tool-missing']);
  });

  it('needs more than a ratchet', async () => {
    const tools = '::tool[Ratchet]{#ratchet}\n::tool[13 mm socket]{#socket drive="hex 13"}';
    const told = await check(
      `${guide({ drive: 'hex 13', tools, withTools: 'ratchet' })}\n\n::step[Tidy up]{#tidy}\n\nLay the :tool[socket] back.`,
    );
    expect(told[0]?.message).toBe(
      'nothing that is named fits, to loosen the bolt (13 mm hexagon): the ratchet has no drive of its own; name one with with=, or mention it in the step',
    );
  });

  it('is named once on the item, and told once', async () => {
    const body = `::tool[T20 bit]{#bit-t20 drive=T20}
::fastener[Bolt]{#bolt drive=T15 with=bit-t20}

::step[Turn the bolt]{#turn}

:loosen[bolt] and :tighten[bolt].`;
    expect(await check(body)).toMatchObject([{ code: 'tool-misfit', at: 'bit-t20' }]);
  });
});

describe('what could not be read', () => {
  it.each([
    [
      'the drive of the fastener',
      guide({ drive: 'T16', tools: '::tool[T20 bit]{#bit drive=T20}', withTools: 'bit' }),
    ],
    [
      'the drive of the tool',
      guide({ drive: 'T15', tools: '::tool[T15 bit]{#bit drive=T16}', withTools: 'bit' }),
    ],
    ['the tool, which nobody declares', guide({ drive: 'T15', tools: '', withTools: 'bit' })],
    [
      'the torque',
      '::tool[Socket]{#bit drive="hex 13"}\n::fastener[Bolt]{#bolt drive="hex 13" thread=M8x1.25 grade=8.8 torque="25 mm"}\n\n::step[Turn the bolt]{#turn}\n\n:loosen[bolt]{with=bit} and :tighten[bolt]{with=bit}.',
    ],
  ])('%s costs one finding', async (_, body) => {
    expect(new Set(await codesOf(body)).size).toBe(1);
  });
});

describe('a refit that is worked out', () => {
  const strip = (item: string, action: string) => `::tool[10 mm socket]{#socket drive="hex 10"}
::tool[Torque wrench]{#wrench range="2..20 N·m"}
::tool[T20 bit]{#bit-t20 drive=T20}
::fastener[Shutter bolt]{#bolt drive="hex 10" torque="8 N·m"${item}}

## Strip down {#strip-down}

::step[Free the shutter]{#free}

Hold the :tool[bit-t20] ready. ${action}

## Refit {#refit}

::reverse{of=strip-down}
`;

  it('asks for a torque wrench at its own line, with its source', async () => {
    const told = await check(strip('', ':remove[bolt]{with=socket}.'));
    expect(told.map(({ code }) => code)).toEqual(['torque-wrench-missing']);
    expect(told[0]).toMatchObject({
      message:
        'in the refit that is worked out of "Free the shutter", no torque wrench is named to tighten the shutter bolt to 8 N·m (70.8 lbf·in); name one with with=, on the action or on the item',
      at: '::reverse{of=strip-down}',
      notes: [':remove[bolt]{with=socket}', '8 N·m', 'wrench'].map((text) => expect.stringContaining(text)),
    });
  });

  it('is mended on the item where the item names the wrong wrench', async () => {
    const told = await check(
      strip(' with="wrench socket"', ':remove[bolt]{with=socket}.').replace('2..20', '10..20'),
    );
    expect(told).toMatchObject([{ code: 'torque-outside-wrench', at: 'wrench' }]);
    expect(told[0]?.notes).toContain('::reverse{of=strip-down}');
  });

  it('asks at its own line for a wrench that the item does not name', async () => {
    const told = await check(strip(' with=socket', 'Lay the :tool[bit-t20] down and :remove[bolt].'));
    expect(told.map(({ code, at }) => [code, at])).toEqual([
      ['torque-wrench-missing', '::reverse{of=strip-down}'],
    ]);
  });

  it('is content with the tools of the item', async () => {
    expect(await codesOf(strip(' with="wrench socket"', ':remove[bolt]{with=socket}.'))).toEqual([]);
  });

  it('does not repeat what its source has wrong', async () => {
    const told = await codesOf(strip(' with="wrench socket"', ':remove[bolt]{with=bit-t20}.'));
    expect(told).toEqual(['tool-misfit']);
  });

  it('is done with what the strip-down had in hand', async () => {
    const body = `::tool[T15 bit]{#bit drive=T15}
::fastener[Screw]{#screw drive=T15}

## Strip down {#strip-down}

::step[Free the liner]{#free}

Take the :tool[bit] and :remove[screw].

## Refit {#refit}

::reverse{of=strip-down}
`;
    expect(await codesOf(body)).toEqual([]);
  });
});

describe('a torque wrench', () => {
  const turned = (range: string, torque: string) => `::tool[Socket]{#socket drive="hex 13"}
::tool[Torque wrench]{#wrench range="${range}"}
::fastener[Bolt]{#bolt drive="hex 13" torque="${torque}"}

::step[Turn the bolt]{#turn}

:loosen[bolt]{with=socket} and :tighten[bolt]{with="wrench socket"}.`;

  // ISO 6789:2003 checks at 20, 60 and 100 % of the greatest mark; ISO 6789:2017 begins at the lowest mark.
  it.each([
    ['10..60 N·m', '10 N·m', true],
    ['10..60 N·m', '9.9 N·m', false],
    ['10..60 N·m', '60 N·m', true],
    ['10..60 N·m', '45 lbf·ft', false],
    ['0..60 N·m', '12 N·m', true],
    ['0..60 N·m', '11.9 N·m', false],
    // Every pass has to lie within.
    ['40..200 N·m', '20 N·m, 50 N·m', false],
    ['40..200 N·m', '50 N·m, +90°', true],
    ['10..60 N·m', '25 N·m, 45 N·m', true],
  ])('of %s is trusted with %s: %s', async (range, torque, trusted) => {
    expect(await codesOf(turned(range, torque))).toEqual(trusted ? [] : ['torque-outside-wrench']);
  });

  it('is not asked for where only a turn is stated', async () => {
    const body = turned('10..60 N·m', '+90°').replace('with="wrench socket"', 'with=socket');
    expect(await codesOf(body)).toEqual(['item-unused']);
  });
});
