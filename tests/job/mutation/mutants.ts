import type { ConditionPlace } from '../../../src/job/index.ts';
import { actionsOf, conditionsOf, stepsOf } from '../../../src/job/index.ts';
import type { Guide, Step } from '../../../src/model/guide.ts';
import type { Action } from '../../../src/model/inline.ts';
import type { Item } from '../../../src/model/item.ts';
import type { Sources } from '../../../src/source/source-file.ts';
import type { Span } from '../../../src/source/span.ts';

/** What was changed, for judging a change that nothing notices. */
export type Change =
  | { readonly kind: 'drop' | 'double'; readonly action: Action }
  | { readonly kind: 'swap'; readonly action: Action; readonly with: Action }
  | { readonly kind: 'count'; readonly item: Item }
  /** `to` is empty where the side is taken away. */
  | { readonly kind: 'side'; readonly of: Item | Step; readonly to: string }
  | { readonly kind: 'when'; readonly place: ConditionPlace };

/** A guide with one line changed. */
export interface Mutant {
  readonly file: string;
  readonly text: string;
  readonly change: Change;
  /** For people: "drop :remove[screw] (guide.md:1234)". */
  readonly name: string;
}

type Edit = { readonly at: Span; readonly text: string };

/** Every mutant of a guide and of the procedures that it places, in the order of the change and the text. */
export function mutantsOf(guide: Guide, sources: Sources): readonly Mutant[] {
  const slice = ({ file, start, end }: Span) => sources.get(file)?.text.slice(start, end) ?? '';
  const mutant = (change: Change, edits: readonly Edit[]): readonly Mutant[] => {
    const [first] = edits;
    const source = first && sources.get(first.at.file);
    if (!first || !source) return [];
    const text = [...edits]
      .sort((a, b) => b.at.start - a.at.start)
      .reduce((left, { at, text: new_ }) => left.slice(0, at.start) + new_ + left.slice(at.end), source.text);
    const name = `${change.kind} ${slice(first.at) || first.text} → ${first.text} (${first.at.file}:${first.at.start})`;
    return text === source.text ? [] : [{ file: first.at.file, text, change, name }];
  };
  const attribute = (value: Span): Span => {
    const text = sources.get(value.file)?.text ?? '';
    const before = /\s*[a-z-]+=["']?$/.exec(text.slice(0, value.start))?.[0] ?? '';
    const after = /^["']/.exec(text.slice(value.end))?.[0] ?? '';
    return { ...value, start: value.start - before.length, end: value.end + after.length };
  };
  const after = (at: Span): Span => ({ ...at, start: at.end });

  const steps = stepsOf(guide).filter((step) => !step.origins.some(({ kind }) => kind === 'reverse'));
  const actions = steps.flatMap((step) => {
    const all = actionsOf(step).map(({ node }) => node);
    return all.flatMap((action, index) => {
      const next = all[index + 1];
      return [
        ...mutant({ kind: 'drop', action }, [{ at: action.at, text: '' }]),
        ...mutant({ kind: 'double', action }, [{ at: after(action.at), text: ` and ${slice(action.at)}` }]),
        ...(next && next.at.file === action.at.file
          ? mutant({ kind: 'swap', action, with: next }, [
              { at: action.at, text: slice(next.at) },
              { at: next.at, text: slice(action.at) },
            ])
          : []),
      ];
    });
  });
  const items = [...guide.items.values()].flatMap((item) => {
    if (!('count' in item)) return [];
    const more = { at: item.count.at, text: String(item.count.value + 1) };
    return [...(item.countWritten ? mutant({ kind: 'count', item }, [more]) : []), ...sides(item, item.side)];
  });
  function sides(of: Item | Step, side: Step['side']): readonly Mutant[] {
    if (!side) return [];
    const other = side.value === 'left' ? 'right' : 'left';
    return [
      ...mutant({ kind: 'side', of, to: '' }, [{ at: attribute(side.at), text: '' }]),
      ...mutant({ kind: 'side', of, to: other }, [{ at: side.at, text: other }]),
    ];
  }
  const stepSides = steps.flatMap((step) => sides(step, step.side));
  const conditions = conditionsOf(guide).flatMap((place) => {
    const { at } = place.when;
    const step = 'step' in place.on ? place.on.step : null;
    if (step?.origins.some(({ kind }) => kind === 'reverse')) return [];
    const whole = attribute(at);
    const name =
      slice({ ...whole, end: at.start })
        .trim()
        .split('=')[0] ?? 'when';
    const change: Change = { kind: 'when', place };
    return [
      ...mutant(change, [{ at: whole, text: ` ${name}="not (${slice(at)})"` }]),
      ...mutant(change, [place.on.kind === 'words' ? withoutWhere(place, sources) : { at: whole, text: '' }]),
    ];
  });
  const unique = new Map([...actions, ...items, ...stepSides, ...conditions].map((one) => [one.name, one]));
  return [...unique.values()];
}

/** The words of a `:where` without the condition around them. */
function withoutWhere({ when }: ConditionPlace, sources: Sources): Edit {
  const text = sources.get(when.at.file)?.text ?? '';
  const close = text.lastIndexOf(']{', when.at.start);
  let depth = 0;
  let open = close;
  do {
    if (text[open] === ']') depth += 1;
    if (text[open] === '[') depth -= 1;
    open -= 1;
  } while (depth > 0 && open > 0);
  const start = open + 1 - ':where'.length;
  const end = text.indexOf('}', when.at.end) + 1;
  return { at: { file: when.at.file, start, end }, text: text.slice(open + 2, close) };
}
