import { createHash } from 'node:crypto';
import { compactStyle } from '../../html/compact-style.ts';
import { markup } from '../../html/markup.ts';
import type { Figure } from '../../model/block.ts';
import { guideFolder, type PageContext, type Shelf } from '../../pages/frame/context.ts';
import { identityWords } from '../../pages/frame/identity.ts';
import type { FrameView } from '../../pages/frame/shared-views.ts';
import { guidePage } from '../../pages/guide/guide-page.ts';
import type { GuideView } from '../../pages/guide/guide-views.ts';
import type { PictureView } from '../../pages/steps/block-views.ts';
import { accentStyle } from '../accent.ts';
import { pageFeet } from '../page-feet.ts';
import type { PublishedGuide } from '../publication.ts';

/** Bytes of a self-contained guide above which whoever builds the site hears of it: what mail still carries with ease. */
export const SINGLE_FILE_BUDGET = 5_000_000;

/** The widest picture, in pixels: a phone's width at twice its density. */
const PICTURE_WIDTH = 800;

/** What a self-contained guide is put together from. */
export interface SingleFileParts {
  /** The texts of the style sheets, by file name. */
  readonly styles: ReadonlyMap<string, string>;
  /** The script of guide pages. */
  readonly script: string;
  /** The site's shelf, with addresses from the site's root. */
  readonly shelf: Shelf;
  /** Reads a file of the site that is already made. */
  readonly read: (path: string) => string | Uint8Array;
}

/** The path of the guide as one file; `index.html` is the guide's page. */
export function singleFilePath(guide: PublishedGuide['guide']): string {
  return `${guideFolder(guide)}${guide.id === 'index' ? 'index-guide' : guide.id}.html`;
}

/**
 * A guide that needs no other file: styles, script and pictures stand in it, the pictures in one size. What it
 * would have to link to (other pages, full-scale sheets) is named and not linked.
 */
export function singleFileView(
  { guide, job }: PublishedGuide,
  shop: PageContext['shop'],
  parts: SingleFileParts,
): GuideView {
  const wanted: (readonly [string, Figure | null])[] = guide.pictures.flatMap(({ path, figure }) =>
    path === null ? [] : [[path, figure] as const],
  );
  if (shop.settings.logo) wanted.push([shop.settings.logo.value, null]);
  const inlined = new Map<string, PictureView>();
  for (const [path, figure] of wanted) {
    const picture = parts.shelf.picture(path, figure);
    if (picture && !inlined.has(keyOf(picture))) inlined.set(keyOf(picture), inline(picture, parts));
  }
  const shelf: Shelf = {
    picture: (path, figure) => {
      const picture = parts.shelf.picture(path, figure);
      return picture ? (inlined.get(keyOf(picture)) ?? null) : null;
    },
    template: (id) => ({ ...parts.shelf.template(id), files: [], printCheck: null }),
    link: (href, from) => (/^(?:https?|mailto|tel):/i.test(href) ? parts.shelf.link(href, from) : null),
    page: () => null,
  };
  const view = guidePage(guide, job, { shop, root: '', shelf });
  const feet = pageFeet(guide.title.value, identityWords(guide, job));
  return {
    ...view,
    frame: frame(
      view.frame,
      styleText(view.frame.styles, parts.styles, accentStyle(shop.settings.accent), feet),
      parts.script,
    ),
  };
}

/** The style sheets of the guide's page in their order, as one text. */
function styleText(
  linked: readonly string[],
  styles: ReadonlyMap<string, string>,
  accent: string,
  feet: string,
): string {
  const own = new Map([...styles, ['shop.css', accent], ['page-feet.css', feet]]);
  return compactStyle(linked.map((href) => own.get(href.slice(href.lastIndexOf('/') + 1)) ?? '').join('\n'));
}

/** The frame with everything in it, under a policy that lets in what is in it by its hash, and nothing else. */
function frame(linked: FrameView, style: string, script: string): FrameView {
  if (/<\/style/i.test(style)) throw new Error('a style sheet holds the end of its own element');
  const safe = script.replace(/<(?=\/script|!--)/gi, '\\x3c');
  const policy = [
    "default-src 'none'",
    'img-src data:',
    `style-src ${hashOf(style)}`,
    `script-src ${hashOf(safe)}`,
    "base-uri 'none'",
    "form-action 'none'",
  ];
  return {
    ...linked,
    policy: markup(policy.join('; ')),
    styles: [],
    scripts: [],
    inlined: { style: markup(style), script: markup(safe) },
  };
}

/** The source of an inline style or script as a policy names it (CSP Level 3). */
function hashOf(text: string): string {
  return `'sha256-${createHash('sha256').update(text).digest('base64')}'`;
}

/** One text for each picture with its enlarged part. */
function keyOf({ src, detail }: PictureView): string {
  return `${src} ${detail?.src ?? ''}`;
}

function inline(picture: PictureView, parts: SingleFileParts): PictureView {
  const path = oneSize(picture);
  const content = parts.read(path);
  const bytes = typeof content === 'string' ? Buffer.from(content) : Buffer.from(content);
  return {
    ...picture,
    src: `data:${typeOf(path)};base64,${bytes.toString('base64')}`,
    sources: [],
    detail: picture.detail ? inline(picture.detail, parts) : null,
  };
}

/** The largest size that a phone can show, else the smallest; a drawing has one. */
function oneSize({ src, sources }: PictureView): string {
  const sizes = sources.flatMap(({ srcset }) =>
    srcset.split(', ').map((one) => {
      const [path = '', width = ''] = one.split(' ');
      return { path, width: Number.parseInt(width, 10) };
    }),
  );
  const fit = sizes.filter(({ width }) => width <= PICTURE_WIDTH).sort((a, b) => b.width - a.width);
  return (fit[0] ?? sizes.sort((a, b) => a.width - b.width)[0])?.path ?? src;
}

function typeOf(path: string): string {
  const types = { svg: 'image/svg+xml', webp: 'image/webp', png: 'image/png', jpg: 'image/jpeg' };
  const type = types[path.slice(path.lastIndexOf('.') + 1) as keyof typeof types];
  if (!type) throw new Error(`no picture is published as ${path}`);
  return type;
}

/** How heavy a self-contained guide is, in words: `1.2 MB`. */
export function weightWords(bytes: number): string {
  return bytes < 100_000 ? `${Math.ceil(bytes / 1000)} kB` : `${(bytes / 1_000_000).toFixed(1)} MB`;
}

/** A line for one that is over its budget; `null` for one that is not. */
export function overBudgetWords(path: string, bytes: number): string | null {
  if (bytes <= SINGLE_FILE_BUDGET) return null;
  return `${path} is ${weightWords(bytes)}, over the ${weightWords(SINGLE_FILE_BUDGET)} for a guide in one file; fewer or smaller pictures make it lighter`;
}
