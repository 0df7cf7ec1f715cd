import { type PanelView, panelViews } from '../../cut/drawing/panel-view.ts';
import { resolve } from '../../cut/shape/resolve.ts';
import { type Markup, markup } from '../../html/markup.ts';
import { placeOfTemplate } from '../../job/builds/template-place.ts';
import { templateVariants } from '../../job/builds/template-variants.ts';
import { allHold } from '../../job/builds/when.ts';
import { listed } from '../../job/index.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import type { Guide } from '../../model/guide.ts';
import type { OrderReason, Visit, VisitSaving, VisitTimes } from '../../model/visit.ts';
import { formatLabour } from '../../trade/labour.ts';
import { formatRun } from '../../units/estimate.ts';
import { base } from '../../units/quantity.ts';
import { type GuideContext, guideFolder, stepRef } from '../frame/context.ts';
import { shortFingerprint } from '../frame/identity.ts';
import { sharedRows } from '../frame/plans.ts';
import type { LinkView, Shown, StepRef } from '../frame/shared-views.ts';
import { cutLength } from '../steps/template-cuts.ts';
import { crewWords } from './schedule.ts';

/** What a page of several guides says of how they became one job. */
export interface VisitView {
  readonly guides: readonly VisitGuideView[];
  readonly savings: readonly SavingView[];
  readonly shared: readonly SharedView[];
  readonly reasons: readonly ReasonView[];
  /** Each panel that the templates of several guides cut. */
  readonly panels: readonly PanelRow[];
}

/** What several guides cut in one panel, on one drawing. */
interface PanelRow extends Shown {
  /** "Roof panel"; "Door skin, left". */
  readonly title: string;
  readonly drawing: Markup;
  /** What each number on the drawing is. */
  readonly templates: readonly LinkView[];
  /** How much panel stays between the nearest two, and what is asked. */
  readonly nearest: string;
}

/** A guide that the visit is planned from. */
interface VisitGuideView {
  readonly link: LinkView;
  /** "part QL-410, revision 2, 3f2a 9c04 b7d1". */
  readonly edition: string;
}

/** The times of the guides one after the other, those of the visit and what is saved; for the builds for which they stand. */
interface SavingView extends Shown {
  readonly rows: readonly SavingRow[];
}

/** A time of the job. */
interface SavingRow {
  readonly label: string;
  /** The sum that it comes from: "3.4 h + 3.2 h = 6.6 h". */
  readonly apart: string;
  readonly together: string;
  readonly saved: string;
}

/** A step that is done once, and for whom. */
interface SharedView {
  /** One. */
  readonly steps: readonly StepRef[];
  readonly title: string;
  /** `null` where it is for all of them. */
  readonly guides: string | null;
}

/** Why steps stand where they do: "Steps 8, 9" and what is said of them, up to another step. */
interface ReasonView {
  readonly steps: readonly StepRef[];
  readonly text: string;
  /** One or none. */
  readonly other: readonly StepRef[];
}

/** What is said of a visit; `null` for a guide of an author. */
export function visitView(guide: Guide, context: GuideContext): VisitView | null {
  const { visit } = guide;
  if (!visit) return null;
  const nameOf = (id: string) => visit.guides.find((guide) => guide.id === id)?.name ?? id;
  return {
    guides: visit.guides.map((guide) => ({
      link: { text: guide.title, href: `${context.root}${guideFolder({ id: guide.id })}index.html` },
      edition: [
        guide.partNumber === null ? null : `part ${guide.partNumber}`,
        guide.revision === null ? null : `revision ${guide.revision}`,
        shortFingerprint(guide.fingerprint),
      ]
        .filter((part) => part !== null)
        .join(', '),
    })),
    savings: savingViews(visit, context),
    shared: visit.shared.flatMap(({ step, guides }) => {
      const ref = stepRef(context, step);
      const whom = guides.length === visit.guides.length ? null : `for ${listed(guides.map(nameOf))}`;
      return ref ? [{ steps: [ref], title: ref.title, guides: whom }] : [];
    }),
    reasons: visit.reasons.flatMap((reason) => reasonView(reason, context) ?? []),
    panels: panelRows(guide, visit, context),
  };
}

/** The panels that templates of several guides cut, as each build has them. */
function panelRows(guide: Guide, { guides }: Visit, context: GuideContext): readonly PanelRow[] {
  const { job } = context;
  const ownerOf = ({ id }: CutTemplate) => guides.find((one) => id.startsWith(`${one.id}_`));
  const variants = [...guide.templates.values()].flatMap((template) =>
    templateVariants(template, guide, job).map((one) => ({
      ...one,
      resolved: resolve(one.template).resolved,
    })),
  );
  const rows = sharedRows(context, (plan) => {
    const here = variants.filter(({ template, plans }) => {
      const [build = {}] = plan.builds;
      return plans.includes(plan) && allHold(placeOfTemplate(guide, template.id), build);
    });
    return panelViews(here).flatMap(({ side, templates, drawing, least }) => {
      const those = templates.flatMap((index) => here[index]?.template ?? []);
      // What one guide cuts by itself stands in that guide.
      if (new Set(those.map((one) => ownerOf(one)?.id)).size < 2) return [];
      const [first] = those;
      const panel = first?.panel ? guide.items.get(first.panel.value) : null;
      const sideWords = side ? `, ${guide.words[side]}` : '';
      return [
        {
          title: `${panel?.noun.label ?? first?.title ?? ''}${sideWords}`,
          drawing,
          templates: those.map((one) => {
            const owner = ownerOf(one);
            return { text: owner ? `${one.title} (${owner.name})` : one.title, href: `#${one.id}` };
          }),
          nearest: nearestWords(least),
        },
      ];
    });
  });
  return rows.map(({ row, shown }) => ({ ...shown, ...row, drawing: markup(row.drawing) }));
}

/** "Nearest: 1A and 2B, with 44 mm (1 47/64 in) of panel between them; at least 15 mm (19/32 in) is asked". */
function nearestWords({ apart, between: [one, other], web }: PanelView['least']): string {
  const asked = web > 0 ? `; at least ${cutLength(web)} is asked` : '; no least web is stated';
  if (apart === 0) return `${one} and ${other} overlap, or one lies within the other${asked}`;
  return `Nearest: ${one} and ${other}, with ${cutLength(apart)} of panel between them${asked}`;
}

function savingViews({ savings }: Visit, context: GuideContext): readonly SavingView[] {
  const rows = sharedRows(context, ({ index }): readonly VisitSaving[] => savings.slice(index, index + 1));
  return rows.map(({ row, shown }) => ({
    ...shown,
    rows: savingRows(row),
  }));
}

/** A line for each time, with the sum that it comes from. */
export function savingRows({ together, apart }: VisitSaving): readonly SavingRow[] {
  const line = (
    label: string,
    of: (times: VisitTimes) => number,
    words: (value: number) => string,
    step = 1,
  ): SavingRow => {
    // Each rounded by itself first: whoever adds up what is printed gets what is printed.
    const rounded = (value: number) => Math.round(value / step) * step;
    const parts = apart.map((times) => rounded(of(times)));
    const sum = parts.reduce((total, part) => total + part, 0);
    const whole = rounded(of(together));
    return {
      label,
      apart: sumWords(parts.map(words), words(sum)),
      together: words(whole),
      saved: sum < whole ? `none, ${words(whole - sum)} more` : words(sum - whole),
    };
  };
  const minutes = (value: number) => formatRun(base<'time'>(value));
  return [
    line('Hands-on', ({ handsOn }) => handsOn, minutes),
    line('Everybody’s time', ({ personMinutes }) => personMinutes, minutes),
    line('Labour', ({ labour }) => labour, formatLabour, 0.1),
    ...together.elapsed.map(({ crew }) =>
      line(
        `Elapsed, ${crewWords(crew).toLowerCase()}`,
        ({ elapsed }) => elapsed.find((one) => one.crew === crew)?.minutes ?? 0,
        minutes,
      ),
    ),
  ];
}

/** A sum that breaks before its signs, and never within a time. */
function sumWords(parts: readonly string[], sum: string): string {
  return parts.length > 1 ? `${parts.join(' +\u00a0')} =\u00a0${sum}` : sum;
}

/** What is said between the steps of a reason and its other step. */
export const reasonWords: { readonly [K in OrderReason['kind']]: string } = {
  'dirty-first': 'chips and swarf before what must stay clean, which begins with',
  'fills-wait': 'done while the other work has to wait after',
  ledger: 'before it, since it changes what is worked on in',
  repeated: 'done for each guide by itself, since they cannot be done once for all',
};

function reasonView({ kind, steps, other }: OrderReason, context: GuideContext): ReasonView | null {
  const refs = steps.flatMap((step) => stepRef(context, step) ?? []);
  if (refs.length === 0) return null;
  return {
    steps: refs,
    text: reasonWords[kind],
    other: [stepRef(context, other ?? '')].flatMap((ref) => ref ?? []),
  };
}
