import type { Tool } from '../model/item.ts';
import { meant } from './attributes/attribute.ts';
import { drive, flag, list, range, refs, size, wholeNumber } from './attributes/attribute-types.ts';
import { itemAttributes, itemBase, labelled, MOST, pictureAttributes } from './attributes/item-attributes.ts';
import { unlisted } from './attributes/unlabelled.ts';
import { directive } from './directive.ts';

/** Declares a tool; without a label it comes from the tool crib. */
export const tool = directive({
  name: 'tool',
  form: 'leaf',
  label: 'optional',
  attributes: {
    ...itemAttributes,
    ...pictureAttributes,
    count: meant(
      wholeNumber(1, MOST),
      'How many are at hand, one where nothing is written. Steps that share a single tool are not done at the same time.',
    ),
    synonyms: meant(list, 'What else it is called; the search finds it by these too.'),
    drive: meant(drive, 'The drive that it fits. A fastener asks for a tool with its own.'),
    range: meant(range('torque'), 'What a torque wrench can be set to. A torque outside it is a finding.'),
    'cutter-radius': meant(
      size('length'),
      'The least radius that a cutter can turn. A tighter corner in a template is a finding.',
    ),
    diameter: meant(
      size('length'),
      'What a bit drills, or what a cutter takes away: its path lies half of that within the waste.',
    ),
    offset: meant(
      size('length'),
      'Makes it a crowfoot: from the middle of its square to that of the fastener.',
    ),
    length: meant(
      size('length'),
      'Of a torque wrench, from the middle of its grip to that of its square. With a crowfoot, the step prints what the wrench is set to.',
    ),
    crimps: meant(
      { ...range('area'), expects: 'a range of sections with its unit, as in `0.5..6 mm²`' },
      'The sections of wire on which it crimps terminals, as in `0.5..6 mm²`. A wire outside them is a finding.',
    ),
    solders: meant(flag, 'It solders terminals.'),
    or: meant(refs, 'Tools that serve as well.'),
  },
  summary:
    'Declares a tool that the job asks for. `count` says how many are at hand, one where it does not: two steps, or the two sides of one, that use the same tool are not done at the same time unless there are two. `diameter` is what a bit drills or a cutter takes away: the path of the cutter’s middle lies half of it within the waste. `cutter-radius` is the least radius that a cutter can turn, which for a jigsaw has nothing to do with its blade. `offset` makes it a crowfoot: from the middle of its square to that of the fastener. `length` is that of a torque wrench, from the middle of its grip to that of its square; with both, the step prints what the wrench is set to.',
  example: '::tool[13 mm socket]{#socket-13 drive="hex 13"}',
  build: (read): Tool | null => {
    const { values, unknown, directive: found, scope } = read;
    if (!values.id) return null;
    const owned = scope.crib.get(values.id.value);
    const known = owned?.kind === 'tool' ? owned : undefined;
    const noun = labelled(found.labelText, known?.noun);
    if (!noun) return unlisted('tool', values.id, found.nameAt, scope);
    return {
      ...itemBase('tool', read, values.id, noun),
      // What the crib says of it and cannot be read is unknown here too.
      unknown: new Set([...unknown, ...(known?.unknown ?? [])]),
      inCrib: known !== undefined,
      atHand: values.count?.value ?? known?.atHand ?? 1,
      synonyms: values.synonyms?.value ?? known?.synonyms ?? [],
      drive: values.drive ?? known?.drive ?? null,
      range: values.range ?? known?.range ?? null,
      cutterRadius: values['cutter-radius'] ?? known?.cutterRadius ?? null,
      diameter: values.diameter ?? known?.diameter ?? null,
      offset: values.offset ?? known?.offset ?? null,
      length: values.length ?? known?.length ?? null,
      crimps: values.crimps ?? known?.crimps ?? null,
      solders: values.solders !== null || known?.solders === true,
      or: values.or?.value ?? known?.or ?? [],
    };
  },
});
