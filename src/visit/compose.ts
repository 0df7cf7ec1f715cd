import { adaptProse, adaptSequence, adaptTemplate } from '../guide/procedures/adapt.ts';
import { capitalised, listed, lowered, packedIds } from '../job/index.ts';
import type { Block } from '../model/block.ts';
import type { Guide, LinkFact, PictureFact, Section } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import type { Prose } from '../model/prose.ts';
import type { Visit, VisitWork } from '../model/visit.ts';
import type { BuildSpace } from '../model/when.ts';
import { sharedLoads } from './loads.ts';
import type { VisitNames } from './names.ts';
import type { VisitNode, VisitNodes, VisitSection } from './order/nodes.ts';
import type { VisitRequest } from './request/request.ts';

/** What a visit is put together from. */
interface Composition {
  readonly request: VisitRequest;
  /** Sorted by id. */
  readonly guides: readonly Guide[];
  readonly names: ReadonlyMap<string, VisitNames>;
  readonly nameOf: (guide: string) => string;
  readonly builds: BuildSpace;
  readonly items: ReadonlyMap<string, Item>;
  readonly nodes: VisitNodes;
  /** What the visit tells of its guides. */
  readonly told: Visit['guides'];
}

/** Puts a visit together in an order of its nodes: a guide like any other, whose steps are those of several guides. */
export function composeVisit(composition: Composition, order: readonly string[]): Guide {
  const { request, guides, names, items } = composition;
  const [first] = guides;
  if (!first) throw new Error('a visit is of one guide at least');
  const all = <T>(of: (guide: Guide, by: VisitNames) => readonly T[]) =>
    guides.flatMap((guide) => {
      const by = names.get(guide.id);
      return by ? of(guide, by) : [];
    });
  const { sections, work } = sectionsOf(composition, order);
  const templates = all((guide, by) =>
    [...guide.templates.values()].map(
      (template) => adaptTemplate({ template, idAt: template.at }, by).template,
    ),
  );
  const sequences = all((guide, by) => [...guide.sequences.values()].map((one) => adaptSequence(one, by)));
  const contents = all((guide, by) =>
    [...(guide.contents ?? [])].map(([id, count]) => [packedIds(id).map(by.item).join(' '), count] as const),
  );
  const visit: Visit = {
    guides: composition.told,
    steps: new Map(
      order.flatMap((id) => {
        const node = composition.nodes.nodes.get(id);
        return node?.step ? [[id, workOf(node)]] : [];
      }),
    ),
    sections: work,
    shared: order.flatMap((id) => {
      const node = composition.nodes.nodes.get(id);
      return node?.step && node.places.size > 1 ? [{ step: id, guides: [...node.places.keys()] }] : [];
    }),
    reasons: [],
    loads: sharedLoads(guides, names),
    savings: [],
  };
  return {
    id: request.id,
    file: request.file,
    title: request.title,
    platform: request.platform ?? first.platform,
    partNumber: null,
    revision: null,
    updated: null,
    meantFor: aboutAll(composition, ({ meantFor }) => meantFor),
    notFor: aboutAll(composition, ({ notFor }) => notFor),
    doneBy: aboutAll(composition, ({ doneBy }) => doneBy),
    takenOff: aboutAll(composition, ({ takenOff }) => takenOff),
    changes: null,
    builds: composition.builds,
    words: first.words,
    zones: first.zones,
    items,
    templates: new Map(templates.map((template) => [template.id, template])),
    sequences: new Map(sequences.map((sequence) => [sequence.id, sequence])),
    nones: [],
    contents: contents.length === 0 ? null : new Map(contents),
    sections,
    opening: request.note,
    footnotes: all((guide, by) => adaptProse(guide.footnotes, by)),
    links: all<LinkFact>(({ links }) => links),
    pictures: distinct(all<PictureFact>(({ pictures }) => pictures)),
    anchors: new Set([
      ...sections.flatMap(({ id, steps }) => [id, ...steps.map((step) => step.id)]),
      ...templates.map(({ id }) => id),
    ]),
    visit,
  };
}

/** What guides say about the job, each once with the name of its work; `null` where none says anything. */
function aboutAll({ guides, nameOf }: Composition, of: (guide: Guide) => Guide['doneBy']): Guide['doneBy'] {
  const said = guides.flatMap((guide) => {
    const found = of(guide);
    return found ? [{ ...found, guide: guide.id }] : [];
  });
  const [first] = said;
  if (!first) return null;
  const alike = said.length === guides.length && said.every(({ value }) => value === first.value);
  const words = said.map(({ guide, value }) => `${nameOf(guide)}: ${lowered(value)}`);
  return { value: alike ? first.value : words.join(' '), at: first.at };
}

/** A picture that two guides show is published once. */
function distinct(pictures: readonly PictureFact[]): readonly PictureFact[] {
  const keyed = pictures.map(
    (one) => [`${one.path}\n${one.figure ? one.figure.at.file + one.figure.at.start : ''}`, one] as const,
  );
  return [...new Map(keyed).values()];
}

function workOf({ places }: VisitNode): VisitWork {
  const [section] = [...places.values()].map(({ id }) => id);
  return { guides: [...places.keys()], section: section ?? '' };
}

/**
 * The sections of a visit: steps that stand together and are of one section of one guide, or shared by the same
 * guides, are under one heading. What stands before the first step of an author's section goes with the first of its
 * steps; its safety messages are told again wherever the section is taken up again.
 */
function sectionsOf(
  composition: Composition,
  order: readonly string[],
): { readonly sections: readonly Section[]; readonly work: ReadonlyMap<string, VisitWork> } {
  const sections: Section[] = [];
  const work = new Map<string, VisitWork>();
  const opened = new Map<string, number>();
  const told = new Set<string>();
  let current: string | null = null;
  for (const id of order) {
    const node = composition.nodes.nodes.get(id);
    if (!node) continue;
    const places = [...node.places.values()];
    const key = places.map((place) => place.id).join('+');
    const open = sections.at(-1);
    if (open && key === current) {
      if (node.step) sections[sections.length - 1] = { ...open, steps: [...open.steps, node.step] };
      continue;
    }
    current = key;
    const intro = places.flatMap((place) => {
      if (told.has(place.id)) return place.intro.filter(({ type }) => type === 'message');
      told.add(place.id);
      return places.length === 1 ? place.intro : ofWork(place.intro, composition.nameOf(place.guide));
    });
    const count = (opened.get(key) ?? 0) + 1;
    opened.set(key, count);
    const made = sectionOf(node, intro, count, composition);
    sections.push(made);
    work.set(made.id, workOf(node));
  }
  return { sections, work };
}

/** What several guides tell the owner under one heading, each by its own. */
function ofWork(blocks: readonly Block[], name: string): readonly Block[] {
  const title: Prose = [{ type: 'text', value: `For the owner: ${lowered(name)}`, at: null }];
  return blocks.map((block) =>
    block.type === 'owner' && block.title === null ? { ...block, title } : block,
  );
}

function sectionOf(
  node: VisitNode,
  intro: readonly Block[],
  count: number,
  { guides, nameOf }: Composition,
): Section {
  const places = [...node.places.values()];
  const [first] = places;
  if (!first) throw new Error('a step of a visit is of some guide');
  const id = places.length === 1 ? first.id : places.map((place) => place.id.replace('_', '-')).join('-and-');
  const titles = distinctTitles(places);
  const whose =
    guides.length === 1
      ? null
      : places.length === 1
        ? nameOf(first.guide)
        : places.length === guides.length
          ? guides.length === 2
            ? 'Both jobs'
            : `All ${guides.length} jobs`
          : listed(places.map(({ guide }, index) => (index === 0 ? nameOf(guide) : lowered(nameOf(guide)))));
  const title: Prose =
    whose === null ? titles.prose : [{ type: 'text', value: `${whose}: `, at: null }, ...titles.prose];
  const titleText = whose === null ? titles.text : `${whose}: ${titles.text}`;
  // Each heading of a page has words of its own.
  const again = count === 1 ? '' : `, part ${count}`;
  return {
    id: count === 1 ? id : `${id}_${count}`,
    idAt: first.idAt,
    title: again === '' ? title : [...title, { type: 'text', value: again, at: null }],
    titleText: capitalised(titleText) + again,
    depth: 2,
    intro,
    steps: node.step ? [node.step] : [],
    at: first.at,
  };
}

/** The heading that all places share, or all of their headings. */
function distinctTitles(places: readonly VisitSection[]): { readonly prose: Prose; readonly text: string } {
  const [first] = places;
  const texts = [...new Set(places.map(({ titleText }) => titleText))];
  const text = texts.map((one, index) => (index === 0 ? one : lowered(one))).join(', ');
  if (first && texts.length === 1) return { prose: first.title, text };
  return { prose: [{ type: 'text', value: text, at: null }], text };
}
