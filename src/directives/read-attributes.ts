import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { nearest } from '../diagnostics/suggest.ts';
import type { Written } from '../source/span.ts';
import type { Attribute, Directive } from '../syntax/tree.ts';
import type { AttributeType, AttributeTypes } from './attribute.ts';
import { idLike } from './attribute-types.ts';
import type { DirectiveSpec, Values } from './directive-spec.ts';
import { attributeMissing } from './rules/attribute-missing.ts';
import { attributeRepeated } from './rules/attribute-repeated.ts';
import { attributeUnknown } from './rules/attribute-unknown.ts';
import { attributeValue } from './rules/attribute-value.ts';
import { labelMissing } from './rules/label-missing.ts';
import { labelUnwanted } from './rules/label-unwanted.ts';

type Described = Pick<DirectiveSpec<AttributeTypes, unknown>, 'name' | 'form' | 'label' | 'attributes'>;

/** Reads a directive's attributes by their types and reports everything that does not fit. */
export function readAttributes<A extends AttributeTypes>(
  spec: Described,
  found: Directive,
  report: Report,
): { readonly values: Values<A>; readonly unknown: ReadonlySet<string> } {
  const values: { [name: string]: Written<unknown> | null } = {};
  const unknown = new Set<string>();
  for (const name of Object.keys(spec.attributes)) values[name] = null;
  const seen = new Map<string, Attribute>();
  const bare = bareId(spec, found);

  for (const attribute of found.attributes) {
    const type = Object.hasOwn(spec.attributes, attribute.name) ? spec.attributes[attribute.name] : undefined;
    const earlier = seen.get(attribute.name);
    seen.set(attribute.name, attribute);
    if (!type) {
      if (attribute === bare) continue;
      const split = brokenId(attribute, seen.get('id'));
      report(split ?? unknownAttribute(spec, attribute));
      // Half an id is no id: what it was meant for is not told of as unused.
      if (split) values.id = null;
      continue;
    }
    if (earlier) {
      const first = { message: 'first written here', at: earlier.nameAt };
      const message = `"${attribute.name}" is written twice on this ${spec.name}`;
      report(finding(attributeRepeated, attribute.nameAt, message, { notes: [first] }));
      unknown.add(attribute.name);
      values[attribute.name] = null;
      continue;
    }
    const value = readValue(spec, attribute, type, report);
    if (value) values[attribute.name] = value;
    else unknown.add(attribute.name);
  }

  const strange = found.attributes.some(({ name }) => !Object.hasOwn(spec.attributes, name));
  reportMissing(spec, found, seen, bare, strange, report);
  reportLabel(spec, found, report);
  // The loop above gives each name of the spec a value of its own type.
  return { values: values as Values<A>, unknown };
}

function readValue(
  spec: Described,
  attribute: Attribute,
  type: AttributeType<unknown>,
  report: Report,
): Written<unknown> | null {
  if (type.flag) {
    if (attribute.value === null || attribute.value === '') return { value: true, at: attribute.nameAt };
    const message = `"${attribute.name}" takes no value; it is written alone`;
    report(finding(attributeValue, attribute.valueAt, message));
    return null;
  }
  if (attribute.value === null) {
    const message = `"${attribute.name}" on this ${spec.name} needs a value: ${type.expects}`;
    report(finding(attributeValue, attribute.nameAt, message));
    return null;
  }
  const reading = type.read(attribute.value, attribute.valueAt);
  if (reading.ok) return { value: reading.value, at: attribute.valueAt };
  const stray = strayComma(attribute, type);
  if (stray) {
    report(stray);
    return null;
  }
  const at = reading.at ?? attribute.valueAt;
  const suggestion = reading.suggestion === undefined ? undefined : { at, text: reading.suggestion };
  report(finding(attributeValue, at, `${attribute.name}: ${reading.message}`, { suggestion }));
  return null;
}

/** `people=2, time="4 min"`: the comma that would have been right elsewhere. */
function strayComma({ value, valueAt }: Attribute, type: AttributeType<unknown>) {
  if (!value?.endsWith(',') || !type.read(value.slice(0, -1), valueAt).ok) return null;
  const at = { ...valueAt, start: valueAt.end - 1 };
  const message = 'attributes are separated by spaces, not by commas';
  return finding(attributeValue, at, message, { suggestion: { at, text: '' } });
}

/** `{cover count=2}`: an id without its sign. */
function bareId(spec: Described, found: Directive) {
  const [first] = found.attributes;
  const wanted = spec.attributes.id?.required && !found.attributes.some(({ name }) => name === 'id');
  return wanted && first?.value === null && !Object.hasOwn(spec.attributes, first.name) ? first : undefined;
}

/** `{#front cover}`: the rest of an id that was written with a space. */
function brokenId({ value, name, nameAt }: Attribute, id: Attribute | undefined) {
  if (value !== null || !id?.value || nameAt.start !== id.valueAt.end + 1 || name.includes(':')) return null;
  const at = { ...nameAt, start: id.valueAt.start };
  const message = `an id holds no spaces; "${name}" is taken for an attribute`;
  return finding(attributeUnknown, at, message, { suggestion: { at, text: `${id.value}-${name}` } });
}

function unknownAttribute(spec: Described, attribute: Attribute) {
  const names = Object.keys(spec.attributes);
  const [, name = '', value] = /^([a-z-]+):(.+)$/.exec(attribute.name) ?? [];
  if (names.includes(name)) {
    const suggestion = { at: attribute.nameAt, text: `${name}=${value}` };
    return finding(
      attributeUnknown,
      attribute.nameAt,
      `a value follows "${name}" with = and not with a colon`,
      { suggestion },
    );
  }
  const likely = nearest(attribute.name, names)[0];
  return finding(
    attributeUnknown,
    attribute.nameAt,
    `"${attribute.name}" is not an attribute of ${spec.name}`,
    likely
      ? { suggestion: { at: attribute.nameAt, text: likely } }
      : { notes: [{ message: `${spec.name} takes ${names.join(', ')}` }] },
  );
}

function reportMissing(
  spec: Described,
  found: Directive,
  seen: ReadonlyMap<string, Attribute>,
  bare: Attribute | undefined,
  strange: boolean,
  report: Report,
): void {
  for (const [name, type] of Object.entries(spec.attributes)) {
    if (!type.required || seen.has(name)) continue;
    // It may be written under the name that has just been told of as unknown.
    if ((strange || (spec.label === 'none' && found.label)) && name !== 'id') continue;
    if (name === 'id' && bare) {
      const suggestion = { at: bare.nameAt, text: `#${bare.name}` };
      report(finding(attributeMissing, bare.nameAt, 'an id in braces begins with #', { suggestion }));
      continue;
    }
    const id = idLike(found.labelText) ?? 'trim-lever';
    const what = name === 'id' ? `an id, as in {#${id}}` : `"${name}": ${type.expects}`;
    report(finding(attributeMissing, found.nameAt, `this ${spec.name} lacks ${what}`));
  }
}

function reportLabel(spec: Described, found: Directive, report: Report): void {
  const empty = found.label === null || found.labelText.trim() === '';
  if (spec.label === 'required' && empty) {
    report(finding(labelMissing, found.nameAt, `this ${spec.name} lacks its label, in square brackets`));
  }
  if (spec.label === 'none' && found.label !== null) {
    const [wanted] = Object.entries(spec.attributes).flatMap(([name, { required }]) =>
      required ? [name] : [],
    );
    const instead = wanted === undefined ? '' : `; write {${wanted}=…}`;
    report(finding(labelUnwanted, found.labelAt, `${spec.name} takes no label in square brackets${instead}`));
  }
}
