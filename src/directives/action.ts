import { type ActionRule, actionRules, type TargetKind } from '../job/actions/actions.ts';
import type { Inline } from '../model/prose.ts';
import { meant } from './attributes/attribute.ts';
import { quantity, ref, refs, words } from './attributes/attribute-types.ts';
import { when } from './attributes/when.ts';
import { type DirectiveReader, directive } from './directive.ts';
import { targetOf } from './mention.ts';

const amount = quantity('length', 'volume', 'mass', 'area');
const over = quantity('area', 'length');

/** What only a supply that is put on can say; where it goes is said of what is routed too. */
const ofApply: ReadonlySet<string> = new Set(['amount', 'over']);

/** What an action may carry; `trial` goes with what is done for good; `amount`, `on` and `over`
 * with what is applied. */
function attributesOf(rule: ActionRule) {
  const all = {
    with: meant(
      refs,
      'The tools it is done with. They stand in a line under the step; without it, a tool that the step mentions must fit.',
    ),
    say: meant(
      words,
      'Words in the place of the verb, as in `say="lift away"`. What is counted stays the same.',
    ),
    as: meant(
      words,
      'Words in the place of the name, as in `as="its screws"`. What is counted stays the same.',
    ),
    when,
    trial: meant(ref, 'The step in which the fit was tried. What cannot be undone comes after it.'),
    to: meant(
      words,
      'Where what leaves the job goes, as in `to="scrap metal"` or `to="the bin for hazardous waste"`. It is printed behind the name.',
    ),
    amount: meant(
      amount,
      'How much of the supply this takes. All amounts together may not be more than its `quantity`.',
    ),
    on: meant(
      refs,
      'What it is put on: that lies open, and nothing is done to it before it is dry, or after its open time is over. Of what is routed, the parts along which it lies: in a visit no other guide may cut into these unseen.',
    ),
    over: meant(over, 'How much is covered. With `yields` on the supply, the amount must do for it.'),
  };
  const allowed = Object.entries(all).filter(
    ([name]) =>
      (name !== 'trial' || rule.forGood) &&
      (!ofApply.has(name) || rule.verb === 'apply') &&
      (name !== 'on' || rule.verb === 'apply' || rule.verb === 'route') &&
      (name !== 'to' || rule.verb === 'discard'),
  );
  // Attributes that a verb does not allow are never read, so they come out as undefined.
  return Object.fromEntries(allowed) as Partial<typeof all> as typeof all;
}

const targets: { readonly [K in TargetKind]: string } = {
  part: 'a part',
  fastener: 'a fastener',
  kit: 'something from the box',
  connector: 'a connector',
  supply: 'a supply',
  condition: 'a condition',
  setting: 'a setting',
  measure: 'a reading',
  inspection: 'an inspection',
  template: 'a cut template',
  hole: 'a hole of one',
};

function summaryOf(rule: ActionRule): string {
  const { verb, words: said, particle } = rule;
  const counted = `Prints “${said}${particle ? ` … ${particle}` : ''}” and counts what it is done to. ${tableRow(rule)}`;
  return verb === 'apply'
    ? `${counted} The amount is printed in both systems of units. What the supply is put on, \`on\`, is not worked on before it is dry, and \`over\` says how much of it is covered.`
    : counted;
}

/** The row of the action table in words. */
function tableRow({ on, from, to, undoneBy, forGood, tool }: ActionRule): string {
  const states = from.length > 0 ? ` From ${from.join(', ')} to ${to.join(' or ')}.` : '';
  const undone = undoneBy.length > 0 ? ` Undone by ${undoneBy.map((by) => `\`:${by}\``).join(' or ')}.` : '';
  return `Done to ${on.map((kind) => targets[kind]).join(', ')}.${states}${undone}${forGood ? ' Cannot be undone.' : ''}${toolWords[tool]}`;
}

const toolWords: { readonly [K in ActionRule['tool']]: string } = {
  drive: ' A tool must fit where there is a drive.',
  always: ' A tool must be named or mentioned.',
  hand: '',
  never: ' Done by hand, without a tool.',
};

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
          to: values.to?.value ?? null,
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
