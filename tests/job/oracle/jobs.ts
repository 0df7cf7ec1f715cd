import type { Act, Finding, Job, Thing, Work } from './oracle.ts';

/** A seeded source of choices (mulberry32): the same seed gives the same job on every machine. */
export class Dice {
  #state: number;
  constructor(seed: number) {
    this.#state = seed;
  }
  below(count: number): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0;
    let mixed = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state);
    mixed = (mixed + Math.imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) % count;
  }
  of<T>(some: readonly T[]): T {
    const one = some[this.below(some.length)];
    if (one === undefined) throw new Error('nothing to choose from');
    return one;
  }
  chance(percent: number): boolean {
    return this.below(100) < percent;
  }
}

/** What one feature of a guide brings: what it declares, and its lines of the strip-down and of the refit. */
interface Feature {
  readonly things: readonly Thing[];
  readonly off: readonly string[];
  readonly on: readonly string[];
  /** The cover's own lines, where the feature changes them. */
  readonly cover?: readonly [string, string];
  readonly coverNeeds?: string;
  readonly stepNeeds?: string;
  readonly fog?: boolean;
}

const maybeSided = (dice: Dice) => (dice.chance(40) ? { side: 'each' as const } : {});

const features: readonly ((dice: Dice) => Feature)[] = [
  (dice) => {
    const torque = dice.chance(50) ? { torque: '8 N·m' } : {};
    const things: Thing[] = [
      { kind: 'fastener', id: 'screw', holds: 'cover', ...torque, ...maybeSided(dice) },
    ];
    const loosened = dice.chance(30);
    const tighten = loosened || torque.torque ? ['tighten screw'] : [];
    return {
      things,
      off: [...(loosened ? ['loosen screw'] : []), 'remove screw'],
      on: [dice.chance(30) && tighten.length > 0 ? 'start screw' : 'refit screw', ...tighten],
    };
  },
  (dice) => ({
    things: [{ kind: 'fastener', id: 'hook', holds: 'cover', free: true, ...maybeSided(dice) }],
    off: ['loosen hook'],
    on: ['tighten hook'],
  }),
  (dice) => ({
    things: [{ kind: 'connector', id: 'plug', on: 'cover', ...maybeSided(dice) }],
    off: ['disconnect plug'],
    on: ['connect plug'],
  }),
  (dice) => {
    const aside = dice.chance(50);
    return {
      things: [{ kind: 'part', id: 'lid', covers: dice.of(['cover', 'cover screw']) }],
      off: [aside ? 'move-aside lid' : 'remove lid'],
      on: [aside ? 'move-back lid' : 'refit lid'],
    };
  },
  (dice) => ({
    things: [
      { kind: 'condition', id: 'battery' },
      { kind: 'condition', id: 'waited', needs: 'battery' },
    ],
    off: ['set battery', 'set waited'],
    on: dice.chance(50) ? ['clear battery'] : ['clear waited', 'clear battery'],
    ...(dice.chance(50) ? { coverNeeds: 'waited' } : { stepNeeds: dice.of(['waited', 'battery']) }),
  }),
  (dice) => ({
    things: [
      { kind: 'supply', id: 'tape', temporary: true, ...(dice.chance(20) ? { needs: 'battery' } : {}) },
    ],
    off: ['apply tape'],
    on: ['take-off tape'],
  }),
  (dice) => ({
    things: [{ kind: 'kit', id: 'new-cover', replaces: 'cover' }],
    off: [],
    on: dice.chance(50) ? ['discard cover'] : [],
    cover: ['remove cover', 'fit new-cover'],
  }),
  (dice) => ({
    things: [
      { kind: 'kit', id: 'bar' },
      { kind: 'kit', id: 'nut', holds: 'bar', ...(dice.chance(60) ? { torque: '20 N·m' } : {}) },
      { kind: 'connector', id: 'lead', on: 'bar' },
    ],
    off: [],
    on: [
      'connect lead',
      'fit bar',
      ...(dice.chance(50) ? ['start nut', 'tighten nut'] : ['fit nut', 'tighten nut']),
    ],
  }),
  (dice) => {
    const clip: Thing = { kind: 'fastener', id: 'clip', holds: 'cover', reuse: false };
    if (dice.chance(10)) {
      return dice.chance(60)
        ? { things: [clip], off: ['remove clip'], on: ['refit clip'] }
        : {
            things: [{ kind: 'fastener', id: 'clip', reuse: false }],
            off: ['loosen clip'],
            on: ['tighten clip'],
          };
    }
    const fresh: Thing = dice.chance(50)
      ? { kind: 'kit', id: 'new-clip', replaces: 'clip' }
      : { kind: 'supply', id: 'new-clip', replaces: 'clip' };
    return {
      things: [clip, fresh],
      off: ['remove clip'],
      on: [
        ...(dice.chance(60) ? ['discard clip'] : []),
        fresh.kind === 'kit' ? 'fit new-clip' : 'apply new-clip',
      ],
    };
  },
  () => ({
    things: [{ kind: 'connector', id: 'fog-plug', on: 'cover', when: 'fog' }],
    off: ['disconnect fog-plug'],
    on: ['connect fog-plug'],
    fog: true,
  }),
  () => ({ things: [], off: [], on: [], cover: ['move-aside cover', 'move-back cover'] }),
  (dice) => ({
    things: [{ kind: 'condition', id: 'cured', stays: dice.chance(80) }],
    off: [],
    on: ['set cured'],
  }),
  (dice) => ({
    things: [{ kind: 'setting', id: 'coding' }],
    off: dice.chance(30) ? ['set coding', 'clear coding'] : [],
    on: ['set coding'],
    ...(dice.chance(20) ? { stepNeeds: 'coding' } : {}),
  }),
  (dice) => ({
    things: [{ kind: 'inspection', id: 'thread' }],
    off: dice.chance(80) ? ['inspect thread'] : [],
    on: dice.chance(30) ? ['inspect thread'] : [],
  }),
  (dice) => ({
    things: [
      { kind: 'inspection', id: 'play' },
      { kind: 'kit', id: 'shim', chosen: 'play' },
    ],
    off: dice.chance(90) ? ['inspect play'] : [],
    on: ['fit shim'],
    fog: dice.chance(50),
  }),
  () => ({
    things: [{ kind: 'part', id: 'badge' }],
    off: ['remove badge', 'hand-over badge'],
    on: [],
  }),
];

/** A job that combines two or three features around one cover, sound or with a slip or two. */
export function jobOf(seed: number): Job {
  const dice = new Dice(seed);
  const chosen = new Set<(dice: Dice) => Feature>();
  const wanted = 1 + dice.below(3);
  while (chosen.size < wanted) chosen.add(dice.of(features));
  const made = [...chosen].map((feature) => feature(dice));
  const actOf = (line: string, fog?: boolean): Act => {
    const [verb = '', id = ''] = line.split(' ');
    return { verb, id, ...(fog ? { fog: true } : {}) };
  };
  const lines = (name: 'off' | 'on') => made.map((one) => one[name].map((line) => actOf(line, one.fog)));
  const [lift, back] = made.find((one) => one.cover)?.cover ?? ['remove cover', 'refit cover'];
  // Conditions and covers go first and last; the order among the rest is of no consequence.
  const first = (acts: readonly Act[]) => [...acts].sort((a, b) => rank(a) - rank(b));
  const off = [...first(lines('off').flat()), actOf(lift)];
  const on = [
    actOf(back),
    ...lines('on')
      .toReversed()
      .flat()
      .sort((a, b) => rank(b) - rank(a)),
  ];
  const coverNeeds = made.find((one) => one.coverNeeds)?.coverNeeds;
  const stepNeeds = made.find((one) => one.stepNeeds)?.stepNeeds;
  const things: Thing[] = [
    { kind: 'part', id: 'cover', ...(coverNeeds ? { needs: coverNeeds } : {}) },
    ...made.flatMap((one) => one.things),
  ];
  const known = new Set(things.map(({ id }) => id));
  const whole = things.map((thing) => trimmed(thing, known));
  const acts = slipped([...off, ...on], whole, dice);
  const works = stepsOf(acts, whole, stepNeeds, dice);
  const found = dice.of(['rusty', 'clean'] as const);
  const all = known.has('thread') ? hung(works, found, dice) : works;
  return { things: whole, works: new Dice(-seed).chance(60) ? taped(all) : all, found };
}

/** Tape that is put on the cover, and not just anywhere. */
function taped(works: readonly Work[]): readonly Work[] {
  return works.map((work) => ({
    ...work,
    acts: work.acts.map((act) =>
      act.verb === 'apply' && act.id === 'tape' ? { ...act, onto: 'cover' } : act,
    ),
  }));
}

/** Steps of which some hang on what an inspection finds, mostly on what it does find; a few end the job. */
function hung(works: readonly Work[], found: Finding, dice: Dice): readonly Work[] {
  const other: Finding = found === 'rusty' ? 'clean' : 'rusty';
  return works.map((work) => {
    if (!dice.chance(25)) return work;
    return { ...work, finding: dice.chance(70) ? found : other, ...(dice.chance(40) ? { stop: true } : {}) };
  });
}

function rank({ verb, id }: Act): number {
  if (verb === 'set' || verb === 'clear') return id === 'battery' ? 0 : 1;
  return id === 'lid' ? 2 : 3;
}

/** Relations to what a job does not have are left out: other rules tell of those. */
function trimmed(thing: Thing, known: ReadonlySet<string>): Thing {
  const kept = (ids: string | undefined) =>
    ids
      ?.split(' ')
      .filter((id) => known.has(id))
      .join(' ') || undefined;
  const entries = Object.entries({ ...thing, covers: kept(thing.covers), needs: kept(thing.needs) });
  return Object.fromEntries(entries.filter(([, value]) => value !== undefined)) as unknown as Thing;
}

/** Lines with up to two slips: one lost, said twice, moved, swapped with its neighbour, or of another verb. */
function slipped(acts: readonly Act[], things: readonly Thing[], dice: Dice): readonly Act[] {
  let now = [...acts];
  for (let slips = dice.of([0, 0, 1, 1, 1, 2]); slips > 0; slips -= 1) {
    const at = dice.below(now.length);
    const line = now[at];
    if (!line) continue;
    switch (dice.below(5)) {
      case 0:
        now.splice(at, 1);
        break;
      case 1:
        now.splice(dice.below(now.length + 1), 0, line);
        break;
      case 2:
        now.splice(at, 1);
        now.splice(dice.below(now.length + 1), 0, line);
        break;
      case 3:
        now = now.filter((one) => one.id !== line.id);
        break;
      default:
        now[at] = { ...line, verb: dice.of(verbsOf(things.find(({ id }) => id === line.id))) };
    }
  }
  return now;
}

function verbsOf(thing: Thing | undefined): readonly string[] {
  switch (thing?.kind) {
    case 'part':
      return ['remove', 'refit', 'move-aside', 'move-back', 'discard', 'hand-over'];
    case 'fastener':
      return ['remove', 'refit', 'start', 'tighten', 'loosen', 'discard'];
    case 'kit':
      return ['fit', 'remove', 'discard'];
    case 'connector':
      return ['disconnect', 'connect'];
    case 'condition':
    case 'setting':
      return ['set', 'clear'];
    case 'inspection':
      return ['inspect'];
    default:
      return thing?.temporary ? ['apply', 'take-off'] : ['apply'];
  }
}

function stepsOf(
  acts: readonly Act[],
  things: readonly Thing[],
  needs: string | undefined,
  dice: Dice,
): readonly Work[] {
  const works: Work[] = [];
  for (let rest = [...acts]; rest.length > 0; ) {
    const own = rest.splice(0, 1 + dice.below(4));
    const sided = own.every(({ id }) =>
      things.some((one) => one.id === id && (one.side === 'each' || one.temporary)),
    );
    const side = dice.chance(sided ? 50 : 4)
      ? { side: dice.of(['each', 'each', 'left', 'right'] as const) }
      : {};
    const asks = needs && own.some(({ id }) => id === 'cover') ? { needs } : {};
    const times = dice.chance(5) ? { times: 2 } : {};
    works.push({ ...side, ...asks, ...times, acts: own });
  }
  return works;
}
