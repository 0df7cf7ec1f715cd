import { type PlannedSide, planTemplate } from '../../cut/draw-template.ts';
import type { Fonts } from '../../cut/drawing/metrics.ts';
import { markup } from '../../html/markup.ts';
import { type DrawnVariant, templateVariants } from '../../job/index.ts';
import type { SheetPlan } from '../../model/cut-template.ts';
import type { Shop } from '../../model/shop.ts';
import type { Shelf } from '../../pages/frame/context.ts';
import { shortFingerprint } from '../../pages/frame/identity.ts';
import { always, shownIn } from '../../pages/frame/plans.ts';
import type { Shown } from '../../pages/frame/shared-views.ts';
import type { TemplateFile } from '../../pages/steps/block-views.ts';
import { printCheckView } from '../../pages/steps/print-check.ts';
import { isDraft, unverifiedInShort } from '../../release/standing.ts';
import { PAPERS } from '../../trade/paper.ts';
import type { PublishedGuide } from '../publication.ts';

/** What a template comes to: its files, by path from the guide's folder, each written when it is asked for, and how the page shows it. */
export interface CutOutput {
  readonly files: readonly { readonly path: string; readonly write: () => Promise<Uint8Array> }[];
  readonly view: ReturnType<Shelf['template']>;
}

/** The folder of a guide's templates, within the guide's own. */
export const cutFolder = 'cut-templates/';

/** Lays out every template of a guide at full scale, for each paper of the shop. */
export function layOutTemplates(
  published: PublishedGuide,
  { settings }: Shop,
  fonts: Fonts,
): ReadonlyMap<string, CutOutput> {
  const outputs = new Map<string, CutOutput>();
  for (const template of published.guide.templates.values()) {
    const context = { ...sheetIdentity(published, settings), papers: settings.papers, fonts, side: null };
    const drawn: Drawn[] = [];
    for (const variant of templateVariants(template, published.guide, published.job)) {
      const shown = shownVariant(variant, published);
      const { sides } = planTemplate(variant.template, context);
      drawn.push(...sides.map((side) => ({ ...side, shown })));
    }
    outputs.set(template.id, {
      files: drawn.flatMap(({ files }) =>
        files.map(({ name, write }) => ({ path: cutFolder + name, write })),
      ),
      view: {
        drawings: drawn.map(({ shown, side, preview }) => ({
          ...shown,
          side: sideWords(side, published),
          drawing: markup(preview),
        })),
        files: drawn.flatMap((one) => filesOfSide(one, published)),
        printCheck: drawn.length > 0 ? printCheckView(...namedForCutting(published, template.id)) : null,
      },
    });
  }
  return outputs;
}

/** The guide and the template as `baybook cut` names them: of a visit, those of the guide that the template is from. */
function namedForCutting(
  { guide: { id: guide, visit } }: PublishedGuide,
  template: string,
): [string, string] {
  if (!visit) return [guide, template];
  const [owner = '', own] = template.split('_');
  return own === undefined ? [visit.guides[0]?.id ?? guide, template] : [owner, own];
}

/** One side of a template, and the builds that it is drawn for. */
type Drawn = PlannedSide & { readonly shown: Shown };

/** For which plans one of several drawings stands, in the words of its sheets. */
function shownVariant({ template, plans }: DrawnVariant, published: PublishedGuide): Shown {
  if (!template.variant) return always;
  return { ...shownIn(published, plans), only: template.variant.builds };
}

/** What every sheet says of the guide that it belongs to. */
export function sheetIdentity({ guide, job, standing }: PublishedGuide, settings: Shop['settings']) {
  return {
    guideTitle: guide.title.value,
    revision: guide.revision?.value ?? '',
    fingerprint: shortFingerprint(job.fingerprint),
    words: guide.words,
    standing: standing ? unverifiedInShort(standing) : null,
    draft: isDraft(settings, standing),
  };
}

function filesOfSide({ shown, side, files }: Drawn, published: PublishedGuide): readonly TemplateFile[] {
  return files.map((file) => {
    const words = file.plan ? sheetWords(file.plan) : { paper: null, detail: drawingWords[file.format] };
    const told = (...first: readonly (string | null)[]) =>
      [...first, sideWords(side, published), shown.only].filter((part) => part).join(', ');
    return {
      ...shown,
      href: cutFolder + file.name,
      name: told(file.format.toUpperCase(), words.paper),
      sheets: words.paper === null ? null : told(words.paper),
      detail: words.detail,
    };
  });
}

/** A file of sheets as people tell it from others: paper, and how many sheets there are. */
export function sheetWords({ paper, pages }: SheetPlan): { readonly paper: string; readonly detail: string } {
  const name = paper === 'single' ? 'one large sheet' : PAPERS[paper].title;
  return { paper: name, detail: pages === 1 ? '1 sheet' : `${pages} sheets` };
}

const drawingWords = {
  dxf: 'for CAD or a cutter, in mm',
  svg: 'for a plotter or cutter, in mm',
};

function sideWords(side: PlannedSide['side'], { guide }: PublishedGuide): string | null {
  return side === null ? null : `${guide.words[side]} side`;
}
