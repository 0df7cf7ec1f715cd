import { compactStyle } from '../../html/compact-style.ts';
import { markup } from '../../html/markup.ts';
import { guideFolder, type PageContext, pageAddress } from '../../pages/frame/context.ts';
import { identityWords, oneBuildWords } from '../../pages/frame/identity.ts';
import type { FrameView } from '../../pages/frame/shared-views.ts';
import type { GuidePages } from '../../pages/guide/guide-page.ts';
import type { GuideView } from '../../pages/guide/guide-views.ts';
import type { PictureView } from '../../pages/steps/block-views.ts';
import { accentStyle } from '../device/accent.ts';
import type { SiteKit } from '../kit.ts';
import { pageFeet } from '../page-feet.ts';
import type { PublishedGuide } from '../publication.ts';
import { type AloneScript, type PartedStyle, partStyle, sourceOf } from './folded.ts';
import { screenSizes } from './pictures.ts';

/** Bytes of a self-contained guide above which whoever builds the site hears of it: what mail still carries with ease. */
export const SINGLE_FILE_BUDGET = 5_000_000;

/** The widest picture, in pixels: a phone's width at twice its density. */
const PICTURE_WIDTH = 800;

/** What a self-contained guide is put together from. */
interface SingleFileParts {
  /** What all such files are made with. */
  readonly kit: Pick<SiteKit, 'compactStyles' | 'aloneScript'>;
  /** What its page is made from. */
  readonly page: PageContext;
  /** Reads a file of the site that is already made. */
  readonly read: (path: string) => string | Uint8Array;
}

/** Names of other pages in a guide's folder. */
const taken: ReadonlySet<string> = new Set(['index', 'rehearsal', 'cards']);

/** The path of the guide as one file. */
export function singleFilePath(guide: PublishedGuide['guide']): string {
  return `${guideFolder(guide)}${taken.has(guide.id) ? `${guide.id}-guide` : guide.id}.html`;
}

/**
 * A guide that needs no other file: styles, script and pictures stand in it, the pictures in one size. What it
 * would have to link to (other pages, full-scale sheets) is named and not linked, but for its page on the site, where
 * that has an address: there the sheets are, and the print check that corrects them.
 */
export function singleFileView(
  { page, alone }: GuidePages,
  { guide, job }: PublishedGuide,
  parts: SingleFileParts,
): GuideView {
  const { shop, shelf } = parts.page;
  const inlined = new Map<string, PictureView>();
  const inlineOnce = (picture: PictureView) => {
    const key = `${picture.src} ${picture.detail?.src ?? ''}`;
    const known = inlined.get(key) ?? inline(picture, parts);
    inlined.set(key, known);
    return known;
  };
  const logo = shop.settings.logo ? shelf.picture(shop.settings.logo.value, null) : null;
  const feet = pageFeet(guide, identityWords(guide, job), oneBuildWords(guide, job));
  const own = new Map([
    ...parts.kit.compactStyles,
    ['shop.css', compactStyle(accentStyle(shop.settings.accent))],
    ['page-feet.css', compactStyle(feet)],
  ]);
  const names = page.frame.styles.map((href) => href.slice(href.lastIndexOf('/') + 1));
  const style = partStyle(names.map((name) => [name, own.get(name) ?? '']));
  const address = pageAddress(shop.settings.address, guide);
  const around = { ...page.frame, root: '', logo: logo && inlineOnce(logo) };
  return alone(frame(around, style, parts.kit.aloneScript(style.later), address), inlineOnce);
}

/** The frame with everything in it, under a policy that lets in what is in it by its hash, and nothing else. */
function frame(
  linked: FrameView,
  { plain, whole }: PartedStyle,
  { folded, sources }: AloneScript,
  address: string | null,
): FrameView {
  if (/<\/style/i.test(plain)) throw new Error('a style sheet holds the end of its own element');
  const policy = [
    "default-src 'none'",
    'img-src data:',
    `style-src ${sourceOf(plain)} ${sourceOf(whole)}`,
    `script-src ${sources.join(' ')}`,
    "base-uri 'none'",
    "form-action 'none'",
  ];
  return {
    ...linked,
    policy: markup(policy.join('; ')),
    styles: [],
    scripts: [],
    inlined: { style: markup(plain), script: markup(folded), page: address },
  };
}

function inline(picture: PictureView, parts: SingleFileParts): PictureView {
  const path = oneSize(picture);
  const content = parts.read(path.slice(parts.page.root.length));
  const bytes = typeof content === 'string' ? Buffer.from(content) : Buffer.from(content);
  return {
    ...picture,
    src: `data:${typeOf(path)};base64,${bytes.toString('base64')}`,
    sources: [],
    detail: picture.detail ? inline(picture.detail, parts) : null,
  };
}

/** The largest size that a phone can show, else the smallest; a drawing has one. */
function oneSize(picture: PictureView): string {
  const sizes = screenSizes(picture).toSorted((a, b) => a.width - b.width);
  return (sizes.findLast(({ width }) => width <= PICTURE_WIDTH) ?? sizes[0])?.path ?? picture.src;
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
