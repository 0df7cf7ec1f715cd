import { type ActionRule, actionRules } from '../job/actions.ts';
import type { Inline } from '../model/prose.ts';
import { quantity, ref, refs, words } from './attribute-types.ts';
import { type DirectiveReader, directive } from './directive.ts';
import { targetOf } from './mention.ts';
import { when } from './when.ts';

const amount = quantity('length', 'volume', 'mass', 'area');
const over = quantity('area', 'length');

/** What only a supply that is put on can say. */
const ofApply: ReadonlySet<string> = new Set(['amount', 'on', 'over']);

/** What an action may carry; `trial` goes with what is done for good; `amount`, `on` and `over`
 * with what is applied. */
function attributesOf(rule: ActionRule) {
  const all = { with: refs, say: words, as: words, when, trial: ref, amount, on: refs, over };
  const allowed = Object.entries(all).filter(
    ([name]) => (name !== 'trial' || rule.forGood) && (!ofApply.has(name) || rule.verb === 'apply'),
  );
  // Attributes that a verb does not allow are never read, so they come out as undefined.
  return Object.fromEntries(allowed) as Partial<typeof all> as typeof all;
}

function summaryOf({ verb, words: said, particle }: ActionRule): string {
  const counted = `Says and counts: ${said}${particle ? ` … ${particle}` : ''}.`;
  return verb === 'apply'
    ? `${counted} The amount is printed in both systems of units. What the supply is put on, \`on\`, is not worked on before it is dry, and \`over\` says how much of it is covered.`
    : counted;
}

/** Every action of the action table: what the hands do, within the sentence that says it. */
export const actions: readonly DirectiveReader<Inline>[] = actionRules.map((rule) =>
  directive({
    name: rule.verb,
    form: 'text',
    label: 'required',
    attributes: attributesOf(rule),
    summary: summaryOf(rule),
    example: `:${rule.verb}[some-id]`,
    build: ({ values, unknown, directive: found, scope }) => {
      const target = targetOf(found, scope);
      return (
        target && {
          type: 'action',
          verb: rule.verb,
          target,
          with: values.with?.value ?? [],
          say: values.say?.value ?? null,
          as: values.as?.value ?? null,
          amount: values.amount ?? null,
          on: values.on?.value ?? [],
          over: values.over ?? null,
          trial: values.trial?.value ?? null,
          when: values.when,
          inSequence: null,
          unknown,
          at: found.at,
        }
      );
    },
  }),
);
