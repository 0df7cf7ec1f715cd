import { expect, it } from 'vitest';
import { actionsOf, placedInStep } from '../../src/job/actions/walk.ts';
import { whenKey } from '../../src/job/builds/when.ts';
import type { Block } from '../../src/model/block.ts';
import { action, nowhere, prose, stepOf, text, when, written } from './builder.ts';

const message: Block = {
  type: 'message',
  word: 'warning',
  hazard: [text('Live wires')],
  body: [action('set', 'battery-off')],
  when: written(when('fog')),
  at: nowhere,
};

it('finds the actions of a step in the order of the text, with all that must hold', () => {
  const step = stepOf({
    when: 'tow',
    blocks: [message],
    do: ['tool lever', { do: 'disconnect plug', where: 'lamps is led', when: 'fog' }, 'remove cover'],
  });
  const told = actionsOf(step).map(({ node, whens }) => [node.verb, ...whens.map(whenKey)]);
  expect(told).toEqual([
    ['set', 'tow', 'fog'],
    ['disconnect', 'tow', 'lamps=led', 'fog'],
    ['remove', 'tow'],
  ]);
});

it('reads what a note mentions, and takes no orders from it', () => {
  const note: Block = {
    type: 'note',
    title: null,
    body: [action('remove', 'cover')],
    when: null,
    at: nowhere,
  };
  const step = stepOf({ blocks: [note, prose(text('Wait.'))], do: [] });
  expect(placedInStep(step)).toHaveLength(1);
  expect(actionsOf(step)).toEqual([]);
});
