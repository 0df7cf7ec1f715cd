import { notChecked } from '../../checks/index.ts';
import { actionsOf, type Placed } from '../../job/actions/walk.ts';
import { actionWords, findTarget, isCounted, isFixing, zonesOfStep, zonesOfThing } from '../../job/index.ts';
import type { Guide, Step } from '../../model/guide.ts';
import type { Action } from '../../model/inline.ts';
import type { Item } from '../../model/item.ts';
import type { Job, Plan } from '../../model/job.ts';
import type { Schedule } from '../../model/schedule.ts';
import type { Visit, VisitTimes } from '../../model/visit.ts';
import type { When } from '../../model/when.ts';
import { writtenDrive } from '../../trade/drives.ts';
import type { Quantity } from '../../units/quantity.ts';
import type { Recheck } from '../../units/recheck.ts';
import type { TorquePass } from '../../units/torque.ts';
import { notCheckedWords } from '../overview/not-checked.ts';
import { wholePlay } from '../rehearsal/rehearsal.ts';
import { photoWords } from '../steps/evidence.ts';
import type { GuideJson } from './guide-schema.ts';

type ItemJson = GuideJson['items'][number];
type StepJson = GuideJson['sections'][number]['steps'][number];
type PlanJson = GuideJson['plans'][number];

/**
 * A guide and its totals as data for others to recompute.
 *
 * @param schema address of the JSON Schema, relative to the file
 */
export function guideJson(guide: Guide, job: Job, schema: string): GuideJson {
  const inspections = new Set(
    [...guide.items.values()].filter(({ kind }) => kind === 'inspection').map(({ id }) => id),
  );
  return {
    $schema: schema,
    id: guide.id,
    title: guide.title.value,
    platform: guide.platform.value,
    partNumber: guide.partNumber?.value ?? null,
    revision: guide.revision?.value ?? null,
    updated: guide.updated?.value ?? null,
    fingerprint: job.fingerprint,
    about: {
      meantFor: guide.meantFor?.value ?? null,
      notFor: guide.notFor?.value ?? null,
      doneBy: guide.doneBy?.value ?? null,
      takenOff: guide.takenOff?.value ?? null,
      changes: guide.changes?.value ?? null,
    },
    words: { ...guide.words },
    options: guide.builds.options
      .filter(({ id }) => !inspections.has(id))
      .map(({ id, name, choices, wish }) => ({
        id,
        name,
        choices: choices?.map((choice) => ({ id: choice.id, name: choice.name })) ?? null,
        wish,
      })),
    zones: [...guide.zones.values()].map(({ id, label }) => ({ id, label })),
    items: [...guide.items.values()].map((item) => itemJson(item, guide)),
    sequences: [...guide.sequences.values()].map((sequence) => ({
      id: sequence.id,
      label: sequence.label,
      order: sequence.order.map(({ value }) => value),
    })),
    sections: guide.sections.map(({ id, titleText, steps }) => ({
      id,
      title: titleText,
      steps: steps.map((step) => stepJson(step, guide, job)),
    })),
    notChecked: notChecked(guide).map((one) => ({
      check: one.check,
      item: one.item,
      lacks: one.lacks,
      text: notCheckedWords(one, guide),
      when: one.whens.map(whenText),
    })),
    ledger: wholePlay(guide)(job).ledger,
    visit: guide.visit && visitJson(guide.visit),
    plans: job.plans.map((plan) => planJson(plan, inspections)),
  };
}

function visitJson({ guides, steps, shared, reasons, loads, savings }: Visit): GuideJson['visit'] {
  const timesJson = ({ handsOn, personMinutes, labour, elapsed }: VisitTimes) => ({
    handsOn,
    personMinutes,
    labour,
    elapsed: elapsed.map(({ crew, minutes }) => ({ crew, minutes })),
  });
  return {
    guides: guides.map(({ id, title, partNumber, revision, fingerprint }) => ({
      id,
      title,
      partNumber,
      revision,
      fingerprint,
    })),
    steps: [...steps].map(([step, work]) => ({ step, guides: [...work.guides] })),
    shared: shared.map((one) => ({ step: one.step, guides: [...one.guides] })),
    reasons: reasons.map((one) => ({ kind: one.kind, steps: [...one.steps], other: one.other })),
    loads: loads.map(({ rating, claims, silent }) => ({
      rating,
      claims: claims.map(({ item, guide }) => ({ item, guide })),
      silent: [...silent],
    })),
    savings: savings.map(({ together, apart }) => ({
      together: timesJson(together),
      apart: apart.map(timesJson),
    })),
  };
}

/** The picture that an item's own declaration names. */
function pictureJson({ picture }: Item): ItemJson['picture'] {
  if (!picture?.path) return null;
  return { file: picture.path, shows: picture.alt?.value ?? '' };
}

function itemJson(item: Item, guide: Guide): ItemJson {
  const fixing = isFixing(item) ? item : null;
  return {
    id: item.id,
    kind: item.kind,
    label: item.noun.label,
    when: item.when ? whenText(item.when.value) : null,
    zones: [...zonesOfThing(guide, item.id)],
    picture: pictureJson(item),
    count: countOf(item),
    side: isCounted(item) ? (item.side?.value ?? null) : null,
    drive: fixing?.drive ? writtenDrive(fixing.drive.value) : null,
    standard: fixing?.standard?.value ?? null,
    thread: fixing?.thread?.value.name ?? null,
    grade: fixing?.grade?.value ?? null,
    friction: fixing?.friction?.value.k ?? null,
    torque: fixing?.torque?.value.map(passJson) ?? null,
    quantity: item.kind === 'supply' && item.quantity ? quantityJson(item.quantity.value) : null,
    stack: fixing ? fixing.stack.map(({ value }) => value) : [],
    length: 'length' in item && item.length ? quantityJson(item.length.value) : null,
    coat: fixing?.coat?.value ?? null,
    chosenBy: item.kind === 'kit' ? (item.chosenBy?.value ?? null) : null,
    takes: 'takes' in item ? item.takes.map(({ value }) => value) : [],
    leftHand: fixing?.leftHand ?? false,
    oneByOne: fixing?.oneByOne ?? false,
    recheck: 'recheck' in item && item.recheck ? recheckJson(item.recheck.value) : null,
    dries: timeOf(item, 'dries'),
    cures: timeOf(item, 'cures'),
    openTime: timeOf(item, 'openTime'),
    yields:
      item.kind === 'supply' && item.yields
        ? { does: quantityJson(item.yields.value.does), of: quantityJson(item.yields.value.of) }
        : null,
    pack: item.kind === 'supply' && item.pack ? quantityJson(item.pack.value) : null,
    expect: item.kind === 'measure' && item.expect ? rangeJson(item.expect.value) : null,
    expectWords: item.kind === 'measure' ? [...item.words] : [],
    from: item.kind === 'setting' ? item.from.value : null,
    to: item.kind === 'setting' ? item.to.value : null,
    colour: item.kind === 'circuit' ? (item.colour?.value ?? null) : null,
    ends: item.kind === 'circuit' ? item.ends.map(({ value }) => value) : [],
    crimps: item.kind === 'tool' && item.crimps ? rangeJson(item.crimps.value) : null,
    solders: item.kind === 'tool' && item.solders,
    outcomes: item.kind === 'inspection' ? item.outcomes.map(({ value }) => value) : [],
  };
}

/** One of the times of a product, in minutes. */
function timeOf(item: Item, name: 'dries' | 'cures' | 'openTime'): number | null {
  return item.kind === 'supply' && item[name] ? Number(item[name].value.base) : null;
}

/** How many of an item, per side; of a tool, how many are at hand. */
function countOf(item: Item): number | null {
  if (item.kind === 'tool') return item.atHand;
  return isCounted(item) ? item.count.value : null;
}

function recheckJson(recheck: Recheck) {
  return recheck.map(({ amount, unit }) => ({ amount, unit }));
}

function passJson(pass: TorquePass) {
  return pass.kind === 'torque'
    ? { newtonMetres: Number(pass.value.base) }
    : { degrees: Number(pass.angle.base) };
}

function quantityJson({ written, unit, base }: Quantity) {
  return { written, unit, base: Number(base) };
}

function rangeJson({ least, most }: { readonly least: Quantity; readonly most: Quantity }) {
  return { least: quantityJson(least), most: quantityJson(most) };
}

function stepJson(step: Step, guide: Guide, job: Job): StepJson {
  const zones = zonesOfStep(guide, step);
  return {
    id: step.id,
    title: step.titleText,
    fingerprint: job.stepFingerprints.get(step.id) ?? '',
    side: step.side?.value ?? null,
    time: step.time?.value ?? null,
    times: step.times?.value ?? 1,
    until: step.until?.value ?? null,
    wait: step.wait?.value ?? null,
    people: step.people,
    signOff: step.signOff,
    stop: step.stop,
    anyOrder: step.anyOrder,
    after: step.after.map(({ value }) => value),
    zones: zones === 'off' ? null : [...zones],
    when: step.when ? whenText(step.when.value) : null,
    actions: actionsOf(step).map((placed) => actionJson(placed, step, guide)),
    photos: step.blocks.flatMap((block) =>
      block.type === 'photo'
        ? [{ shows: photoWords(block, guide), when: block.when ? whenText(block.when.value) : null }]
        : [],
    ),
  };
}

function actionJson({ node, whens }: Placed<Action>, step: Step, guide: Guide) {
  const target = findTarget(guide, node.target.value);
  const place = { stepSide: step.side?.value ?? null, starts: false, words: guide.words };
  return {
    verb: node.verb,
    target: node.target.value,
    with: node.with.map((ref) => ref.value),
    amount: node.amount ? quantityJson(node.amount.value) : null,
    on: node.on.map((ref) => ref.value),
    over: node.over ? quantityJson(node.over.value) : null,
    to: node.to,
    text: target ? actionWords(node, target, place) : '',
    when: whens.map(whenText),
  };
}

function planJson(
  { index, statement, builds, steps, gather, time, schedules }: Plan,
  inspections: ReadonlySet<string>,
): PlanJson {
  const [first = {}] = builds;
  const isFound = (id: string) => inspections.has(id);
  return {
    index,
    statement,
    builds: builds.map((build) => Object.fromEntries(Object.entries(build).filter(([id]) => !isFound(id)))),
    found: Object.fromEntries(
      Object.entries(first).flatMap(([id, value]) => (isFound(id) ? [[id, String(value)]] : [])),
    ),
    steps: steps.map(({ id, number, time: own, wait, people, after, tools, wear }) => ({
      id,
      number,
      time: own,
      wait,
      people,
      after: after.map((link) => ({ ...link })),
      tools: [...tools],
      wear: [...wear],
    })),
    gather: {
      tools: gather.tools.map(({ item, firstStep, steps: all, atOnce }) => ({
        item,
        firstStep,
        steps: [...all],
        atOnce,
      })),
      wear: gather.wear.map(({ item, firstStep }) => ({ item, firstStep })),
      supplies: gather.supplies.map(({ item, declared, used, firstStep }) => ({
        item,
        declared: declared ? quantityJson(declared) : null,
        used,
        firstStep,
      })),
      kit: gather.kit.map(({ item, count, perSide, spare, firstStep }) => ({
        item,
        count,
        perSide,
        spare,
        firstStep,
      })),
    },
    time: {
      job: time.job,
      sections: time.sections.map(({ section, estimate }) => ({ section, estimate })),
      helper: time.helper,
      waiting: time.waiting,
      untimed: [...time.untimed],
    },
    schedules: schedules.map(scheduleJson),
  };
}

function scheduleJson({ crew, elapsed, workEnds, handsOn, labour, helpers, tasks }: Schedule) {
  return {
    crew,
    elapsed,
    workEnds,
    handsOn,
    labour,
    helpers: helpers.map(({ from, to, people }) => ({ from, to, people })),
    tasks: tasks.map(({ step, side, start, finish, wait, people, critical }) => ({
      step,
      side,
      start,
      finish,
      wait,
      people,
      critical,
    })),
  };
}

/** A condition as an author writes it: `fog and not (sensors or lamps is led)`. */
export function whenText(when: When): string {
  switch (when.kind) {
    case 'has':
      return when.option;
    case 'is':
      return `${when.option} is ${when.value}`;
    case 'not':
      return `not ${grouped(when.of)}`;
    case 'and':
    case 'or':
      return when.of.map(grouped).join(` ${when.kind} `);
  }
}

function grouped(when: When): string {
  return when.kind === 'and' || when.kind === 'or' ? `(${whenText(when)})` : whenText(when);
}
