import { finding } from '../../diagnostics/rule-card.ts';
import { nearest } from '../../diagnostics/suggest.ts';
import type { Attribute, Directive } from '../../syntax/tree.ts';
import { attributeUnknown } from '../rules/attribute-unknown.ts';
import { attributeValue } from '../rules/attribute-value.ts';
import type { AttributeType, AttributeTypes } from './attribute.ts';
import type { DirectiveSpec } from './directive-spec.ts';

/** What of a directive's description the reading of its attributes asks for. */
export type Described = Pick<
  DirectiveSpec<AttributeTypes, unknown>,
  'name' | 'form' | 'label' | 'attributes'
>;

/** `people=2, time="4 min"`: the comma that would have been right elsewhere. */
export function strayComma({ value, valueAt }: Attribute, type: AttributeType<unknown>) {
  if (!value?.endsWith(',') || !type.read(value.slice(0, -1), valueAt).ok) return null;
  const at = { ...valueAt, start: valueAt.end - 1 };
  const message = 'attributes are separated by spaces, not by commas';
  return finding(attributeValue, at, message, { suggestion: { at, text: '' }, costs: type.costs });
}

/** `{cover count=2}`: an id without its sign. */
export function bareId(spec: Described, found: Directive) {
  const [first] = found.attributes;
  const wanted = spec.attributes.id?.required && !found.attributes.some(({ name }) => name === 'id');
  return wanted && first?.value === null && !Object.hasOwn(spec.attributes, first.name) ? first : undefined;
}

/** `{#front cover}`: the rest of an id that was written with a space. */
export function brokenId({ value, name, nameAt }: Attribute, id: Attribute | undefined) {
  if (value !== null || !id?.value || nameAt.start !== id.valueAt.end + 1 || name.includes(':')) return null;
  const at = { ...nameAt, start: id.valueAt.start };
  const message = `an id holds no spaces; "${name}" is taken for an attribute`;
  return finding(attributeUnknown, at, message, { suggestion: { at, text: `${id.value}-${name}` } });
}

/** An attribute that the directive does not have; `{people:2}` is one with the wrong sign. */
export function unknownAttribute(spec: Described, attribute: Attribute) {
  const names = Object.keys(spec.attributes);
  const [, name = '', value] = /^([a-z-]+):(.+)$/.exec(attribute.name) ?? [];
  if (names.includes(name)) {
    const suggestion = { at: attribute.nameAt, text: `${name}=${value}` };
    return finding(
      attributeUnknown,
      attribute.nameAt,
      `a value follows "${name}" with = and not with a colon`,
      { suggestion, costs: spec.attributes[name]?.costs },
    );
  }
  const likely = nearest(attribute.name, names)[0];
  // It may have been meant for one that the directive cannot do without.
  const costs = Object.values(spec.attributes).find((type) => type.required && type.costs)?.costs;
  return finding(
    attributeUnknown,
    attribute.nameAt,
    `"${attribute.name}" is not an attribute of ${spec.name}`,
    likely
      ? { suggestion: { at: attribute.nameAt, text: likely }, costs }
      : { notes: [{ message: `${spec.name} takes ${names.join(', ')}` }], costs },
  );
}
