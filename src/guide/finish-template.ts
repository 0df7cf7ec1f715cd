import { cuttersOf } from '../job/actions/cutters.ts';
import { actionsOf } from '../job/actions/walk.ts';
import type { CutTemplate } from '../model/cut-template.ts';
import type { Step } from '../model/guide.ts';
import type { Ref } from '../model/inline.ts';
import type { Item } from '../model/item.ts';
import type { Written } from '../source/span.ts';
import type { Millimetres } from '../units/quantity.ts';

/** A template with what the cutters that its cutting steps name can turn, and what they take away. */
export function finishTemplate(
  template: CutTemplate,
  steps: readonly Step[],
  items: ReadonlyMap<string, Item>,
): CutTemplate {
  const refs = steps.flatMap((step) =>
    actionsOf(step)
      .filter(({ node }) => node.verb === 'cut' && node.target.value === template.id)
      .flatMap(({ node }) => cuttersOf(node, step)),
  );
  return {
    ...template,
    cutterRadius: largest(refs, items, 'cutterRadius'),
    cutterDiameter: largest(refs, items, 'diameter'),
  };
}

function largest(
  refs: readonly Ref[],
  items: ReadonlyMap<string, Item>,
  of: 'cutterRadius' | 'diameter',
): Written<Millimetres> | null {
  const sizes = refs.flatMap(({ value, at }) => {
    const tool = items.get(value);
    const size = tool?.kind === 'tool' ? tool[of] : null;
    return size ? [{ value: size.value.base, at }] : [];
  });
  return sizes.sort((a, b) => b.value - a.value)[0] ?? null;
}
