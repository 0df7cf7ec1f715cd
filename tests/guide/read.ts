import { collector } from '../../src/diagnostics/report.ts';
import type { ReadingContext } from '../../src/guide/index.ts';
import { readGuide, readPlatform } from '../../src/guide/index.ts';
import { actionWords, findTarget } from '../../src/job/index.ts';
import type { Block } from '../../src/model/block.ts';
import type { Guide, Step } from '../../src/model/guide.ts';
import type { Prose } from '../../src/model/prose.ts';
import type { Platform } from '../../src/model/shop.ts';
import { sourceFile } from '../../src/source/source-file.ts';
import { usualWords } from '../../src/trade/words.ts';

const platformText = `---
title: Example van
options:
  fog: Front fog lamps
  lamps: {one-of: {halogen: Halogen, led: LED}}
---

A van.

::part[Bumper cover]{#cover}
`;

/**
 * A guide read from its body, on a platform with fog lamps and a choice of headlamps.
 *
 * @param more what else the platform's file says
 */
export function readBody(body: string, procedures: { readonly [id: string]: string } = {}, more = '') {
  const { findings, report } = collector();
  const platforms = new Map<string, Platform>();
  const context: ReadingContext = {
    crib: new Map(),
    supplies: new Map(),
    fastenerTypes: new Map(),
    platforms,
    words: usualWords,
    procedures: new Map(
      Object.entries(procedures).map(([id, text]) => {
        const path = `procedures/${id}.md`;
        return [id, sourceFile(path, text.startsWith('---') ? text : `---\ntitle: ${id}\n---\n\n${text}`)];
      }),
    ),
    resolve: (_, path) => path,
    textOf: () => null,
  };
  const platform = readPlatform(sourceFile('platforms/example-van.md', platformText + more), context, report);
  if (platform) platforms.set(platform.id, platform);
  const text = body.startsWith('---') ? body : `---\ntitle: Example\nplatform: example-van\n---\n\n${body}`;
  const guide = readGuide(sourceFile('example/guide.md', text), context, report);
  return { guide, findings };
}

/** The guide of a body in which nothing is wrong. */
export function soundGuide(body: string, procedures: { readonly [id: string]: string } = {}): Guide {
  const { guide, findings } = readBody(body, procedures);
  if (!guide || findings.length > 0) throw new Error(findings.map(({ message }) => message).join('\n'));
  return guide;
}

/** Every step of a guide, in order. */
export const stepsIn = (guide: Guide): readonly Step[] => guide.sections.flatMap(({ steps }) => steps);

/** A step's sentences as a technician reads them; words for some builds stand in braces. */
export function told(guide: Guide, step: Step): string {
  const side = step.side?.value ?? null;
  const words = (prose: Prose): string =>
    prose
      .map((node) => {
        if (node.type === 'text') return node.value;
        if (node.type === 'element') return words(node.children);
        if (node.type === 'where') return `{${words(node.children)}}`;
        if (node.type === 'mention') return node.target.value;
        const target = findTarget(guide, node.target.value);
        return target ? actionWords(node, target, { stepSide: side, starts: true, words: guide.words }) : '?';
      })
      .join('');
  const line = (block: Block) => (block.type === 'prose' ? words(block.content).trim() : `[${block.type}]`);
  return step.blocks.map(line).join('\n');
}
