import { describe, expect, it } from 'vitest';
import { actionWords, countWords, mentionWords } from '../../src/job/words/phrase.ts';
import type { Verb } from '../../src/model/inline.ts';
import type { Item, Side } from '../../src/model/item.ts';
import { usualWords } from '../../src/trade/words.ts';
import {
  type ActionWords,
  action,
  condition,
  connector,
  fastener,
  kit,
  mention,
  part,
  supply,
} from './builder.ts';

function say(verb: Verb, item: Item, words: ActionWords = {}, stepSide: Side | null = null): string {
  return actionWords(
    action(verb, item.id, words),
    { kind: 'item', item },
    {
      stepSide,
      starts: false,
      words: usualWords,
    },
  );
}

const arch = fastener('arch-screw', { label: 'Arch screw', side: 'each' });
const liner = fastener('liner-screw', { label: 'Liner screw', count: 3, side: 'each' });
const plug = connector('fog-plug', { label: 'Fog lamp plug', side: 'each' });
const cover = part('cover', { label: 'Bumper cover' });
const nut = kit('m8-nut', { label: 'M8 flange nut', count: 4, torque: '25 N·m' });
const tape = supply('tape', { label: 'Masking tape, 25 mm', quantity: '2 m' });

describe('an action names verb, article, count and noun', () => {
  it('of one and of several', () => {
    expect(say('remove', cover)).toBe('remove the bumper cover');
    expect(say('fit', nut)).toBe('fit the 4 M8 flange nuts');
  });

  it('of one on each side', () => {
    expect(say('disconnect', plug)).toBe('disconnect both fog lamp plugs');
    expect(say('disconnect', plug, {}, 'each')).toBe('disconnect the fog lamp plug');
    expect(say('disconnect', plug, {}, 'left')).toBe('disconnect the fog lamp plug');
  });

  it('of several on each side', () => {
    expect(say('remove', liner)).toBe('remove the 6 liner screws (3 each side)');
    expect(say('remove', liner, {}, 'each')).toBe('remove the 3 liner screws');
    expect(say('remove', arch, {}, 'each')).toBe('remove the arch screw');
  });

  it('of one side only, told where the step does not', () => {
    const right = part('bracket', { label: 'Bracket', side: 'right' });
    expect(say('remove', right)).toBe('remove the right bracket');
    expect(say('remove', right, {}, 'right')).toBe('remove the bracket');
    expect(say('remove', part('b', { label: 'Right-hand bracket', side: 'right' }))).toBe(
      'remove the right-hand bracket',
    );
  });

  it('leaves spares in the box', () => {
    for (const verb of ['fit', 'start', 'tighten', 'remove'] as const) {
      expect(say(verb, kit('clip', { count: 5, spare: 1 }))).toBe(`${verb} the 4 clips`);
    }
    expect(countWords(kit('clip', { count: 5, spare: 1, side: 'each' }))).toBe('8 (4 each side)');
  });
});

describe('the words of an action', () => {
  it('tells the torque in both units', () => {
    expect(say('tighten', nut)).toBe('tighten the 4 M8 flange nuts to 25\u00a0N·m (18.4\u00a0lbf·ft)');
    expect(say('tighten', kit('nut', { torque: '20 N·m, +90°' }))).toBe(
      'tighten the nut to 20\u00a0N·m (14.8\u00a0lbf·ft), then a further 90°',
    );
    expect(say('tighten', arch, {}, 'each')).toBe('tighten the arch screw');
  });

  // An inch is 25.4 mm and a US fluid ounce 29.573 53 ml (NIST SP 811, App. B.8): 23.62 in, which
  // is told as closely as it was written, and 0.6763 fl oz.
  it('tells the amount of a supply, in both systems', () => {
    expect(say('apply', tape, { amount: '0.6 m' })).toBe(
      'apply 0.6\u00a0m (23\u00a01/2\u00a0in) of masking tape',
    );
    expect(say('apply', tape, { amount: '24 in' })).toBe('apply 24\u00a0in (610\u00a0mm) of masking tape');
    expect(say('apply', tape, { amount: '20 ml' })).toBe(
      'apply 20\u00a0ml (0.676\u00a0US\u00a0fl\u00a0oz) of masking tape',
    );
    expect(say('apply', tape)).toBe('apply masking tape');
    expect(say('take-off', tape)).toBe('take off the masking tape');
  });

  it('takes the verb and the noun that the author says', () => {
    expect(say('remove', cover, { say: 'lift away' })).toBe('lift away the bumper cover');
    expect(say('disconnect', plug, { as: 'fog plugs' })).toBe('disconnect both fog plugs');
    expect(say('move-aside', cover)).toBe('move the bumper cover aside');
    expect(say('move-aside', cover, { say: 'fold back' })).toBe('fold back the bumper cover');
    const battery = condition('battery-off', { label: 'Battery isolated' });
    expect(say('set', battery)).toBe('set “battery isolated”');
    expect(say('set', battery, { say: 'unbolt', as: 'negative lead' })).toBe('unbolt the negative lead');
  });

  it('begins a sentence with a capital', () => {
    const target = { kind: 'item', item: cover } as const;
    expect(
      actionWords(action('remove', 'cover'), target, { stepSide: null, starts: true, words: usualWords }),
    ).toBe('Remove the bumper cover');
  });
});

it('prints a mention as the noun alone', () => {
  expect(mentionWords(mention('part', 'cover'), cover.noun, false)).toBe('bumper cover');
  expect(mentionWords({ ...mention('part', 'cover'), as: 'big cover' }, cover.noun, true)).toBe('Big cover');
});

it('counts for lists', () => {
  expect([liner, plug, nut, cover].map(countWords)).toEqual(['6 (3 each side)', '2 (1 each side)', '4', '1']);
});
