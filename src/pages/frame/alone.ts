import type { Markup } from '../../html/markup.ts';
import type { PictureView } from '../steps/block-views.ts';
import type { GuideContext } from './context.ts';

/** A picture as it stands within the one file of a guide. */
export type InlinePicture = (picture: PictureView) => PictureView | null;

/** Prose of a page that reads otherwise where the guide stands alone, with how it is made there. */
export type Twins = Map<Markup, (inline: InlinePicture) => Markup>;

/**
 * The context of a guide that needs no other file: its pictures stand in it; what it would have to link to (other
 * pages, files of the workspace) is named and not linked.
 */
export function aloneContext(context: GuideContext, inline: InlinePicture): GuideContext {
  const { shelf } = context;
  return {
    ...context,
    twins: new Map(),
    shelf: {
      ...shelf,
      picture: (path, figure) => {
        const picture = shelf.picture(path, figure);
        return picture && inline(picture);
      },
      link: (href, from) => (/^(?:https?|mailto|tel):/i.test(href) ? shelf.link(href, from) : null),
    },
  };
}

/** What a view tells of the site and not of the guide, by the names of its fields. */
const ofSite: { readonly [field: string]: unknown } = {
  page: null,
  files: [],
  printCheck: null,
  rehearsal: null,
  cards: null,
  pickList: null,
};

/**
 * The same view for a guide that stands alone. What does not change is shared, so that it costs little beside
 * making the view again.
 */
export function aloneView<V extends object>(view: V, twins: Twins, inline: InlinePicture): V {
  return alone(view, { twins, inline }) as V;
}

interface Ways {
  readonly twins: Twins;
  readonly inline: InlinePicture;
}

function alone(value: unknown, ways: Ways): unknown {
  if (typeof value !== 'object' || value === null) return value;
  if (Array.isArray(value)) {
    const items = value.map((item) => alone(item, ways));
    return items.some((item, index) => item !== value[index]) ? items : value;
  }
  const twin = ways.twins.get(value as Markup);
  if (twin) return twin(ways.inline);
  if ('sources' in value) return ways.inline(value as PictureView);
  let changed = false;
  const fields = Object.entries(value).map(([name, field]) => {
    const own = name in ofSite ? ofSite[name] : alone(field, ways);
    changed ||= own !== field;
    return [name, own] as const;
  });
  // A markup keeps its brand, which is no field: nothing within it ever changes.
  return changed ? Object.fromEntries(fields) : value;
}
