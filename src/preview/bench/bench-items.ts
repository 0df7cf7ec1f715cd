import { directiveNames } from '../../guide/index.ts';
import { nounOf } from '../../job/words/noun.ts';
import type { SourceFile } from '../../source/source-file.ts';
import { readMarkdown } from '../../syntax/read.ts';

/** Something that a mark can point at. */
export interface PointedItem {
  readonly id: string;
  /** The word that mentions it: `part`, `fastener`. */
  readonly kind: string;
  readonly name: string;
}

/** What the shop and the platforms call what a guide takes from them, by id. */
export type KnownItems = ReadonlyMap<string, string>;

/** What can be seen in a picture. */
const seen: ReadonlySet<string> = new Set(['part', 'fastener', 'kit', 'connector', 'tool', 'supply', 'wear']);

/** What a guide declares and a picture can show, in its own order: it need not be without faults. */
export function itemsOf(source: SourceFile, known: KnownItems): readonly PointedItem[] {
  const { document } = readMarkdown(source, directiveNames, () => undefined);
  return document.nodes.flatMap((node) => {
    if (node.type !== 'directive' || node.form !== 'leaf' || !seen.has(node.name)) return [];
    const id = node.attributes.find(({ name }) => name === 'id')?.value;
    if (!id) return [];
    const label = node.labelText.trim();
    const type = node.attributes.find(({ name }) => name === 'type')?.value ?? '';
    const name = label === '' ? (known.get(id) ?? known.get(type) ?? id) : nounOf(label).label;
    return [{ id, kind: node.name, name }];
  });
}
