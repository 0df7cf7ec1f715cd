import { finding } from '../diagnostics/rule-card.ts';
import { idLike } from '../directives/attributes/id-text.ts';
import { cutTemplate } from '../directives/cut-template.ts';
import type { Scope } from '../directives/directive.ts';
import { blocks, items } from '../directives/index.ts';
import { none } from '../directives/none.ts';
import { photo } from '../directives/photo.ts';
import { procedure } from '../directives/procedure.ts';
import { reverse } from '../directives/reverse.ts';
import { misplaced } from '../directives/rules/directive-misplaced.ts';
import { sequence } from '../directives/sequence.ts';
import { type StepHead, step } from '../directives/step.ts';
import { zone } from '../directives/zone.ts';
import { inlinesOf, prosesOf } from '../job/actions/walk.ts';
import type { Block } from '../model/block.ts';
import type { None } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import type { Sequence } from '../model/sequence.ts';
import type { Zone } from '../model/zone.ts';
import type { ContainerDirective, Document, Heading, LeafDirective } from '../syntax/tree.ts';
import type { DeclaredTemplate, Draft, DraftSection, Entry } from './draft.ts';
import { headingUnnamed } from './rules/heading-unnamed.ts';

const itemNamed = new Map(items.map((reader) => [reader.name, reader]));
const blockNamed = new Map(blocks.map((reader) => [reader.name, reader]));

/** A section while it is being filled. */
interface OpenSection extends Omit<DraftSection, 'intro' | 'entries'> {
  readonly intro: Block[];
  readonly entries: Entry[];
}

interface OpenStep extends StepHead {
  readonly blocks: Block[];
}

/** Parts a file into sections and steps and gathers what it declares. */
export function assemble(document: Document, scope: Scope): Draft {
  const declared: Item[] = [];
  const templates: DeclaredTemplate[] = [];
  const sequences: Sequence[] = [];
  const nones: None[] = [];
  const zones: Zone[] = [];
  const opening: Block[] = [];
  const sections: OpenSection[] = [];
  let section: OpenSection | null = null;
  let current: OpenStep | null = null;

  const addBlock = (block: Block): void => {
    if (!current) reportActions(block, scope);
    (current?.blocks ?? section?.intro ?? opening).push(block);
  };

  const openSection = (heading: Heading | null): OpenSection => {
    const opened = heading ? openedBy(heading, scope) : withoutHeading(document);
    sections.push(opened);
    return opened;
  };

  const addEntry = (entry: Entry): void => {
    // A procedure's file may begin with a step; its headings open no sections in any case.
    section ??= openSection(null);
    section.entries.push(entry);
  };

  const addLeaf = (leaf: LeafDirective): void => {
    const reader = itemNamed.get(leaf.name);
    if (leaf.name === photo.name) {
      const block = photo.read(leaf, scope);
      if (block) addBlock(block);
    } else if (reader) {
      const item = reader.read(leaf, scope);
      if (item) declared.push(item);
    } else if (leaf.name === step.name) {
      const head = step.read(leaf, scope);
      // The text of a step whose opening line is at fault still belongs to no other step.
      current = head ? { ...head, blocks: [] } : lostStep(leaf, scope);
      if (head) addEntry(current);
    } else if (leaf.name === none.name) {
      const found = none.read(leaf, scope);
      if (found) nones.push(found);
    } else if (leaf.name === zone.name) {
      const found = zone.read(leaf, scope);
      if (found) zones.push(found);
    } else if (leaf.name === sequence.name) {
      const found = sequence.read(leaf, scope);
      if (found) sequences.push(found);
    } else if (leaf.name === procedure.name || leaf.name === reverse.name) {
      const place = (leaf.name === procedure.name ? procedure : reverse).read(leaf, scope);
      current = null;
      if (place) addEntry(place);
    } else {
      const message = `::${leaf.name} stands in a cut template; here it is never drawn`;
      scope.report(finding(misplaced, leaf.at, message));
    }
  };

  const addContainer = (container: ContainerDirective): void => {
    const block = blockNamed.get(container.name)?.read(container, scope);
    if (block) addBlock(block);
    if (container.name !== cutTemplate.name) return;
    const found = cutTemplate.read(container, scope);
    if (!found) return;
    templates.push(found);
    const target = { value: found.template.id, at: found.idAt };
    addBlock({ type: 'template', template: target, when: found.when, at: container.at });
  };

  for (const node of document.nodes) {
    if (node.type === 'heading') {
      section = openSection(node);
      current = null;
    } else if (node.type === 'prose')
      addBlock({ type: 'prose', content: scope.prose(node.content), at: node.at });
    else if (node.form === 'leaf') addLeaf(node);
    else addContainer(node);
  }
  return {
    items: declared,
    left: [],
    templates,
    sequences,
    nones,
    zones,
    opening,
    sections,
    footnotes: scope.prose(document.footnotes),
  };
}

function openedBy(heading: Heading, scope: Scope): OpenSection {
  if (!heading.id) {
    const likely = idLike(heading.text);
    scope.report(
      finding(
        headingUnnamed,
        heading.at,
        `this heading has no id; links and reversals hang on it, so that its words can change`,
        likely ? { suggestion: { at: { ...heading.at, start: heading.at.end }, text: ` {#${likely}}` } } : {},
      ),
    );
  }
  return {
    id: heading.id?.value ?? '',
    idAt: heading.id?.at ?? heading.at,
    title: scope.prose(heading.content),
    titleText: heading.text,
    depth: heading.depth,
    intro: [],
    entries: [],
    at: heading.at,
  };
}

function withoutHeading(document: Document): OpenSection {
  const at = { file: document.file, start: 0, end: 0 };
  return { id: '', idAt: at, title: [], titleText: '', depth: 2, intro: [], entries: [], at };
}

function lostStep(leaf: LeafDirective, scope: Scope): OpenStep {
  return {
    id: '',
    idAt: leaf.at,
    title: [],
    titleText: leaf.labelText,
    refitTitle: null,
    side: null,
    time: null,
    times: null,
    until: null,
    wait: null,
    people: 1,
    signOff: false,
    stop: false,
    anyOrder: false,
    after: [],
    needs: [],
    zones: [],
    when: null,
    blocks: [],
    origins: scope.origins,
    unknown: new Set(),
    at: leaf.at,
  };
}

/** An action outside a step is never counted; only a measurement may stand in a list of what is proved. */
function reportActions(block: Block, scope: Scope): void {
  for (const { node } of prosesOf(block).flatMap((prose) => inlinesOf(prose))) {
    if (node.type !== 'action' || (block.type === 'prove' && node.verb === 'measure')) continue;
    const message = `:${node.verb} stands outside any step, so it is never done and never counted; move it into a step`;
    scope.report(finding(misplaced, node.at, message));
  }
}
