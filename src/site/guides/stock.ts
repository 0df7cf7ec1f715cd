import type { Figure } from '../../model/block.ts';
import type { Shelf } from '../../pages/frame/context.ts';
import { pathFrom } from '../../pages/frame/references.ts';
import type { PictureView } from '../../pages/steps/block-views.ts';
import type { CutOutput } from './cut-files.ts';
import { pictureKey } from './pictures.ts';

/** Everything that pages show and link besides themselves, with addresses from the site's root. */
export interface Stock {
  readonly pictures: ReadonlyMap<string, PictureView>;
  /** The page that a file of the workspace becomes, from the site's root; `null` for none. */
  readonly pageOf: (path: string) => string | null;
  /** The files of the workspace. */
  readonly files: { readonly has: (path: string) => boolean };
  /** Is told each file of the workspace that a page links to. */
  readonly linked: (path: string) => void;
}

/** Files of the workspace that pages link to are published in this folder, under their own paths. */
export const linkedFolder = 'files/';

/**
 * The stock as one page asks for it.
 *
 * @param root from the page to the site's root
 * @param cuts the page's own templates
 */
export function shelfOf(stock: Stock, root: string, cuts: ReadonlyMap<string, CutOutput>): Shelf {
  return {
    picture: (path: string, figure: Figure | null, turned = false) => {
      const view = stock.pictures.get(pictureKey({ path, figure, turned }));
      return view ? fromRoot(view, root) : null;
    },
    template: (id) => cuts.get(id)?.view ?? { drawings: [], files: [], printCheck: null },
    link: (href, from) => {
      if (/^(?:https?|mailto|tel):/i.test(href)) return href;
      const path = pathFrom(from, href);
      if (path === null) return null;
      const place = /#.*$/.exec(href)?.[0] ?? '';
      const page = stock.pageOf(path);
      if (page) return root + page + place;
      if (!stock.files.has(path) || path.endsWith('.md')) return null;
      stock.linked(path);
      return root + linkedFolder + path.split('/').map(encodeURIComponent).join('/') + place;
    },
    page: (path) => root + path,
  };
}

function fromRoot(view: PictureView, root: string): PictureView {
  return {
    ...view,
    src: root + view.src,
    sources: view.sources.map((source) => ({
      ...source,
      srcset: source.srcset.replace(/(^|, )/g, `$1${root}`),
    })),
    detail: view.detail ? fromRoot(view.detail, root) : null,
  };
}
