import { type DefaultTreeAdapterTypes, parse } from 'parse5';
import { hostOf } from '../../html/host-of.ts';
import type { Markup } from '../../html/markup.ts';
import { styleRequests } from '../../html/style-requests.ts';

/** What the frame of a page lets in: its policy, style sheets, scripts, and what stands inline in a single file. */
export interface PageAllowance {
  readonly policy: Markup;
  readonly styles: readonly string[];
  readonly scripts: readonly string[];
  readonly inlined: { readonly style: Markup; readonly script: Markup } | null;
}

/** Something in a finished page that Baybook did not put there. */
interface ForeignPart {
  /** Where in the page, in characters from its start. */
  readonly offset: number;
  readonly what: string;
}

type Node = DefaultTreeAdapterTypes.Node;
type Element = DefaultTreeAdapterTypes.Element;
type Attribute = Element['attrs'][number];

/** Elements that bring another document, another base or a plug-in into the page (HTML Living Standard, 4.8 and 16). */
const otherDocuments = new Set([
  ...['iframe', 'frame', 'frameset', 'object', 'embed', 'applet', 'portal', 'fencedframe', 'base', 'param'],
]);

/** Attributes by which a browser fetches or sends without being asked (HTML Living Standard; SVG 2, `href`). */
const fetching = new Set([
  ...[
    'src',
    'poster',
    'data',
    'background',
    'lowsrc',
    'dynsrc',
    'manifest',
    'codebase',
    'archive',
    'classid',
  ],
  ...['ping', 'action', 'formaction', 'attributionsrc'],
]);

/** Attributes of SVG that take what a style sheet takes (SVG 2, 6.6), or give it to one of these (SVG Animations 2). */
const styling = new Set([
  ...['fill', 'stroke', 'filter', 'mask', 'clip-path', 'cursor'],
  ...['marker', 'marker-start', 'marker-mid', 'marker-end'],
  ...['values', 'from', 'to', 'by'],
]);

const svg = 'http://www.w3.org/2000/svg';

/** Where the link of an element may lead when somebody follows it. */
const followed = new Set(['http:', 'https:', 'mailto:', 'tel:']);

/** What a page links to in its head, as far as it stands in the site. */
const linkedHeads = new Set(['stylesheet', 'icon', 'apple-touch-icon', 'manifest']);

const site = new URL('https://site.invalid/a/b/page.html');

/**
 * Whatever in a finished page would make a browser ask another host, run what is not Baybook's, or work without
 * the page's policy. The page is read by the rules of the HTML standard, as browsers with and without scripts read it.
 */
export function foreignParts(html: string, allowed: PageAllowance): readonly ForeignPart[] {
  const parts = [true, false].flatMap((scriptingEnabled) => {
    const page = parse(html, { sourceCodeLocationInfo: true, scriptingEnabled });
    const elements = [...elementsOf(page)];
    return [...policyFaults(elements, allowed), ...elements.flatMap((one) => elementFaults(one, allowed))];
  });
  return [...new Map(parts.map((part) => [`${part.offset} ${part.what}`, part])).values()].sort(
    (a, b) => a.offset - b.offset,
  );
}

function* elementsOf(node: Node): Generator<Element> {
  if ('tagName' in node) yield node;
  if ('content' in node) yield* elementsOf(node.content);
  if ('childNodes' in node) for (const child of node.childNodes) yield* elementsOf(child);
}

/** The policy counts from where it stands: before it, nothing may be loaded. */
function policyFaults(elements: readonly Element[], { policy }: PageAllowance): readonly ForeignPart[] {
  const head = elements.find(({ tagName }) => tagName === 'head');
  const loading = ['script', 'style', 'link', 'img', 'body'];
  const before = elements.slice(
    0,
    elements.findIndex(({ tagName }) => loading.includes(tagName)),
  );
  const stands = before.some(
    (one) => one.parentNode === head && isPolicy(one) && attributeOf(one, 'content') === policy.html,
  );
  return stands
    ? []
    : [{ offset: startOf(head), what: 'the page has lost its content security policy, or has it too late' }];
}

function isPolicy(element: Element): boolean {
  return (
    element.tagName === 'meta' &&
    attributeOf(element, 'http-equiv')?.trim().toLowerCase() === 'content-security-policy'
  );
}

function elementFaults(element: Element, allowed: PageAllowance): readonly ForeignPart[] {
  const { tagName } = element;
  const fault = (what: string) => [{ offset: startOf(element), what }];
  if (otherDocuments.has(tagName)) return fault(`<${tagName}> brings another document into the page`);
  return [
    ...(tagName === 'script' && !isOwnScript(element, allowed)
      ? fault("<script> that is not Baybook's own")
      : []),
    ...(tagName === 'style' && textOf(element) !== allowed.inlined?.style.html
      ? fault('<style> within the page: the rules belong in a style sheet')
      : []),
    ...(tagName === 'link' && !linkedHeads.has(attributeOf(element, 'rel')?.trim().toLowerCase() ?? '')
      ? fault(`<link rel="${attributeOf(element, 'rel') ?? ''}"> that no page of Baybook has`)
      : []),
    ...(tagName === 'meta' && attributeOf(element, 'http-equiv') !== undefined && !isPolicy(element)
      ? fault(`<meta http-equiv="${attributeOf(element, 'http-equiv')}"> that no page of Baybook has`)
      : []),
    ...element.attrs.flatMap((attribute) => attributeFaults(element, attribute, allowed)),
  ];
}

/** Data runs nowhere; a script is one of the frame's, alone in its element. */
function isOwnScript(element: Element, { scripts, inlined }: PageAllowance): boolean {
  if (element.namespaceURI !== 'http://www.w3.org/1999/xhtml') return false;
  const src = attributeOf(element, 'src');
  const text = textOf(element);
  if (src !== undefined) return scripts.includes(src) && text === '';
  return attributeOf(element, 'type') === 'application/json' || text === inlined?.script.html;
}

function attributeFaults(
  element: Element,
  { name, value }: Attribute,
  allowed: PageAllowance,
): readonly ForeignPart[] {
  const offset = element.sourceCodeLocation?.attrs?.[attributeName(element, name)]?.startOffset;
  const fault = (what: string) => [{ offset: offset ?? startOf(element), what }];
  const shown = `<${element.tagName} ${name}="${value.slice(0, 60)}">`;
  if (name.startsWith('on')) return fault(`${shown} runs a handler`);
  if (name === 'srcdoc') return fault(`${shown} brings another document into the page`);
  if (name === 'attributename' || name === 'attributeName') {
    return /^(xlink:)?href$|^on/i.test(value.trim()) ? fault(`${shown} changes a link or a handler`) : [];
  }
  if (name === 'style' || (element.namespaceURI === svg && styling.has(name.toLowerCase())))
    return styleRequests(value).length > 0 ? fault(`${shown} asks another host`) : [];
  if (name === 'srcset' || name === 'imagesrcset') {
    return srcsetAddresses(value).every((url) => staysInSite(url, element))
      ? []
      : fault(`${shown} asks another host`);
  }
  if (fetching.has(name)) {
    return staysInSite(value, element) ? [] : fault(`${shown} asks another host`);
  }
  if (name !== 'href') return [];
  if (element.tagName === 'a' || element.tagName === 'area') {
    const url = addressOf(value);
    return url && followed.has(url.protocol) ? [] : fault(`${shown} leads to what is no page`);
  }
  const known = attributeOf(element, 'rel') !== 'stylesheet' || allowed.styles.includes(value);
  return known && staysInSite(value, element) ? [] : fault(`${shown} asks another host`);
}

/** An address as a browser takes it on a page of the site. */
function addressOf(text: string): URL | null {
  return URL.canParse(text, site.href) ? new URL(text, site) : null;
}

/** An address within the site, or a picture that stands in the page itself. */
function staysInSite(address: string, { tagName }: Element): boolean {
  const host = hostOf(address);
  if (host !== 'data') return host === 'site';
  const isPicture = ['img', 'source', 'image'].includes(tagName);
  return isPicture && addressOf(address)?.pathname.startsWith('image/') === true;
}

function attributeOf(element: Element, name: string): string | undefined {
  return element.attrs.find((attribute) => attribute.name === name)?.value;
}

/** The addresses of a `srcset`: each goes as far as the next blank, and commas at its ends are none of it (HTML Standard, 4.8.4.2.1). */
function srcsetAddresses(srcset: string): readonly string[] {
  const address = /[\s,]*([^\s]+)/y;
  const descriptors = /(?:\([^)]*\)?|[^,(])*/y;
  const found: string[] = [];
  for (let match = address.exec(srcset); match; match = address.exec(srcset)) {
    const [, text = ''] = match;
    found.push(text.replace(/,+$/, ''));
    descriptors.lastIndex = address.lastIndex;
    if (!text.endsWith(',')) address.lastIndex += descriptors.exec(srcset)?.[0].length ?? 0;
  }
  return found;
}

/** The name under which the place of an attribute is kept: as written, with its prefix. */
function attributeName({ attrs }: Element, name: string): string {
  const prefix = attrs.find((attribute) => attribute.name === name)?.prefix;
  return (prefix ? `${prefix}:${name}` : name).toLowerCase();
}

function textOf(element: Element): string {
  return element.childNodes.map((node) => ('value' in node ? node.value : '')).join('');
}

function startOf(element: Element | undefined): number {
  return element?.sourceCodeLocation?.startOffset ?? 0;
}
