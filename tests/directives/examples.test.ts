import { describe, expect, it } from 'vitest';
import { directives } from '../../src/directives/index.ts';
import { wear } from '../../src/directives/wear.ts';
import { nounOf } from '../../src/job/index.ts';
import type { Wear } from '../../src/model/item.ts';
import { directiveIn, scopeWith } from './read.ts';

/** What the examples expect the tool crib to hold. */
function crib() {
  const { directive } = directiveIn('::wear[Eye protection]{#eye-protection}', 'wear');
  const item = wear.read(directive, scopeWith().scope) as Wear;
  return new Map([[item.id, item]]);
}

describe('the example of each directive is read without a finding', () => {
  it.each(directives.map((one) => [`${one.form} ${one.name}`, one] as const))('%s', (_, one) => {
    const { directive, findings: inText } = directiveIn(one.example, one.name);
    const { scope, findings } = scopeWith({ crib: crib() });
    expect(one.read(directive, scope)).not.toBeNull();
    expect([...inText, ...findings].map(({ message }) => message)).toEqual([]);
  });
});

describe('what a declaration becomes', () => {
  const read = (text: string, name: string) => {
    const { scope, findings } = scopeWith();
    const reader = directives.find((one) => one.name === name && one.form === 'leaf');
    return { value: reader?.read(directiveIn(text, name).directive, scope), findings };
  };

  it('a kit item counts per side, and carries its torque in passes', () => {
    const { value } = read(
      '::kit[Seat bolt]{#seat-bolt count=2 side=each thread=M10x1.25 torque="20 N·m, +90°"}',
      'kit',
    );
    expect(value).toMatchObject({
      kind: 'kit',
      id: 'seat-bolt',
      noun: nounOf('Seat bolt'),
      count: { value: 2 },
      side: { value: 'each' },
      torque: { value: [{ kind: 'torque' }, { kind: 'turn' }] },
    });
  });

  it('an item without a count is one, and says that nobody wrote it', () => {
    const { value } = read('::part[Cover]{#cover}', 'part');
    expect(value).toMatchObject({ count: { value: 1 }, countWritten: false });
  });

  it('a value that cannot be read is unknown, and the rest stands', () => {
    const { value, findings } = read('::kit[Nut]{#nut count=4 torque="25 mm"}', 'kit');
    expect(value).toMatchObject({ count: { value: 4 }, torque: null, unknown: new Set(['torque']) });
    expect(findings.map(({ code }) => code)).toEqual(['attribute-value']);
  });

  it('a repeated attribute is unknown: neither value is taken', () => {
    const { value, findings } = read('::kit[Nut]{#nut count=4 count=6}', 'kit');
    expect(value).toMatchObject({ count: { value: 1 }, unknown: new Set(['count']) });
    expect(findings.map(({ code }) => code)).toEqual(['attribute-repeated']);
  });
});
