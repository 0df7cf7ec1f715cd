import * as z from 'zod';
import type { AttributeTypes } from '../directives/attributes/attribute.ts';
import { supply } from '../directives/supply.ts';
import { tool } from '../directives/tool.ts';
import { frontMatterSchema, platformSchema, procedureSchema } from '../guide/front-matter.ts';
import { releasesSchema } from '../release/entries.ts';
import { releasedOnce } from '../release/rules.ts';
import { ownKeys } from '../shop/lists/crib.ts';
import { fastenerType, typeKeys } from '../shop/lists/fastener-types.ts';
import { entryName } from '../shop/lists/list-entries.ts';
import { settingsSchema } from '../shop/lists/settings.ts';
import { daySchema } from '../visit/request/read-day.ts';
import { visitSchema } from '../visit/request/read-visit.ts';
import { twoInOneVisit } from '../visit/rules.ts';
import type { EntryRow, HandbookEntry } from './entry.ts';

/** What a JSON Schema that zod makes says of a value, as far as it is told here. */
interface Shape {
  readonly description?: string;
  readonly expects?: string;
  readonly properties?: { readonly [key: string]: Shape };
  readonly required?: readonly string[];
  readonly additionalProperties?: Shape | boolean;
  readonly anyOf?: readonly Shape[];
  readonly allOf?: readonly Shape[];
}

/** The keys of a file, from the schema that reads it; keys within a key stand after it. */
function keysOf(schema: z.ZodType): readonly EntryRow[] {
  const shape = z.toJSONSchema(schema, { io: 'input', unrepresentable: 'any', reused: 'inline' });
  return rowsOf(shape as Shape, '');
}

function rowsOf({ properties = {}, required = [], ...shape }: Shape, within: string): readonly EntryRow[] {
  const rest = typeof shape.additionalProperties === 'object' ? [shape.additionalProperties] : [];
  const deeper = [...(shape.anyOf ?? []), ...(shape.allOf ?? []), ...rest];
  return [
    ...Object.entries(properties).flatMap(([key, of]): readonly EntryRow[] => [
      {
        name: `${within}${key}`,
        expects: of.expects ?? '',
        means: of.description ?? '',
        needed: required.includes(key),
      },
      ...rowsOf(of, `${within}${key}: `),
    ]),
    ...deeper.flatMap((of) => rowsOf(of, within)),
  ];
}

/** The keys of an entry in a list of the shop, which is read as a directive. */
function entryKeys(
  own: { readonly [key: string]: z.ZodType },
  attributes: AttributeTypes,
): readonly EntryRow[] {
  const read = Object.entries(attributes).filter(([name]) => name !== 'id' && !(name in own));
  return [
    ...keysOf(z.strictObject({ name: entryName, ...own })),
    ...read.map(([name, { expects, means }]) => ({ name, expects, means, needed: false })),
  ];
}

/** Attributes that only a guide can give a meaning. */
const ofGuides = new Set(['when', 'with', 'needs', 'work', 'immobile', 'replaces', 'quantity']);

function without(attributes: AttributeTypes): AttributeTypes {
  return Object.fromEntries(Object.entries(attributes).filter(([name]) => !ofGuides.has(name)));
}

const guideHead = 'title: Lamp cradle, behind the grille\nplatform: example-van\n';

/** Every file of a workspace that has keys, from the objects that read it. */
export const fileEntries: readonly HandbookEntry[] = [
  {
    name: 'shop.yaml',
    title: 'shop.yaml, the shop',
    lead: 'What holds for all guides of the shop.',
    rows: keysOf(settingsSchema),
    example: {
      'shop.yaml':
        'name: Kerb Lane Fitting\nunits: metric\npapers: [A4, A3]\ncrew: 2\ncontact: The lead technician\naccent: "#0b6e5f"\n',
    },
  },
  {
    name: 'tools.yaml',
    title: 'tools.yaml, the tool crib',
    lead: 'What the shop owns, once. Each key is an id that guides name; its value says what the tool is.',
    rows: entryKeys(ownKeys, without(tool.attributes)),
    example: {
      'tools.yaml':
        'gloves: {name: Work gloves, wear: yes}\nbit-t25: {name: T25 bit, drive: T25}\ntorque-60: {name: "Torque wrench, 10–60 N·m", range: 10..60 N·m}\n',
    },
  },
  {
    name: 'fasteners.yaml',
    title: 'fasteners.yaml, kinds of fastener',
    lead: 'What is known of a kind of fastener, once. A guide names the kind with `type=`; what comes in the box is of the kind whose name ends its own.',
    rows: entryKeys(typeKeys, fastenerType.attributes),
    example: {
      'fasteners.yaml':
        'trim-clip:\n  name: Trim clip\n  drive: pull-out\n  reuse: yes\n  release: Set the lever beside the clip and pull square to the panel.\n',
    },
  },
  {
    name: 'supplies.yaml',
    title: 'supplies.yaml, what is used up',
    lead: 'The products that the shop uses, once. A guide says how much of one it takes.',
    rows: entryKeys({}, without(supply.attributes)),
    example: {
      'supplies.yaml':
        'primer: {name: "Zinc primer, brush", dries: 30 min, yields: 8 m² per l, pack: 250 ml}\nsealant: {name: Roof sealant, cures: 24 h, open-time: 20 min, pack: 310 ml}\n',
    },
  },
  {
    name: 'guide.md',
    title: 'guide.md, what stands at the top of a guide',
    lead: 'Between two lines of three dashes, before the first heading.',
    rows: keysOf(frontMatterSchema),
    example: {
      'example/guide.md': `---\n${guideHead}part-number: QL-220\nrevision: 3\nupdated: 2026-10-02\noptions:\n  tow: Tow bar\n---\n\n## What you need {#need}\n\n::none{of=wear}\n::none{of=tools}\n::none{of=supplies}\n::none{of=kit}\n::none{of=conditions}\n\n## Work {#work}\n\n::step[Look around]{#look}\n\nLook behind the grille. :where[Look under the tow bar too.]{when=tow}\n`,
    },
  },
  {
    name: 'platform.md',
    title: 'platforms/NAME.md, what stands at the top of a platform',
    lead: 'A vehicle platform, in a file of its own. Below its keys stand what is to be known of it, and the parts and states that its guides share.',
    rows: keysOf(platformSchema),
    example: {
      'platforms/example-van.md':
        '---\ntitle: Example van\noptions:\n  fog: Front fog lamps\n  lamps: {name: Headlamps, one-of: {halogen: Halogen lamps, led: LED lamps}}\nimpossible: ["fog and lamps is halogen"]\n---\n\nA van.\n',
    },
  },
  {
    name: 'procedure.md',
    title: 'procedures/NAME.md, what stands at the top of a procedure',
    lead: 'Work that several guides share. Below its keys stand declarations and steps, as in a guide.',
    rows: keysOf(procedureSchema),
    example: {
      'procedures/grille-off.md':
        '---\ntitle: Take off the grille\n---\n\n::part[Grille]{#grille}\n\n::step[Take off the grille]{#grille-off}\n\n:remove[grille].\n',
      'example/guide.md':
        '::procedure{of=grille-off #grille-first}\n\n## Refit {#refit}\n\n::reverse{of=grille-first}\n',
    },
  },
  {
    name: 'visit.md',
    title: 'visits/NAME.md, what stands at the top of a visit',
    lead: 'Guides that are booked together on one vehicle. Below its keys stands a note, in plain text; the work stands in the guides.',
    rows: keysOf(visitSchema),
    example: twoInOneVisit,
  },
  {
    name: 'day.yaml',
    title: 'day.yaml, the jobs of a day',
    lead: 'A file of any name, anywhere, that `baybook day` sums up: what its jobs need from the counter and the cart.',
    rows: keysOf(daySchema),
    example: {
      ...twoInOneVisit,
      'day.yaml':
        'title: Thursday\njobs:\n  - both\n  - {guides: lamp, build: no fog, title: Van of the bakery}\n',
    },
  },
  {
    name: 'releases.yaml',
    title: 'releases.yaml, what was released of a guide',
    lead: 'Written beside a guide by `baybook release`, the latest release last. Each key is a revision; none is ever edited. What a print of that revision told stands in `releases/`.',
    rows: keysOf(releasesSchema),
    example: releasedOnce,
  },
].map((entry) => ({ ...entry, id: entry.name.replace('.', '-') }));
