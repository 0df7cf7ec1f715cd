import { qrCode, qrModules } from '../../drawings/qr-code.ts';
import type { Markup } from '../../html/markup.ts';
import { stringify } from '../../html/stringify.ts';
import { capitalised, listed, lowered } from '../../job/words/noun.ts';
import type { Block } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { Build } from '../../model/when.ts';
import { type TradeWords, usualWords } from '../../trade/words.ts';
import { type GuideContext, pageAddress, shownStep } from '../frame/context.ts';
import { always, shownWhen } from '../frame/plans.ts';
import type { Shown, VaryingView } from '../frame/shared-views.ts';
import type { PlanCode } from './pick-data.ts';

/** What the first sheet of a print holds besides the head of the page. */
export interface CoverView {
  /** The code of the page, which its script turns into that of a build; `null` where the shop has no address. */
  readonly code: CodeView | null;
  /** What is written down of the vehicle and the job, or typed in before a job sheet is printed. */
  readonly fields: readonly { readonly id: string; readonly label: string }[];
  /** Whether the shop's first paper for a browser's print is Letter, else A4. */
  readonly letter: boolean;
  /** What the customer decides, to be written down; `null` where nothing is. */
  readonly wishes: string | null;
  readonly templates: readonly CoverTemplate[];
}

/** A QR code with the address that it holds. */
interface CodeView {
  readonly address: string;
  readonly drawing: Markup;
}

/** A cut template that goes with the print. */
interface CoverTemplate extends Shown {
  readonly title: string;
  /** "A4: 3 sheets", one for each paper, side and drawing; empty where none is drawn. */
  readonly sheets: readonly VaryingView[];
}

/** The cover of a guide's print. */
export function coverView(guide: Guide, context: GuideContext): CoverView {
  const page = pageAddress(context.shop.settings.address, guide);
  const deciding = guide.builds.options.filter(({ id }) => context.job.decidingOptions.includes(id));
  const wishes = deciding.flatMap(({ wish, name }) => (wish ? [lowered(name)] : []));
  return {
    code: page === null ? null : code(page),
    fields: [
      { id: 'identity', label: identifiedBy(guide.words) },
      { id: 'odometer', label: 'Odometer, or hours run' },
      { id: 'job', label: 'Job number' },
      { id: 'customer', label: 'Customer' },
    ],
    letter: context.shop.settings.papers.find((paper) => paper === 'a4' || paper === 'letter') === 'letter',
    wishes: wishes.length === 0 ? null : `As the customer wishes: ${listed(wishes)}`,
    templates: [...guide.templates.values()].map((template) => ({
      ...shownTemplate(template.id, guide, context),
      title: template.title,
      sheets: context.shelf
        .template(template.id)
        .files.flatMap(({ sheets, detail, plans, only }) =>
          sheets === null ? [] : [{ text: `${sheets}: ${detail}`, plans, only }],
        ),
    })),
  };
}

/** What tells one vehicle from all others: its registration, and on a road vehicle the number of its chassis. */
function identifiedBy({ registration }: TradeWords): string {
  return registration === usualWords.registration
    ? `${capitalised(registration)} or VIN`
    : capitalised(registration);
}

/** `#build=fog:yes,lamps:led`: what makes the page show a build, as its script reads and writes it. */
export function buildFragment(build: Build, options: readonly string[]): string {
  const choices = options.map((option) => {
    const value = build[option] ?? false;
    return `${option}:${typeof value === 'string' ? value : value ? 'yes' : 'no'}`;
  });
  return `#build=${choices.join(',')}`;
}

function code(address: string): CodeView {
  return { address, drawing: stringify([qrCode(address, `QR code of ${address}`)]) };
}

/**
 * The codes of the page and of each plan, for the page's script. That of a plan names the first of its builds,
 * which all read alike, and leaves open what an inspection will find. Empty where there is one plan alone, or no address.
 */
export function planCodes({ guide, job, shop }: GuideContext): readonly PlanCode[] {
  const page = pageAddress(shop.settings.address, guide);
  if (page === null || job.plans.length < 2) return [];
  const options = job.decidingOptions.filter((id) => guide.items.get(id)?.kind !== 'inspection');
  const fragments = job.plans.map(({ builds: [build] }) =>
    build && options.length > 0 ? buildFragment(build, options) : '',
  );
  return ['', ...fragments].map((fragment) => [fragment, qrModules(page + fragment)]);
}

/** A template stands for the builds of its place in the text. */
function shownTemplate(id: string, guide: Guide, context: GuideContext): Shown {
  const isPlace = (block: Block) => block.type === 'template' && block.template.value === id;
  for (const section of guide.sections) {
    const place = section.intro.find(isPlace);
    if (place?.type === 'template') return shownWhen(context, place.when);
    for (const step of section.steps) {
      const inStep = step.blocks.find(isPlace);
      const numbered = context.steps.get(step.id);
      if (inStep?.type !== 'template') continue;
      if (inStep.when) return shownWhen(context, inStep.when);
      if (numbered) return shownStep(context, numbered);
    }
  }
  return always;
}
