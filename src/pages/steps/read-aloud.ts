import { sectionsOf } from '../../job/actions/uses.ts';
import { allHold } from '../../job/builds/when.ts';
import { actionsOf, actionWords, findTarget, isFixing, mentionWords, targetNoun } from '../../job/index.ts';
import { capitalised } from '../../job/words/noun.ts';
import type { Block } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Plan, PlannedStep } from '../../model/job.ts';
import type { Prose } from '../../model/prose.ts';
import type { Build } from '../../model/when.ts';
import { formatMinutes } from '../../units/estimate.ts';
import { formatTorque } from '../../units/torque.ts';
import { peopleWords, sideWords } from './steps.ts';

/** What it takes to read a step: the guide, the build that stands in the bay, and the step. */
interface Reading {
  readonly guide: Guide;
  readonly build: Build;
  /** `null` for words outside a step. */
  readonly step: Step | null;
}

/**
 * Every step of one plan as the technician reads it, in plain text: the head of its section with the messages that
 * guard it, its number, title and sides, its safety messages, its sentences with each action in full, and what stands
 * under it. What is proved at the end stands there too. What other builds have is left out.
 */
export function readAloud(guide: Guide, plan: Plan): string {
  const [build] = plan.builds;
  if (!build) return '';
  const planned = new Map(plan.steps.map((one) => [one.id, one] as const));
  return sectionsOf(guide, build)
    .flatMap((section) => {
      const intro = section.intro.flatMap((block) => blockLines(block, { guide, build, step: null }));
      const steps = section.steps.flatMap((step) => {
        const own = planned.get(step.id);
        return own ? [stepLines(own, { guide, build, step })] : [];
      });
      if (intro.length === 0 && steps.length === 0) return [];
      const title = linesOf(section.title, { guide, build, step: null }).join(' ');
      return [[`== ${title} ==`, ...intro.map(indented)].join('\n'), ...steps];
    })
    .join('\n\n');
}

const indented = (line: string) => `   ${line}`;

function stepLines({ number, tools, wear }: PlannedStep, reading: Reading & { readonly step: Step }): string {
  const { guide, step } = reading;
  const named = (ids: readonly string[]) =>
    ids.map((one) => guide.items.get(one)?.noun.singular ?? one).join(', ');
  const facts = [sideWords(step.side?.value ?? null, guide.words), peopleWords(step.people)].filter(
    (fact) => fact !== null,
  );
  const title = facts.length === 0 ? step.titleText : `${step.titleText} (${facts.join('; ')})`;
  const rounds =
    step.times && step.until
      ? `Repeat until the ${named([step.until.value])} is as expected, at most ${step.times.value} times`
      : step.times && `Do this ${step.times.value} times`;
  const under = [
    ...sequenceLines(reading),
    ...(tools.length > 0 ? [`Tools: ${named(tools)}`] : []),
    ...(rounds ? [rounds] : []),
    ...(wear.length > 0 ? [`Wear: ${named(wear)}`] : []),
    ...(step.signOff ? ['A second person looks at it and signs'] : []),
    ...(step.wait ? [`Then wait ${formatMinutes(step.wait.value)}`] : []),
    ...(step.stop ? ['The job ends here'] : []),
  ];
  const lines = step.blocks.flatMap((block) => blockLines(block, reading));
  return [`${number}. ${title}`, ...[...lines, ...under].map(indented)].join('\n');
}

/** A sentence that names a whole sequence, as the page tells it: all through their first pass, then the second. */
function sequenceLines({ guide, build, step }: Reading): readonly string[] {
  const members = (step ? actionsOf(step) : []).flatMap(({ node, whens }) => {
    const item = guide.items.get(node.target.value);
    if (node.verb !== 'tighten' || !node.inSequence || !item || !isFixing(item)) return [];
    return allHold(whens, build) ? [item] : [];
  });
  const rounds = Math.max(0, ...members.map(({ torque }) => torque?.value.length ?? 0));
  return Array.from({ length: rounds }, (_, pass) =>
    members.flatMap(({ noun, torque }) => {
      const own = torque?.value[pass];
      return own ? [`${noun.plural} to ${formatTorque([own])}`] : [];
    }),
  )
    .flat()
    .map((line, index) => `${index + 1}) ${line}`);
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
      return linesOf(block.body, reading);
    case 'prove':
      return [...linesOf(block.title, reading), ...linesOf(block.body, reading)];
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
  // Where a phrase of other builds is left out, the spaces on both sides of it meet.
  return lines
    .map((line) => line.replace(/ {2,}/g, ' ').trim())
    .filter((line) => line !== '' && line !== '-');
}

function startsSentence(sofar: string): boolean {
  // Nothing but the blanks round a phrase of other builds may stand at the beginning of a line.
  return /(?:^(?:- )?\s*|[.!?:]\s+)$/.test(sofar);
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
