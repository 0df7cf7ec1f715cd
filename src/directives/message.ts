import type { Block } from '../model/block.ts';
import type { SignalWord } from '../trade/signal-words.ts';
import { when } from './attributes/when.ts';
import { type BlockReader, directive } from './directive.ts';

const words: { readonly [K in SignalWord]: string } = {
  danger: 'A hazard that will kill or seriously injure if it is not avoided.',
  warning: 'A hazard that could kill or seriously injure if it is not avoided.',
  caution: 'A hazard that could injure slightly or moderately if it is not avoided.',
  notice: 'Damage that is not an injury.',
};

/** Safety messages after ANSI Z535.6: the label names the hazard, the text what happens and how to avoid it. */
export const messages: readonly BlockReader[] = (Object.keys(words) as SignalWord[]).map((word) =>
  directive({
    name: word,
    form: 'container',
    label: 'required',
    attributes: { when },
    summary: words[word],
    example: `:::${word}[Flying chips]\nChips can injure an eye. Wear eye protection.\n:::`,
    build: ({ values, directive: found, scope }): Block | null =>
      found.form === 'container'
        ? {
            type: 'message',
            word,
            hazard: scope.prose(found.label ?? []),
            body: scope.body(found.children),
            when: values.when,
            at: found.at,
          }
        : null,
  }),
);
