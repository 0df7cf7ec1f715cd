import type { Block } from '../../model/block.ts';
import type { Inline, Prose, ProseNode } from '../../model/prose.ts';

/** What a node of prose becomes: itself, others, or nothing. Its children have been mapped. */
export type MapNode = (node: ProseNode<Inline>) => readonly ProseNode<Inline>[];

/** Prose with each node mapped, inner ones first. */
export function mapProse(prose: Prose, map: MapNode): Prose {
  return prose.flatMap((node) =>
    map('children' in node ? { ...node, children: mapProse(node.children, map) } : node),
  );
}

/** A block with all its prose mapped. */
export function mapBlock(block: Block, map: MapNode): Block {
  const prose = (text: Prose) => mapProse(text, map);
  switch (block.type) {
    case 'prose':
      return { ...block, content: prose(block.content) };
    case 'message':
      return { ...block, hazard: prose(block.hazard), body: prose(block.body) };
    case 'note':
    case 'why':
    case 'owner':
      return { ...block, title: block.title && prose(block.title), body: prose(block.body) };
    case 'refit-note':
      return { ...block, body: prose(block.body) };
    case 'figure':
      return {
        ...block,
        caption: prose(block.caption),
        marks: block.marks.map((mark) => ({ ...mark, text: prose(mark.text) })),
        body: prose(block.body),
      };
    case 'photo':
      return { ...block, shows: prose(block.shows) };
    case 'template':
      return block;
    case 'prove':
      return { ...block, title: prose(block.title), body: prose(block.body) };
  }
}
