import { actionsOf } from '../job/walk.ts';
import type { CutTemplate } from '../model/cut-template.ts';
import type { Step } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import type { Written } from '../source/span.ts';
import type { Millimetres } from '../units/quantity.ts';

/** A template with the radius of the cutter that its cutting step names: no inner corner can be tighter. */
export function finishTemplate(
  template: CutTemplate,
  steps: readonly Step[],
  items: ReadonlyMap<string, Item>,
): CutTemplate {
  const radii = steps
    .flatMap(actionsOf)
    .filter(({ node }) => node.verb === 'cut' && node.target.value === template.id)
    .flatMap(({ node }) =>
      node.with.flatMap(({ value, at }): Written<Millimetres>[] => {
        const tool = items.get(value);
        return tool?.kind === 'tool' && tool.cutterRadius
          ? [{ value: tool.cutterRadius.value.base, at }]
          : [];
      }),
    );
  return { ...template, cutterRadius: radii.sort((a, b) => b.value - a.value)[0] ?? null };
}
