import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import type { Written } from '../../source/span.ts';
import type { Attribute, Directive } from '../../syntax/tree.ts';
import { attributeMissing } from '../rules/attribute-missing.ts';
import { attributeRepeated } from '../rules/attribute-repeated.ts';
import { attributeValue } from '../rules/attribute-value.ts';
import { labelMissing } from '../rules/label-missing.ts';
import { labelUnwanted } from '../rules/label-unwanted.ts';
import type { AttributeType, AttributeTypes } from './attribute.ts';
import { bareId, brokenId, type Described, strayComma, unknownAttribute } from './attribute-slips.ts';
import type { Values } from './directive-spec.ts';
import { idLike } from './id-text.ts';

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

  reportMissing(spec, found, bare, report);
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
    report(finding(attributeValue, attribute.nameAt, message, { costs: type.costs }));
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
  report(
    finding(attributeValue, at, `${attribute.name}: ${reading.message}`, { suggestion, costs: type.costs }),
  );
  return null;
}

function reportMissing(spec: Described, found: Directive, bare: Attribute | undefined, report: Report): void {
  const written = found.attributes.map(({ name }) => name);
  // It may be written under the name that is told of as unknown, or as a label that is not wanted.
  const elsewhere =
    written.some((name) => !Object.hasOwn(spec.attributes, name)) ||
    (spec.label === 'none' && found.label !== null);
  for (const [name, type] of Object.entries(spec.attributes)) {
    if (!type.required || written.includes(name) || (elsewhere && name !== 'id')) continue;
    if (name === 'id' && bare) {
      const suggestion = { at: bare.nameAt, text: `#${bare.name}` };
      report(finding(attributeMissing, bare.nameAt, 'an id in braces begins with #', { suggestion }));
      continue;
    }
    const id = idLike(found.labelText) ?? 'trim-lever';
    const what = name === 'id' ? `an id, as in {#${id}}` : `"${name}": ${type.expects}`;
    report(finding(attributeMissing, found.nameAt, `this ${spec.name} lacks ${what}`, { costs: type.costs }));
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
