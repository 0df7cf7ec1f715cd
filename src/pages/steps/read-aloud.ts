import { actionWords, findTarget, mentionWords, targetNoun } from '../../job/index.ts';
import { capitalised } from '../../job/noun.ts';
import { allHold } from '../../job/when.ts';
import type { Block } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Plan } from '../../model/job.ts';
import type { Prose } from '../../model/prose.ts';
import type { Build } from '../../model/when.ts';

/** What it takes to read a step: the guide, the build that stands in the bay, and the step. */
interface Reading {
  readonly guide: Guide;
  readonly build: Build;
  /** `null` for words outside a step. */
  readonly step: Step | null;
}

/**
 * Every step of one plan as the technician reads it, in plain text: its number and title, its safety messages, its
 * sentences with each action in full, and the tools under it. What other builds have is left out.
 */
export function readAloud(guide: Guide, plan: Plan): string {
  const steps = new Map(
    guide.sections.flatMap((section) => section.steps.map((step) => [step.id, step] as const)),
  );
  const [build] = plan.builds;
  return plan.steps
    .flatMap(({ id, number, tools, wear }) => {
      const step = steps.get(id);
      if (!step || !build) return [];
      const reading = { guide, build, step };
      const named = (ids: readonly string[]) =>
        ids.map((one) => guide.items.get(one)?.noun.singular ?? one).join(', ');
      const lines = step.blocks.flatMap((block) => blockLines(block, reading));
      const under = [
        ...(tools.length > 0 ? [`Tools: ${named(tools)}`] : []),
        ...(step.times && !step.until ? [`Do this ${step.times.value} times`] : []),
        ...(step.times && step.until
          ? [
              `Repeat until the ${named([step.until.value])} is as expected, at most ${step.times.value} times`,
            ]
          : []),
        ...(wear.length > 0 ? [`Wear: ${named(wear)}`] : []),
      ];
      return [
        [`${number}. ${step.titleText}`, ...[...lines, ...under].map((line) => `   ${line}`)].join('\n'),
      ];
    })
    .join('\n\n');
}

/** Words that stand in no step, as the technician of one plan reads them: a line for each paragraph and list item. */
export function wordsAloud(prose: Prose, guide: Guide, { builds: [build] }: Plan): readonly string[] {
  return build ? linesOf(prose, { guide, build, step: null }) : [];
}

function blockLines(block: Block, reading: Reading): readonly string[] {
  if (block.type !== 'prose' && block.when && !allHold([block.when.value], reading.build)) return [];
  switch (block.type) {
    case 'prose':
      return linesOf(block.content, reading);
    case 'message': {
      const hazard = linesOf(block.hazard, reading).join(' ');
      return [`${block.word.toUpperCase()}: ${hazard}. ${linesOf(block.body, reading).join(' ')}`];
    }
    case 'note':
    case 'prove':
      return linesOf(block.body, reading);
    case 'figure':
      return [`(Picture: ${linesOf(block.caption, reading).join(' ')})`];
    case 'photo':
      return [`Photograph: ${linesOf(block.shows, reading).join(' ')}`];
    case 'why':
    case 'owner':
    case 'refit-note':
    case 'template':
      return [];
  }
}

const lineMakers = new Set(['p', 'li', 'tr', 'h2', 'h3', 'h4', 'h5', 'h6']);

/** One line for each paragraph, list item and row. */
function linesOf(prose: Prose, reading: Reading): readonly string[] {
  const lines: string[] = [''];
  const say = (nodes: Prose): void => {
    for (const node of nodes) {
      const sofar = lines.at(-1) ?? '';
      switch (node.type) {
        case 'text':
          lines[lines.length - 1] = sofar + node.value.replace(/\s+/g, ' ');
          break;
        case 'where':
          if (allHold([node.when.value], reading.build)) say(node.children);
          break;
        case 'mention':
        case 'action':
          lines[lines.length - 1] = sofar + phrase(node, startsSentence(sofar), reading);
          break;
        case 'element':
          if (lineMakers.has(node.tagName)) lines.push(node.tagName === 'li' ? '- ' : '');
          say(node.children);
          if (lineMakers.has(node.tagName)) lines.push('');
      }
    }
  };
  say(prose);
  return lines.map((line) => line.trim()).filter((line) => line !== '' && line !== '-');
}

function startsSentence(sofar: string): boolean {
  return /(?:^|^- |[.!?:]\s+)$/.test(sofar);
}

function phrase(
  node: Extract<Prose[number], { type: 'mention' | 'action' }>,
  starts: boolean,
  { guide, build, step }: Reading,
): string {
  if (node.when && !allHold([node.when.value], build)) return '';
  const target = findTarget(guide, node.target.value);
  if (node.type === 'action') {
    return target
      ? actionWords(node, target, { stepSide: step?.side?.value ?? null, starts, words: guide.words })
      : node.target.value;
  }
  if (target) return mentionWords(node, targetNoun(target), starts);
  const other = guide.sections.flatMap(({ steps }) => steps).find(({ id }) => id === node.target.value);
  const words = node.as ?? (other ? `“${other.titleText}”` : node.target.value);
  return starts ? capitalised(words) : words;
}
