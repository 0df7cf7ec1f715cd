import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import { frameOf, type GuideContext } from '../frame/context.ts';
import { identityWords } from '../frame/identity.ts';
import { blockViews } from '../steps/blocks.ts';
import { undoneFigures } from '../steps/undone-figures.ts';
import type { RehearsalView } from './rehearsal-view.ts';

/** A guide's page beside which it is rehearsed, from the folder of both. */
const GUIDE_PAGE = 'index.html';

/** The page of a rehearsal: what the script shows of each step lies ready in it. */
export function rehearsalPage(guide: Guide, job: Job, context: GuideContext): RehearsalView {
  const here: GuideContext = { ...context, places: GUIDE_PAGE, twins: new Map() };
  return {
    frame: frameOf(context, {
      title: `Rehearsal: ${guide.title.value}`,
      styles: [`${context.root}assets/rehearsal.css`],
      words: guide.words,
      scripts: ['crib.js', 'rehearse.js'],
      data: ['rehearsal.js'],
    }),
    title: guide.title.value,
    guide: { text: guide.title.value, href: GUIDE_PAGE },
    edition: identityWords(guide, job),
    steps: [...context.steps.values()].flatMap(({ step }) => {
      const shown = step.blocks.filter(({ type }) => type === 'message' || type === 'figure');
      const blocks = [...blockViews(shown, here, step.side?.value ?? null), ...undoneFigures(step, here)];
      return blocks.length > 0 ? [{ id: step.id, blocks }] : [];
    }),
  };
}
