import type { RuleCard } from '../diagnostics/rule-card.ts';
import type { Block } from '../model/block.ts';
import type { Item } from '../model/item.ts';
import type { Inline } from '../model/prose.ts';
import { actions } from './action.ts';
import { circuit } from './circuit.ts';
import { condition } from './condition.ts';
import { connector } from './connector.ts';
import { cutShapes } from './cut-shapes.ts';
import { cutTemplate } from './cut-template.ts';
import type { DirectiveReader } from './directive.ts';
import { fastener } from './fastener.ts';
import { figure } from './figure.ts';
import { inspection } from './inspection.ts';
import { kit } from './kit.ts';
import { mark } from './mark.ts';
import { measure } from './measure.ts';
import { mentions } from './mention.ts';
import { messages } from './message.ts';
import { none } from './none.ts';
import { notes } from './note.ts';
import { part } from './part.ts';
import { photo } from './photo.ts';
import { procedure } from './procedure.ts';
import { prove } from './prove.ts';
import { rating } from './rating.ts';
import { refitNote } from './refit-note.ts';
import { reverse } from './reverse.ts';
import { attributeMissing } from './rules/attribute-missing.ts';
import { attributeRepeated } from './rules/attribute-repeated.ts';
import { attributeUnknown } from './rules/attribute-unknown.ts';
import { attributeValue } from './rules/attribute-value.ts';
import { coordinatesUnitless } from './rules/coordinates-unitless.ts';
import { misplaced } from './rules/directive-misplaced.ts';
import { fastenerTypeUnknown } from './rules/fastener-type-unknown.ts';
import { figureUnpictured } from './rules/figure-unpictured.ts';
import { itemUnlabelled } from './rules/item-unlabelled.ts';
import { labelMissing } from './rules/label-missing.ts';
import { labelUnwanted } from './rules/label-unwanted.ts';
import { outlineMissing } from './rules/outline-missing.ts';
import { outlineShapeless } from './rules/outline-shapeless.ts';
import { patternShapeless } from './rules/pattern-shapeless.ts';
import { supplyUnlisted } from './rules/supply-unlisted.ts';
import { targetMissing } from './rules/target-missing.ts';
import { toolUnlisted } from './rules/tool-unlisted.ts';
import { sequence } from './sequence.ts';
import { setting } from './setting.ts';
import { step } from './step.ts';
import { supply } from './supply.ts';
import { tool } from './tool.ts';
import { wear } from './wear.ts';
import { where } from './where.ts';
import { zone } from './zone.ts';

/** What declares an item. */
export const items: readonly DirectiveReader<Item>[] = [
  wear,
  tool,
  supply,
  kit,
  part,
  fastener,
  connector,
  condition,
  measure,
  setting,
  inspection,
  rating,
  circuit,
];

/** What stands within a sentence. */
export const inlines: readonly DirectiveReader<Inline>[] = [...mentions, ...actions, where];

/** What stands as a block of text. */
export const blocks: readonly DirectiveReader<Block>[] = [
  ...messages,
  ...notes,
  refitNote,
  figure,
  photo,
  prove,
];

/** Every directive of the format. */
export const directives: readonly DirectiveReader<unknown>[] = [
  ...items,
  none,
  zone,
  sequence,
  step,
  procedure,
  reverse,
  ...blocks,
  mark,
  cutTemplate,
  ...cutShapes,
  ...inlines,
];

/** The rules that reading a directive can raise. */
export const directiveRules: readonly RuleCard[] = [
  attributeMissing,
  attributeRepeated,
  attributeUnknown,
  attributeValue,
  coordinatesUnitless,
  misplaced,
  fastenerTypeUnknown,
  figureUnpictured,
  itemUnlabelled,
  supplyUnlisted,
  toolUnlisted,
  labelMissing,
  labelUnwanted,
  outlineMissing,
  outlineShapeless,
  patternShapeless,
  targetMissing,
];
