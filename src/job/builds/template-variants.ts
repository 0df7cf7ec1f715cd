import type { Conditional, CutTemplate, TemplateVariant } from '../../model/cut-template.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job, Plan } from '../../model/job.ts';
import type { Build } from '../../model/when.ts';
import { anyTraitsInWords, type Trait, traitsOf } from './build-words.ts';
import { placeOfTemplate } from './template-place.ts';
import { allHold } from './when.ts';

/** A template as some builds have it, and the plans of these builds. */
export interface DrawnVariant {
  readonly template: CutTemplate;
  readonly plans: readonly Plan[];
}

/** Everything of a template that may stand under a condition. */
export function conditionalsOf(template: CutTemplate): readonly Conditional[] {
  const { datums, outlines, arcs, holes, slots, patterns, keepOuts, panelOutlines } = template;
  return [...datums, ...outlines, ...arcs, ...holes, ...slots, ...patterns, ...keepOuts, ...panelOutlines];
}

/**
 * The drawings that a template comes to, each with what its builds have alone, in the order of the plans. Where
 * nothing in it stands under a condition that is one, and the template as written. A template that no build has
 * comes to none.
 */
export function templateVariants(
  template: CutTemplate,
  guide: Guide,
  job: Pick<Job, 'plans' | 'decidingOptions'>,
): readonly DrawnVariant[] {
  const parts = conditionalsOf(template).filter(({ when }) => when !== null);
  if (parts.length === 0) return [{ template, plans: job.plans }];
  const stands = placeOfTemplate(guide, template.id);
  const groups = new Map<string, Plan[]>();
  for (const plan of job.plans) {
    const build = firstBuild(plan);
    if (!allHold(stands, build)) continue;
    const key = parts.map((part) => (isThere(part, build) ? '1' : '0')).join('');
    groups.set(key, [...(groups.get(key) ?? []), plan]);
  }
  const all = [...groups.values()];
  const names = all.length > 1 ? namesOf(all, guide, job.decidingOptions) : [];
  return all.flatMap((plans, index) => {
    const [[plan], name] = [plans, names[index]];
    const variant = name ? { ...name, whole: template } : null;
    return plan ? [{ template: ofBuild(template, firstBuild(plan), variant), plans }] : [];
  });
}

function ofBuild(template: CutTemplate, build: Build, variant: TemplateVariant | null): CutTemplate {
  const kept = <F extends Conditional>(features: readonly F[]) =>
    features.filter((one) => isThere(one, build));
  return {
    ...template,
    datums: kept(template.datums),
    outlines: kept(template.outlines),
    arcs: kept(template.arcs),
    holes: kept(template.holes),
    slots: kept(template.slots),
    patterns: kept(template.patterns),
    keepOuts: kept(template.keepOuts),
    panelOutlines: kept(template.panelOutlines),
    variant,
  };
}

function isThere({ when }: Conditional, build: Build): boolean {
  return when === null || allHold([when.value], build);
}

/** The builds of a plan read alike: any of them tells what is there. */
function firstBuild({ builds }: Plan): Build {
  return builds[0] ?? {};
}

/** Longer names of files are cut off by some printers and sticks. */
const LONGEST_SUFFIX = 60;

/** What tells the drawings apart; where that is too long for the name of a file, or not unique, a number does. */
function namesOf(
  groups: readonly (readonly Plan[])[],
  guide: Guide,
  deciding: readonly string[],
): readonly Omit<TemplateVariant, 'whole'>[] {
  const options = guide.builds.options.filter(({ id }) => deciding.includes(id));
  const buildsOf = (plans: readonly Plan[]) => plans.flatMap((plan) => plan.builds);
  const traits = groups.map((plans) => {
    const others = groups.filter((one) => one !== plans).flatMap(buildsOf);
    return traitsOf(buildsOf(plans), others, options);
  });
  const suffixes = traits.map((sets) => sets.map(suffixOf).join('_or_'));
  const clear =
    new Set(suffixes).size === suffixes.length && suffixes.every(({ length }) => length <= LONGEST_SUFFIX);
  return traits.map((sets, index) => ({
    suffix: clear ? (suffixes[index] ?? '') : `drawing-${index + 1}`,
    builds: anyTraitsInWords(sets),
  }));
}

/** `fog-yes_lamps-led`. */
function suffixOf(traits: readonly Trait[]): string {
  const value = (one: Trait['value']) => (typeof one === 'string' ? one : one ? 'yes' : 'no');
  return traits.map((trait) => `${trait.option.id}-${value(trait.value)}`).join('_');
}
