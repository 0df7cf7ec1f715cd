import { describe, expect, it } from 'vitest';
import { check, codesOf } from './check.ts';

const look = '\n\n::step[Look at the roof]{#look}\n\nLook for dents.';

describe('ratings', () => {
  const chain = '::rating[Bracket]{#bracket limit="75 kg"}\n::rating[Rail]{#rail limit="60 kg"}\n';

  it.each([
    ['60 kg', []],
    ['132 lb', []],
    ['133 lb', ['rating-exceeded']],
    ['70 kg', ['rating-exceeded']],
    // A force is not held against a mass.
    ['900 N', []],
  ])('a claim of %s', async (claim, codes) => {
    expect(await codesOf(`${chain}::rating[Awning]{#awning claim="${claim}"}${look}`)).toEqual(codes);
  });

  it('name the claim and the weakest link', async () => {
    expect(await check(`${chain}::rating[Awning]{#awning claim="70 kg"}${look}`)).toMatchObject([
      {
        message:
          'for the awning, 70 kg (154 lb) is claimed, but the rail is rated 60 kg (132 lb); the weakest link governs',
        at: '70 kg',
        notes: ['60 kg', 'the vehicle maker’s data and the local code govern'],
      },
    ]);
  });

  it('meet only in builds that have both', async () => {
    const both = (when: string) =>
      `::rating[Rail]{#rail limit="60 kg" when=fog}\n::rating[Awning]{#awning claim="70 kg" when="${when}"}\n\n::step[Look at the roof]{#look}\n\nLook for dents. :where[Look at the fog lamps.]{when=fog}`;
    expect(await codesOf(both('fog'))).toEqual(['rating-exceeded']);
    expect(await codesOf(both('not fog'))).toEqual([]);
  });

  it('are silent where a limit cannot be read', async () => {
    const body = `::rating[Rail]{#rail limit="60"}\n::rating[Awning]{#awning claim="70 kg"}${look}`;
    expect(await codesOf(body)).not.toContain('rating-exceeded');
  });
});

describe('circuits', () => {
  const circuit = (load: string, length: string, wire: string, fuse: string) =>
    `::circuit[Feed]{#feed load="${load}" length="${length}" wire="${wire}" fuse="${fuse}" voltage="12 V"}${look}`;

  // ABYC E-11: 18 gauge to 10 gauge, 105 °C, in an engine space; blade fuses of ISO 8820-3.
  it.each([
    ['10 A', '0.5 m', '14 SAE', '15 A', []],
    ['10 A', '0.5 m', '14 SAE', '30 A', []],
    ['10 A', '0.5 m', '14 SAE', '40 A', ['fuse-unsafe']],
    ['10 A', '0.5 m', '14 SAE', '7.5 A', ['fuse-unsafe']],
    ['35 A', '0.3 m', '14 SAE', '50 A', ['wire-overloaded']],
    ['10 A', '0.5 m', '14 SAE', '10 A', ['circuit-marginal']],
    ['10 A', '0.5 m', '14 SAE', '14 A', ['circuit-marginal']],
    ['10 A', '3 m', '14 SAE', '15 A', ['circuit-marginal']],
    ['10 A', '9 m', '14 SAE', '15 A', ['voltage-drop-high']],
  ])('%s over %s of %s behind %s', async (load, length, wire, fuse, codes) => {
    expect(await codesOf(circuit(load, length, wire, fuse))).toEqual(codes);
  });

  it('say that others govern', async () => {
    const [told] = await check(circuit('10 A', '9 m', '14 SAE', '15 A'));
    expect(told?.notes).toContain('the vehicle maker’s data and the local code govern');
  });

  it('cost one finding where a value cannot be read', async () => {
    expect(await codesOf(circuit('10 A', '9 m', '14 gauge', '15 A'))).toHaveLength(1);
  });
});
