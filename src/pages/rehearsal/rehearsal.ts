import { plainText } from '../../html/prose.ts';
import { usesOfStep } from '../../job/actions/uses.ts';
import { actionsOf, placedIn } from '../../job/actions/walk.ts';
import { actionsIn, portable } from '../../job/dry-run/portable.ts';
import { scriptOf } from '../../job/dry-run/script.ts';
import { findTarget, isFixing, mentionWords, provesOf, stepsOf, targetNoun } from '../../job/index.ts';
import { oncePer } from '../../job/once.ts';
import type { Prove } from '../../model/block.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action } from '../../model/inline.ts';
import type { Job, Plan } from '../../model/job.ts';
import type { PlayedAction } from '../../model/violation.ts';
import { writtenDrive } from '../../trade/drives.ts';
import type { GuideContext } from '../frame/context.ts';
import { editionWords, stepPrint } from '../frame/identity.ts';
import { plainActionWords, questionsOf } from './questions.ts';
import type { LaidOut, Name, RehearsalData } from './rehearsal-data.ts';

/** What a rehearsal of a guide is made from. */
export function rehearsalData(guide: Guide, job: Job, { steps }: Pick<GuideContext, 'steps'>): RehearsalData {
  const { script, ledger } = wholePlay(guide)(job);
  const written = writtenActions(guide);
  const ask = questionsOf(guide);
  const { vehicle, left, right } = guide.words;
  const proves = provesOf(guide).flatMap((block) => (block.type === 'prove' ? [block] : []));
  const titleOf = new Map(stepsOf(guide).map(({ id, titleText }) => [id, titleText]));
  return {
    guide: guide.id,
    title: guide.title.value,
    edition: editionWords(guide),
    fingerprint: job.fingerprint,
    words: { vehicle, left, right },
    plans: job.plans.map((plan) => rehearsedPlan(plan, guide)),
    ledger,
    names: namesIn(guide),
    steps: Object.fromEntries([...steps.values()].map(({ step }) => [step.id, rehearsedStep(step, job)])),
    drives: drivesIn(guide),
    titles: script.scenes.map(
      ({ step }) => (step ? titleOf.get(step.id) : proofTitle(proves.shift(), guide)) ?? '',
    ),
    actions: actionsIn(script).map((action) => {
      const { node, step } = written.get(action) ?? { node: null, step: null };
      const target = node && findTarget(guide, node.target.value);
      if (!node || !target) return { text: '', asks: [], sequence: null };
      const { inSequence: turn } = node;
      return {
        text: plainActionWords(node, target, step, guide),
        asks: ask(node, step),
        sequence: turn && { label: turn.label, place: turn.place },
      };
    }),
  };
}

/** A whole job ready for playing, and the same as plain data: the rehearsal and the guide's own data hold it alike. */
export const wholePlay = oncePer((guide: Guide) =>
  oncePer((job: Job) => {
    const script = scriptOf(guide, firstBuilds(job), null);
    return { script, ledger: portable(script) };
  }),
);

/** One build of each plan: all of a plan read alike. */
export function firstBuilds(job: Job): readonly Plan['builds'][number][] {
  return job.plans.map(({ builds: [first = {}] }) => first);
}

interface WrittenAction {
  readonly node: Action;
  readonly step: Step | null;
}

function writtenActions(guide: Guide): ReadonlyMap<PlayedAction, WrittenAction> {
  return new Map<PlayedAction, WrittenAction>([
    ...placedIn(provesOf(guide)).flatMap(({ node }) =>
      node.type === 'action' ? [[node, { node, step: null }] as const] : [],
    ),
    ...stepsOf(guide).flatMap((step) => actionsOf(step).map(({ node }) => [node, { node, step }] as const)),
  ]);
}

function proofTitle(prove: Prove | undefined, guide: Guide): string | undefined {
  return (
    prove &&
    plainText(prove.title, (node) => {
      const target = node.type === 'mention' ? findTarget(guide, node.target.value) : null;
      return target && node.type === 'mention' ? mentionWords(node, targetNoun(target), false) : '';
    })
  );
}

function namesIn(guide: Guide): { readonly [id: string]: Name } {
  const ids = [
    ...guide.items.keys(),
    ...[...guide.templates.values()].flatMap(({ id, holes, slots, patterns }) => [
      id,
      ...[...holes, ...slots, ...patterns].flatMap((feature) => feature.id ?? []),
    ]),
  ];
  return Object.fromEntries(
    ids.flatMap((id) => {
      const target = findTarget(guide, id);
      if (!target) return [];
      const { singular, plural } = targetNoun(target);
      return [[id, { one: singular, many: plural }]];
    }),
  );
}

function drivesIn({ items }: Guide): readonly string[] {
  const drives = [...items.values()].flatMap((item) =>
    isFixing(item) && item.drive ? [item.drive.value] : [],
  );
  return [...new Set(drives.map(writtenDrive))];
}

function rehearsedStep(step: Step, job: Job) {
  return {
    title: step.titleText,
    fingerprint: stepPrint(step.id, job),
    after: step.after.map(({ value }) => value),
    people: step.people,
    wait: step.wait?.value ?? 0,
    hurts: step.blocks.some((block) => block.type === 'message' && block.word !== 'notice'),
  };
}

function rehearsedPlan({ statement, found, steps, gather, builds: [build = {}] }: Plan, guide: Guide) {
  const line = ({
    item,
    firstStep,
  }: {
    readonly item: string;
    readonly firstStep: string | null;
  }): LaidOut[] => {
    const found = guide.items.get(item);
    if (found?.kind !== 'tool' && found?.kind !== 'supply' && found?.kind !== 'wear') return [];
    const or = found.kind === 'tool' ? found.or.map(({ value }) => value) : [];
    return [{ id: item, kind: found.kind, label: found.noun.label, step: firstStep, or }];
  };
  const layOut = [...gather.wear, ...gather.tools, ...gather.supplies].flatMap(line);
  const laid = new Set(layOut.map(({ id }) => id));
  const byId = new Map(stepsOf(guide).map((step) => [step.id, step]));
  return {
    // What is found hangs on the vehicle of the day: who rehearses says which way it goes.
    statement: found === '' ? statement : `${statement}; found: ${found}`,
    numbers: Object.fromEntries(steps.map(({ id, number }) => [id, number])),
    layOut: layOut.filter(({ step }) => step !== null),
    minutes: Object.fromEntries(steps.flatMap(({ id, time }) => (time ? [[id, time.likely]] : []))),
    waits: Object.fromEntries(
      steps.flatMap(({ id, after }) => {
        const waits = after.flatMap(({ step, wait }) => (wait > 0 ? [{ step, minutes: Number(wait) }] : []));
        return waits.length > 0 ? [[id, waits]] : [];
      }),
    ),
    uses: Object.fromEntries(
      steps.flatMap(({ id }) => {
        const step = byId.get(id);
        const used = step ? usesOfStep(step, guide, build).map(({ item }) => item) : [];
        return used.length > 0 ? [[id, [...new Set(used)].filter((item) => laid.has(item))]] : [];
      }),
    ),
  };
}
