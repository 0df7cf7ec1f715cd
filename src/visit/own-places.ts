import { type MapNode, mapBlock, mapProse } from '../guide/procedures/map-prose.ts';
import type { Guide } from '../model/guide.ts';
import type { VisitNames } from './names.ts';

/**
 * A guide whose links to its own places lead to where these are in a visit, and whose footnotes are told from those
 * of other guides. A link to a place that the visit does not have is left as words.
 */
export function withOwnPlaces(guide: Guide, by: VisitNames): Guide {
  const places = placesOf(guide, by);
  const map: MapNode = (node) => {
    if (node.type !== 'element') return [node];
    const { id, href } = node.properties;
    const own = typeof id === 'string' ? { id: `${guide.id}_${id}` } : {};
    if (node.tagName !== 'a' || typeof href !== 'string' || !href.startsWith('#'))
      return [{ ...node, properties: { ...node.properties, ...own } }];
    const name = href.slice(1);
    if (!guide.anchors.has(name)) {
      // A footnote, or its way back.
      return [{ ...node, properties: { ...node.properties, ...own, href: `#${guide.id}_${name}` } }];
    }
    const target = places.get(name);
    if (target === undefined) return node.children;
    return [{ ...node, properties: { ...node.properties, ...own, href: `#${target}` } }];
  };
  return {
    ...guide,
    opening: guide.opening.map((block) => mapBlock(block, map)),
    footnotes: mapProse(guide.footnotes, map),
    sections: guide.sections.map((section) => ({
      ...section,
      intro: section.intro.map((block) => mapBlock(block, map)),
      steps: section.steps.map((step) => ({
        ...step,
        blocks: step.blocks.map((block) => mapBlock(block, map)),
      })),
    })),
  };
}

/** Where the places of a guide are in a visit: a section is where its first step is. */
function placesOf(guide: Guide, by: VisitNames): ReadonlyMap<string, string> {
  const places = new Map<string, string>();
  for (const id of guide.templates.keys()) places.set(id, by.item(id));
  for (const { id, intro, steps } of guide.sections) {
    const [first] = steps;
    if (first) places.set(id, by.step(first.id));
    else if (intro.length > 0) places.set(id, by.section(id));
    for (const step of steps) places.set(step.id, by.step(step.id));
  }
  return places;
}
