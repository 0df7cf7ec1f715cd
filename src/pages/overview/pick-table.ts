import { type Markup, markup } from '../../html/markup.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import type { Option } from '../../model/when.ts';
import type { GuideContext } from '../frame/context.ts';
import type { PickerView } from '../guide/guide-views.ts';
import { planCodes } from './cover.ts';
import type { PickTable } from './pick-data.ts';

/** The table of a guide. */
export function pickTable(context: GuideContext): PickTable {
  const { guide, job } = context;
  const keyed = job.plans.flatMap((plan) =>
    plan.builds.map((build) => {
      const values = job.decidingOptions.map((option) => valueText(build[option] ?? false));
      return [values.join(','), plan.index] as const;
    }),
  );
  return {
    options: job.decidingOptions,
    inspections: job.decidingOptions.filter((option) => isFound(option, guide)),
    builds: Object.fromEntries(keyed),
    statements: job.plans.map(({ statement }) => statement),
    codes: planCodes(context),
  };
}

/** The table as JSON for a `<script type="application/json">`: nothing in it can end the element. */
export function tableMarkup(table: PickTable): Markup {
  return markup(JSON.stringify(table).replace(/</g, '\\u003c'));
}

/** How the technician says which vehicle it is; `null` where the guide reads alike for every build. */
export function pickerView({ guide, job }: GuideContext): PickerView | null {
  if (job.plans.length < 2) return null;
  const deciding = guide.builds.options.filter(
    ({ id }) => job.decidingOptions.includes(id) && !isFound(id, guide),
  );
  const statements = [...new Set(job.plans.map(({ statement }) => statement))];
  const facts = deciding.filter(({ wish }) => !wish);
  const wishes = deciding.filter(({ wish }) => wish);
  const asked = (options: readonly Option[], title: string | null) =>
    options.length === 0
      ? []
      : [
          {
            title,
            options: options.map((option) => ({
              id: option.id,
              name: option.name,
              choices: choicesOf(option),
            })),
          },
        ];
  return {
    groups: [
      ...asked(facts, wishes.length > 0 ? `As the ${guide.words.vehicle} is` : null),
      ...asked(wishes, 'As the customer wishes'),
    ],
    plans: statements.map((text) => ({ text, plans: positionsOf(text, job), only: null })),
  };
}

function choicesOf({ choices }: Option) {
  if (choices) return choices.map(({ id, name }) => ({ value: id, name }));
  return [
    { value: 'yes', name: 'Yes' },
    { value: 'no', name: 'No' },
  ];
}

function valueText(value: boolean | string): string {
  if (typeof value === 'string') return value;
  return value ? 'yes' : 'no';
}

function isFound(option: string, guide: Pick<Guide, 'items'>): boolean {
  return guide.items.get(option)?.kind === 'inspection';
}

/** Plans of one build that differ by what is found have one statement. */
function positionsOf(statement: string, { plans }: Pick<Job, 'plans'>): string {
  return plans.flatMap((plan) => (plan.statement === statement ? [plan.index] : [])).join(' ');
}
