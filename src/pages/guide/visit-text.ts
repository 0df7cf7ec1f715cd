import { capitalised, countWords, isFixing, itemTorqueWords, listed } from '../../job/index.ts';
import type { Block } from '../../model/block.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job, Plan } from '../../model/job.ts';
import { formatMinutes } from '../../units/estimate.ts';
import { formatBoth } from '../../units/format.ts';
import { base } from '../../units/quantity.ts';
import { recheckWords } from '../../units/recheck.ts';
import { shortFingerprint } from '../frame/identity.ts';
import { reasonWords, savingRows } from '../overview/visit.ts';
import { wordsAloud } from '../steps/read-aloud.ts';

/**
 * A visit as text for a terminal, plan by plan: what it takes and saves, which steps are shared and why the order is as
 * it is, what to gather, the steps, bags, torques, what is proved and what the owner is told.
 */
export function visitInText(guide: Guide, job: Job): string {
  return job.plans.map((plan) => planInText(guide, job, plan)).join('\n\n');
}

function planInText(guide: Guide, job: Job, plan: Plan): string {
  const numbers = new Map(plan.steps.map(({ id, number }) => [id, number]));
  const sections: readonly (readonly [string, readonly string[]])[] = [
    ['', headLines(guide, job, plan)],
    ['Times, on average', timeLines(guide, plan)],
    ['Done once', sharedLines(guide, numbers)],
    ['Why in this order', reasonLines(guide, numbers)],
    ['To gather', gatherLines(guide, plan)],
    ['Steps', stepLines(guide, plan, numbers)],
    ['Bags', bagLines(guide, plan, numbers)],
    ['Torque log', torqueLines(guide, plan, numbers)],
    [
      'Prove',
      blocksOf(guide).flatMap((block) => (block.type === 'prove' ? listLines(guide, plan, block) : [])),
    ],
    ['For the owner', ownerLines(guide, plan)],
  ];
  return sections
    .filter(([, lines]) => lines.length > 0)
    .map(([title, lines]) =>
      title === '' ? lines.join('\n') : `${title}\n${lines.map((line) => `  ${line}`).join('\n')}`,
    )
    .join('\n\n');
}

function headLines({ title, visit }: Guide, { fingerprint }: Job, { statement }: Plan): readonly string[] {
  return [
    title.value,
    ...(visit?.guides ?? []).map((one) => {
      const edition = [
        one.partNumber && `part ${one.partNumber}`,
        one.revision && `revision ${one.revision}`,
      ];
      return `  ${[one.title, ...edition].filter((part) => part).join(', ')}`;
    }),
    ...(statement === '' ? [] : [capitalised(statement)]),
    `Fingerprint ${shortFingerprint(fingerprint)}`,
  ];
}

function timeLines({ visit }: Guide, { index }: Plan): readonly string[] {
  const saving = visit?.savings[index];
  if (!saving) return [];
  return savingRows(saving).map(
    ({ label, apart, together, saved }) =>
      `${label}: ${apart} one after the other; ${together} in one visit; ${saved} saved`,
  );
}

type Numbers = ReadonlyMap<string, number>;

function sharedLines({ visit, sections }: Guide, numbers: Numbers): readonly string[] {
  const titles = new Map(
    sections.flatMap(({ steps }) => steps.map((step) => [step.id, step.titleText] as const)),
  );
  const nameOf = (id: string) => visit?.guides.find((one) => one.id === id)?.name ?? id;
  return (visit?.shared ?? []).flatMap(({ step, guides }) => {
    const number = numbers.get(step);
    const whom = guides.length === visit?.guides.length ? '' : `, for ${listed(guides.map(nameOf))}`;
    return number === undefined ? [] : [`${number}. ${titles.get(step)}${whom}`];
  });
}

function reasonLines({ visit }: Guide, numbers: Numbers): readonly string[] {
  return (visit?.reasons ?? []).flatMap(({ kind, steps, other }) => {
    const told = steps.flatMap((step) => numbers.get(step) ?? []);
    if (told.length === 0) return [];
    const behind = other === null ? '' : ` step ${numbers.get(other) ?? ''}`;
    return [
      `${told.length === 1 ? 'Step' : 'Steps'} ${listed(told.map(String))}: ${reasonWords[kind]}${behind}`,
    ];
  });
}

function gatherLines({ items }: Guide, { gather }: Plan): readonly string[] {
  const label = (id: string) => items.get(id)?.noun.label ?? id;
  return [
    ...gather.wear.map(({ item }) => `wear    ${label(item)}`),
    ...gather.tools.map(({ item, atOnce }) => `tool    ${label(item)}${atOnce > 1 ? `, ${atOnce}` : ''}`),
    ...gather.supplies.map(
      ({ item, declared }) => `supply  ${label(item)}${declared ? `, ${formatBoth(declared)}` : ''}`,
    ),
    ...gather.kit.map(({ item, count }) => `box     ${label(item)}${count > 1 ? `, ${count}` : ''}`),
  ];
}

function stepLines({ sections }: Guide, plan: Plan, numbers: Numbers): readonly string[] {
  return sections.flatMap(({ titleText, steps }) => {
    const own = steps.flatMap((step) => {
      const number = numbers.get(step.id);
      if (number === undefined) return [];
      const planned = plan.steps.find(({ id }) => id === step.id);
      const facts = [
        planned?.time ? formatMinutes(base<'time'>(planned.time.likely)) : null,
        step.people > 1 ? `${step.people} people` : null,
        planned && planned.wait > 0 ? `then wait ${formatMinutes(base<'time'>(planned.wait))}` : null,
      ].filter((fact) => fact !== null);
      return [`  ${number}. ${step.titleText}${facts.length > 0 ? ` (${facts.join(', ')})` : ''}`];
    });
    return own.length === 0 ? [] : [titleText, ...own];
  });
}

function bagLines({ items }: Guide, { bags }: Plan, numbers: Numbers): readonly string[] {
  return bags.map(({ number, step, contents }) => {
    const things = contents.map(({ item, count, backIn }) => {
      const back = backIn === null ? '' : `, back in step ${numbers.get(backIn) ?? ''}`;
      return `${count} ${items.get(item)?.noun.label ?? item}${back}`;
    });
    return `Bag ${number}, step ${numbers.get(step) ?? ''}: ${things.join('; ')}`;
  });
}

function torqueLines({ items }: Guide, { fasteners }: Plan, numbers: Numbers): readonly string[] {
  const lines = fasteners.flatMap(({ item, tightenedIn }) => {
    const found = items.get(item);
    if (!found || !isFixing(found) || !found.torque || tightenedIn === null) return [];
    const step = numbers.get(tightenedIn) ?? 0;
    return [{ step, words: `${countWords(found)} ${found.noun.label}, ${itemTorqueWords(found)}` }];
  });
  return lines.sort((a, b) => a.step - b.step).map(({ step, words }) => `Step ${step}: ${words}`);
}

function ownerLines(guide: Guide, plan: Plan): readonly string[] {
  const words = blocksOf(guide).flatMap((block) =>
    block.type === 'owner' ? wordsAloud(block.body, guide, plan) : [],
  );
  const again = [...guide.items.values()].flatMap((item) =>
    'recheck' in item && item.recheck
      ? [`- ${item.noun.label}: look again, ${recheckWords(item.recheck.value)}`]
      : [],
  );
  return [...words, ...again];
}

function listLines(guide: Guide, plan: Plan, block: Extract<Block, { type: 'prove' }>): readonly string[] {
  return [...wordsAloud(block.title, guide, plan), ...wordsAloud(block.body, guide, plan)];
}

function blocksOf({ sections }: Guide): readonly Block[] {
  return sections.flatMap(({ intro, steps }) => [...intro, ...steps.flatMap((step) => step.blocks)]);
}
