import type { ProcedurePlace } from '../directives/procedure.ts';
import type { ReversePlace } from '../directives/reverse.ts';
import type { Block } from '../model/block.ts';
import type { CutTemplate } from '../model/cut-template.ts';
import type { None, Section, Step } from '../model/guide.ts';
import type { Item } from '../model/item.ts';
import type { Prose } from '../model/prose.ts';
import type { Sequence } from '../model/sequence.ts';
import type { Zone } from '../model/zone.ts';
import type { Span } from '../source/span.ts';

/** A template as declared, with the place of its id. */
export interface DeclaredTemplate {
  readonly template: CutTemplate;
  readonly idAt: Span;
}

/** A file as assembled: steps found, procedures and reversals still to be worked out. */
export interface Draft {
  readonly items: readonly Item[];
  /** What only those steps of placed procedures name that a placement left out. */
  readonly left: readonly Item[];
  readonly templates: readonly DeclaredTemplate[];
  readonly sequences: readonly Sequence[];
  readonly nones: readonly None[];
  /** Of a platform's drawing. */
  readonly zones: readonly Zone[];
  readonly opening: readonly Block[];
  readonly sections: readonly DraftSection[];
  readonly footnotes: Prose;
}

/** What a section holds after its intro, in the order of the text. */
export type Entry = Step | ProcedurePlace | ReversePlace;

/** A section whose steps are not all worked out. */
export interface DraftSection extends Omit<Section, 'steps'> {
  readonly entries: readonly Entry[];
}

/** Whether an entry is a step, and not a place where steps will stand. */
export function isStep(entry: Entry): entry is Step {
  return 'titleText' in entry;
}

/** The steps of a draft that are worked out already. */
export function draftSteps({ sections }: Pick<Draft, 'sections'>): readonly Step[] {
  return sections.flatMap(({ entries }) => entries.filter(isStep));
}
