import { cuttersOf } from '../job/cutters.ts';
import { actionsOf } from '../job/walk.ts';
import type { CutTemplate } from '../model/cut-template.ts';
import type { Step } from '../model/guide.ts';
import type { Ref } from '../model/inline.ts';
import type { Item } from '../model/item.ts';
import type { Written } from '../source/span.ts';
import type { Millimetres } from '../units/quantity.ts';

/** A template with the radius of the cutter that its cutting step names: no inner corner can be tighter. */
export function finishTemplate(
  template: CutTemplate,
  steps: readonly Step[],
  items: ReadonlyMap<string, Item>,
): CutTemplate {
  const radii = steps.flatMap((step) =>
    actionsOf(step)
      .filter(({ node }) => node.verb === 'cut' && node.target.value === template.id)
      .flatMap(({ node }) => radiiOf(cuttersOf(node, step), items)),
  );
  return { ...template, cutterRadius: radii.sort((a, b) => b.value - a.value)[0] ?? null };
}

function radiiOf(refs: readonly Ref[], items: ReadonlyMap<string, Item>): Written<Millimetres>[] {
  return refs.flatMap(({ value, at }) => {
    const tool = items.get(value);
    return tool?.kind === 'tool' && tool.cutterRadius ? [{ value: tool.cutterRadius.value.base, at }] : [];
  });
}
