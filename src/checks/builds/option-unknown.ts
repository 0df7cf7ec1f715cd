import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { nearest } from '../../diagnostics/suggest.ts';
import { conditionsOf } from '../../job/index.ts';
import type { Option, When } from '../../model/when.ts';
import type { Rule } from '../rule.ts';

const card: RuleCard = {
  code: 'option-unknown',
  severity: 'error',
  title: 'A condition asks about an option that the vehicle does not have',
  why: 'A mistyped option is on no build, so what stands under it is never read. The step that it hides may be the one that unplugs a lamp.',
  bad: '::step[Look behind]{#look}\n\nLook behind the edge. :where[Mind the lamp wires.]{when=foglamps}',
  good: '::step[Look behind]{#look}\n\nLook behind the edge. :where[Mind the lamp wires.]{when=fog}',
};

/** Every option and choice that a condition names is one of the platform's or the guide's. */
export const optionUnknown: Rule = {
  card,
  run: ({ guide }, report) => {
    const { options, impossible } = guide.builds;
    const told = new Set<string>();
    for (const when of [...conditionsOf(guide).map((one) => one.when), ...impossible]) {
      for (const { atom, message, likely } of faultsOf(when.value, options)) {
        const { file, start } = atom.at;
        // A derived step repeats the conditions of its source.
        if (told.has(`${file}\n${start}`)) continue;
        told.add(`${file}\n${start}`);
        const suggestion = likely === undefined ? undefined : { at: atom.at, text: likely };
        report(finding(card, atom.at, message, { suggestion }));
      }
    }
  },
};

interface OptionFault {
  readonly atom: When;
  readonly message: string;
  readonly likely?: string | undefined;
}

function faultsOf(when: When, options: readonly Option[]): readonly OptionFault[] {
  switch (when.kind) {
    case 'not':
      return faultsOf(when.of, options);
    case 'and':
    case 'or':
      return when.of.flatMap((part) => faultsOf(part, options));
    case 'has':
    case 'is':
      return faultOfAtom(when, options);
  }
}

function faultOfAtom(
  atom: Extract<When, { readonly kind: 'has' | 'is' }>,
  options: readonly Option[],
): readonly OptionFault[] {
  const option = options.find((one) => one.id === atom.option);
  const value = atom.kind === 'is' ? atom.value : null;
  const tail = value === null ? '' : ` is ${value}`;
  if (!option) {
    const [near] = nearest(
      atom.option,
      options.map((one) => one.id),
    );
    const likely = near === undefined ? undefined : `${near}${tail}`;
    return [{ atom, message: `there is no option "${atom.option}"`, likely }];
  }
  if (option.choices === null) {
    if (value === null) return [];
    return [{ atom, message: `"${option.id}" is fitted or not; it has no choices`, likely: option.id }];
  }
  const ids = option.choices.map((choice) => choice.id);
  if (value !== null && ids.includes(value)) return [];
  const [near] = value === null ? [] : nearest(value, ids);
  const message =
    value === null
      ? `"${option.id}" is one of ${ids.join(', ')}; say which, as in "${option.id} is ${ids[0]}"`
      : `"${option.id}" has no choice "${value}"; it is one of ${ids.join(', ')}`;
  return [{ atom, message, likely: near === undefined ? undefined : `${option.id} is ${near}` }];
}
