import type { SaxesTagNS } from 'saxes';
import type { PictureCode } from '../picture.ts';
import { lostAttributes, paintAttributes, XLINK_NAMESPACE } from './svg-allowed.ts';
import { styleDeclarations, valueFault } from './svg-values.ts';

/**
 * The attributes of a tag that may stay, with the declarations of its `style` turned into attributes. Tells of
 * those that run code, reach outside, or whose look would be lost.
 */
export function keptSvgAttributes(
  tag: SaxesTagNS,
  allowed: ReadonlySet<string>,
  problem: (code: PictureCode, what: string) => void,
): Record<string, string> {
  const kept: Record<string, string> = {};
  const keep = (name: string, value: string) => {
    if (lostAttributes.has(name) && value !== 'none' && value !== 'normal') {
      problem('drawing-part-unsupported', `${name} is not kept in drawings; draw it without`);
    }
    if (!paintAttributes.has(name) && !allowed.has(name) && name !== 'id') return;
    if (name === 'id' && !/^[^\s"'()#\\<>]+$/.test(value)) return;
    const fault = name === 'href' ? hrefFault(value) : valueFault(value);
    if (fault === 'unsafe') problem('drawing-unsafe', `${name}="${short(value)}" can run code; remove it`);
    else if (fault === 'outside') problem('drawing-reaches-outside', outside(name, value));
    else kept[name] = value;
  };
  for (const attribute of Object.values(tag.attributes)) {
    const name = attribute.local;
    if (/^on/i.test(name)) problem('drawing-unsafe', `${name} runs code; remove it`);
    else if (attribute.uri === XLINK_NAMESPACE ? name === 'href' : attribute.uri === '')
      keep(name, attribute.value);
  }
  for (const [name, value] of styleDeclarations(tag.attributes.style?.value ?? '')) {
    if (valueFault(value) === 'outside') problem('drawing-reaches-outside', outside(name, value));
    else if (name === 'transform')
      problem('drawing-part-unsupported', 'transform in a style is not kept; set it on the shape');
    else keep(name, value);
  }
  return kept;
}

function hrefFault(value: string): 'outside' | 'unsafe' | null {
  if (/^#[^\s"'()\\]+$/.test(value)) return null;
  return /^[\s\p{Cc}]*(javascript|vbscript):/iu.test(value) ? 'unsafe' : 'outside';
}

function outside(name: string, value: string): string {
  return `${name} reaches outside the drawing ("${short(value)}"); draw it in the file itself`;
}

function short(value: string): string {
  return value.length > 40 ? `${value.slice(0, 40)}…` : value;
}
