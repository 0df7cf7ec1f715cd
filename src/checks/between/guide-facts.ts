import { whatWasDone } from '../../cut/shape/told.ts';
import type { ToldTemplate } from '../../diagnostics/render-json.ts';
import { stepsOf } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Supply } from '../../model/item.ts';
import type { Span } from '../../source/span.ts';
import { formatQuantity } from '../../units/format.ts';
import { linkTarget } from '../names/links.ts';

/** What is needed of a guide to judge it together with all others, as plain data that can be kept. */
export interface GuideFacts {
  readonly id: string;
  readonly file: string;
  /** Id of its platform, as written. */
  readonly platform: string;
  /** Every place that others can link to. */
  readonly anchors: readonly string[];
  /** Its links to places of other files of the workspace. */
  readonly links: readonly PlaceLink[];
  /** Ids of the shared procedures of which something stands in it. */
  readonly procedures: readonly string[];
  /** Ids of the tools and protective equipment that it uses. */
  readonly tools: readonly string[];
  /** The supplies that it uses, with what it says of each as a product. */
  readonly products: readonly ProductFact[];
  /** Ids of the kinds of fastener that it uses. */
  readonly fastenerTypes: readonly string[];
  /** What was done to its templates before the line to cut; those to which nothing was done are left out. */
  readonly templates: readonly ToldTemplate[];
}

/** What a guide says of a product. */
interface ProductFact {
  readonly id: string;
  readonly label: string;
  /** What it says that it does, by attribute, as comparable words: `cures` and `24 h`. Only what is said. */
  readonly says: { readonly [attribute: string]: { readonly words: string; readonly value: string } };
  readonly at: Span;
}

/** A link to a place within another file. */
interface PlaceLink {
  /** From the workspace's root. */
  readonly path: string;
  readonly anchor: string;
  readonly at: Span;
}

/** Gathers the facts of a guide. */
export function guideFacts(guide: Guide): GuideFacts {
  const items = [...guide.items.values()];
  const origins = [...items, ...stepsOf(guide)].flatMap((one) => one.origins);
  return {
    id: guide.id,
    file: guide.file,
    platform: guide.platform.value,
    anchors: [...guide.anchors],
    links: guide.links.flatMap(({ href, at }) => {
      const target = linkTarget(guide, href);
      if (target.kind !== 'file' || target.path === null || target.anchor === null) return [];
      return target.path === guide.file ? [] : [{ path: target.path, anchor: target.anchor, at }];
    }),
    procedures: unique(origins.flatMap((origin) => (origin.kind === 'procedure' ? [origin.procedure] : []))),
    tools: items.flatMap(({ kind, id }) => (kind === 'tool' || kind === 'wear' ? [id] : [])),
    products: items.flatMap((item) => (item.kind === 'supply' ? [productFact(item)] : [])),
    fastenerTypes: unique(
      items.flatMap((item) => (item.kind === 'fastener' && item.type ? [item.type.value] : [])),
    ),
    templates: [...guide.templates.values()].flatMap((template) => {
      const { id, title } = template;
      const done = whatWasDone(template);
      return done.length > 0 ? [{ file: guide.file, id, title, done }] : [];
    }),
  };
}

function productFact({ id, noun, idAt, dries, cures, openTime, yields }: Supply): ProductFact {
  const time = (name: string, stated: Supply['dries']) =>
    stated
      ? [[name, { words: formatQuantity(stated.value), value: String(stated.value.base) }] as const]
      : [];
  const goes = yields?.value;
  const far = goes && {
    words: `${formatQuantity(goes.does)} per ${formatQuantity(goes.of)}`,
    value: `${(goes.does.base / goes.of.base).toPrecision(9)} ${goes.does.dimension} ${goes.of.dimension}`,
  };
  return {
    id,
    label: noun.label,
    says: Object.fromEntries([
      ...time('dries', dries),
      ...time('cures', cures),
      ...time('open-time', openTime),
      ...(far ? [['yields', far] as const] : []),
    ]),
    at: idAt,
  };
}

function unique(ids: readonly string[]): readonly string[] {
  return [...new Set(ids)];
}
