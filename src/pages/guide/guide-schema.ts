import * as z from 'zod';
import type { LedgerData } from '../../job/dry-run/portable.ts';

/**
 * What a guide's JSON holds, so that others can recompute what Baybook prints. The published JSON Schema and
 * the type of what `guide-json.ts` writes are both made from this. Times are minutes, torques newton metres.
 */

const id = z
  .string()
  .describe('Kebab-case id, as the author wrote it; in a visit what is one guide’s own is guide_id');
const when = z
  .string()
  .nullable()
  .describe('For which builds it stands, as written in when="…"; null for every build');
const minutes = z.number().nonnegative();

const estimate = z.strictObject({ least: minutes, likely: minutes, most: minutes }).describe('Minutes');

const quantity = z
  .strictObject({
    written: z.string().describe('The number as the author wrote it'),
    unit: z.string(),
    base: z
      .number()
      .describe('In the base unit: mm, kg, l, min, N·m, N, kPa, degree, °C, mm², A, V, W, Ω, %'),
  })
  .describe('A quantity');

const side = z.enum(['left', 'right', 'each']).nullable();

const pass = z.union([z.strictObject({ newtonMetres: z.number() }), z.strictObject({ degrees: z.number() })]);

const kind = z.enum([
  'wear',
  'tool',
  'supply',
  'kit',
  'part',
  'fastener',
  'connector',
  'condition',
  'measure',
  'setting',
  'inspection',
  'rating',
  'circuit',
]);

const item = z.strictObject({
  id,
  kind,
  label: z.string(),
  when,
  zones: z.array(id).describe('The zones of the platform in which it lies; empty where nothing tells'),
  picture: z
    .strictObject({
      file: z.string().describe('Its path in the workspace'),
      shows: z.string().describe('What is seen in it'),
    })
    .nullable()
    .describe(
      'What it looks like, where its own declaration says; the pictures of the crib are not repeated',
    ),
  count: z
    .number()
    .int()
    .nullable()
    .describe('Per side; of a tool, how many are at hand; null for what is not counted'),
  side,
  drive: z.string().nullable(),
  standard: z.string().nullable(),
  thread: z.string().nullable(),
  grade: z.string().nullable(),
  friction: z
    .number()
    .nullable()
    .describe('The nut factor that the guide states; null where it states none, and 0.20 is judged'),
  torque: z.array(pass).nullable().describe('The passes of tightening, in order'),
  quantity: quantity.nullable().describe('How much of a supply is declared'),
  stack: z.array(id).describe('What lies on it, from the head to the end of the thread'),
  length: quantity.nullable().describe('Of a bolt, under its head; of what lies on bolts, its thickness'),
  chosenBy: id
    .nullable()
    .describe('The reading or inspection by which so many of it are taken as are wanted'),
  coat: id.nullable().describe('The supply that goes on its thread'),
  takes: z.array(id).describe('Places of the vehicle that it takes for good'),
  leftHand: z.boolean(),
  oneByOne: z.boolean().describe('Only one may be loose at a time'),
  recheck: z
    .array(
      z.strictObject({
        amount: z.number(),
        unit: z.enum(['km', 'mi', 'h', 'day', 'week', 'month', 'year']),
      }),
    )
    .nullable()
    .describe('When it is looked at again: whichever comes first'),
  dries: minutes.nullable().describe('Of a supply: until something may be put over it'),
  cures: minutes.nullable().describe('Of a supply: until what needs it may begin'),
  openTime: minutes.nullable().describe('Of a supply: until what it is for must be in place'),
  yields: z
    .strictObject({ does: quantity, of: quantity })
    .nullable()
    .describe('How far a supply goes: so much area or length to so much of it'),
  pack: quantity.nullable().describe('How much of a supply is in one package'),
  expect: z.strictObject({ least: quantity, most: quantity }).nullable().describe('What a measure should be'),
  expectWords: z.array(z.string()).describe('The words that a measure may read as; empty for a quantity'),
  from: z.string().nullable().describe('What a setting stands at as the vehicle comes'),
  to: z.string().nullable().describe('What a setting is set to'),
  colour: z.string().nullable().describe('Of the insulation of a feed'),
  ends: z.array(id).describe('What goes on the ends of a feed'),
  crimps: z
    .strictObject({ least: quantity, most: quantity })
    .nullable()
    .describe('The sections of wire on which a tool crimps terminals'),
  solders: z.boolean(),
  outcomes: z.array(id).describe('What an inspection may find'),
});

const action = z.strictObject({
  verb: z.string(),
  target: id,
  with: z.array(id).describe('Tools'),
  amount: quantity.nullable(),
  on: z.array(id).describe('What a supply is put on'),
  over: quantity.nullable().describe('How much area or length is covered'),
  to: z.string().nullable().describe('Where what is discarded goes'),
  text: z.string().describe('The action as printed'),
  when: z.array(z.string()).describe('Conditions of its step, block and phrase, outermost first'),
});

const step = z.strictObject({
  id,
  title: z.string(),
  fingerprint: z.string(),
  side,
  time: estimate.nullable().describe('Hands-on, per side'),
  times: z.number().int().describe('How often it is done; with `until`, at most so often'),
  until: id.nullable().describe('The measure whose reading ends the repeating'),
  wait: minutes.nullable(),
  people: z.number().int(),
  signOff: z.boolean(),
  stop: z.boolean().describe('The job ends with it'),
  anyOrder: z.boolean(),
  after: z.array(z.string()),
  zones: z
    .array(id)
    .nullable()
    .describe('The zones in which it is done, none for the whole vehicle; null for work off the vehicle'),
  when,
  actions: z.array(action),
  photos: z
    .array(z.strictObject({ shows: z.string(), when }))
    .describe('Photographs that are asked for as evidence, of each side where the step is done on each'),
});

const firstStep = id.nullable().describe('The step that needs it first');

const expectation = z.strictObject({ mean: minutes, spread: minutes.describe('One standard deviation') });

const schedule = z
  .strictObject({
    crew: z.number().int().describe('Technicians who are there throughout'),
    elapsed: expectation,
    workEnds: minutes,
    handsOn: expectation,
    labour: z.number().describe('Everybody’s time in hours, to a tenth'),
    helpers: z.array(z.strictObject({ from: minutes, to: minutes, people: z.number().int() })),
    tasks: z.array(
      z.strictObject({
        step: id,
        side: z.enum(['left', 'right']).nullable(),
        start: minutes,
        finish: minutes,
        wait: minutes,
        people: z.number().int(),
        critical: z.boolean(),
      }),
    ),
  })
  .describe('Who does what when, at the average time of each step');

const plan = z
  .strictObject({
    index: z.number().int(),
    statement: z.string(),
    builds: z.array(z.record(z.string(), z.union([z.boolean(), z.string()]))),
    found: z
      .record(z.string(), z.string())
      .describe('What its inspections found, where something hangs on it'),
    steps: z.array(
      z.strictObject({
        id,
        number: z.number().int(),
        time: estimate.nullable().describe('For the whole step, both sides'),
        wait: minutes,
        people: z.number().int(),
        after: z
          .array(z.strictObject({ step: z.string(), wait: minutes }))
          .describe('The steps that must come before it, and how long before'),
        tools: z.array(id),
        wear: z.array(id),
      }),
    ),
    gather: z.strictObject({
      tools: z.array(z.strictObject({ item: id, firstStep, steps: z.array(id), atOnce: z.number().int() })),
      wear: z.array(z.strictObject({ item: id, firstStep })),
      supplies: z.array(
        z.strictObject({ item: id, declared: quantity.nullable(), used: z.number().nullable(), firstStep }),
      ),
      kit: z.array(
        z.strictObject({
          item: id,
          count: z.number().int(),
          perSide: z.number().int().nullable(),
          spare: z.number().int(),
          firstStep,
        }),
      ),
    }),
    time: z.strictObject({
      job: estimate,
      sections: z.array(z.strictObject({ section: id, estimate })),
      helper: estimate.describe('Minutes for which a second person is needed'),
      waiting: minutes,
      untimed: z.array(id).describe('Steps that state no time'),
    }),
    schedules: z.array(schedule),
  })
  .describe('The job as it is for the builds that read alike');

const plans = z.array(z.number().int()).optional().describe('The plans in which it stands; without it, all');
const positions = z.array(z.number().int()).optional();
const flag = z.boolean().optional();
const oneSide = z.enum(['left', 'right']).optional();
const bothSides = z.enum(['left', 'right', 'each']).optional();
const amount = z
  .strictObject({ dimension: z.string(), base: z.number() })
  .optional()
  .describe('In the base unit');

const lot = z
  .strictObject({
    id,
    side: oneSide,
    sideWritten: bothSides,
    count: z.number().int(),
    handled: z.number().int().describe('Without spares'),
    start: z.string().describe('How it is before the work begins'),
    thing: z
      .strictObject({
        kind,
        fixing: flag.describe('A fastener, of the vehicle or from the box'),
        once: flag.describe('It serves once'),
        torqued: flag,
        threaded: flag,
        freeWhenLoosened: flag,
        oneByOne: flag,
        stack: z.array(id).optional(),
        coat: id.optional(),
        immobile: flag,
        temporary: flag,
        stays: flag,
        quantity: amount,
        spare: z.number().int().optional(),
        chosen: flag.describe('So many are taken as a reading asks for'),
      })
      .optional()
      .describe('Left out for a template or a hole'),
    cut: z.strictObject({ template: id, whole: z.boolean() }).optional(),
    holds: positions,
    heldBy: positions,
    on: positions,
    plugs: positions,
    covers: positions,
    coveredBy: positions,
    replaces: positions,
    replacedBy: positions,
    needs: positions,
    in: plans,
    outlined: positions.describe('Of a template: the plans in which it has an outline to cut'),
  })
  .describe('All pieces of one item, template or hole on one side; relations are positions in this list');

const ledger = z
  .strictObject({
    lots: z.array(lot),
    actions: z.array(z.strictObject({ verb: z.string(), target: id, trial: id.optional(), amount })),
    scenes: z.array(
      z.strictObject({
        step: z.strictObject({ id, side: bothSides }).nullable().describe('null for a proof'),
        needs: positions,
        moves: z.array(
          z.strictObject({
            action: z.number().int(),
            side: oneSide,
            lots: z.array(z.number().int()),
            onto: positions.describe('What something is put on, or the panel that is cut'),
            hangsOn: positions,
            in: plans,
          }),
        ),
        ends: positions.describe('The plans in which the job ends with it'),
        in: plans,
      }),
    ),
  })
  .describe('What the dry run plays, step by step: with it the guide can be judged in any order of work');
const visitTimes = z.strictObject({
  handsOn: minutes,
  personMinutes: minutes.describe('Everybody’s hands-on time together'),
  labour: z.number().describe('Hours, in tenths'),
  elapsed: z.array(z.strictObject({ crew: z.number().int(), minutes })),
});

const visit = z.strictObject({
  guides: z.array(
    z.strictObject({
      id,
      title: z.string(),
      partNumber: z.string().nullable(),
      revision: z.string().nullable(),
      fingerprint: z.string(),
    }),
  ),
  steps: z.array(z.strictObject({ step: id, guides: z.array(id) })).describe('Whose work each step is'),
  shared: z.array(z.strictObject({ step: id, guides: z.array(id) })).describe('Steps that are done once'),
  reasons: z
    .array(
      z.strictObject({
        kind: z.enum(['dirty-first', 'fills-wait', 'ledger', 'repeated']),
        steps: z.array(id),
        other: id.nullable(),
      }),
    )
    .describe('Why steps stand where they do'),
  loads: z
    .array(
      z.strictObject({
        rating: id,
        claims: z.array(z.strictObject({ item: id, guide: id })).describe('What counts towards it'),
        silent: z.array(id).describe('Guides that name it and state no load'),
      }),
    )
    .describe('Limits that several guides load together'),
  savings: z
    .array(
      z.strictObject({
        together: visitTimes,
        apart: z.array(visitTimes).describe('Each guide by itself, in their order'),
      }),
    )
    .describe('For each plan in turn: average times'),
});

/** The schema. */
const guideSchema = z
  .strictObject({
    $schema: z.string(),
    id,
    title: z.string(),
    platform: id,
    partNumber: z.string().nullable(),
    revision: z.string().nullable(),
    updated: z.string().nullable(),
    fingerprint: z.string(),
    about: z
      .strictObject({
        meantFor: z.string().nullable(),
        notFor: z.string().nullable(),
        doneBy: z.string().nullable().describe('Who may do the work'),
        takenOff: z.string().nullable().describe('What becomes of what was taken off'),
        changes: z.string().nullable().describe('Since the last revision'),
      })
      .describe('What the cover and the owner’s sheet say of the part; null is printed as not stated'),
    words: z
      .strictObject({
        vehicle: z.string(),
        vehicles: z.string(),
        left: z.string(),
        right: z.string(),
        registration: z.string(),
      })
      .describe('What the thing worked on and its sides are called in print; data keep left and right'),
    options: z.array(
      z.strictObject({
        id,
        name: z.string(),
        choices: z
          .array(z.strictObject({ id, name: z.string() }))
          .nullable()
          .describe('null for yes or no'),
        wish: z.boolean().describe('The customer decides; else it is a fact of the vehicle'),
      }),
    ),
    sequences: z.array(z.strictObject({ id, label: z.string(), order: z.array(id).describe('Fasteners') })),
    zones: z
      .array(z.strictObject({ id, label: z.string() }))
      .describe('The named parts of the platform’s drawing'),
    items: z.array(item),
    sections: z.array(z.strictObject({ id, title: z.string(), steps: z.array(step) })),
    notChecked: z
      .array(
        z.strictObject({
          check: z.enum([
            'torque',
            'fit',
            'grip',
            'joint',
            'width',
            'hole',
            'cut',
            'panel',
            'wiring',
            'load',
            'cure',
            'care',
          ]),
          item: id.describe('What it is about: an item, or a template'),
          lacks: z.string().describe('The fact that is missing'),
          text: z.string().describe('As printed'),
          when: z.array(z.string()).describe('Conditions under which it stands'),
        }),
      )
      .describe('What could not be judged, and why'),
    ledger,
    visit: visit.nullable().describe('How several guides became one job; null for a guide of an author'),
    plans: z.array(plan),
  })
  .describe('An install guide with its totals, as Baybook prints it');

/** What the JSON holds. */
export type GuideJson = Omit<z.infer<typeof guideSchema>, 'ledger'> & { readonly ledger: LedgerData };

/** The JSON Schema (draft 7) of a guide's JSON. */
export function guideSchemaJson(): string {
  return `${JSON.stringify(z.toJSONSchema(guideSchema, { target: 'draft-7' }), null, 1)}\n`;
}
