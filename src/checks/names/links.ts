import { posix } from 'node:path';
import type { Platform, Shop } from '../../model/shop.ts';
import type { Page } from '../rule.ts';

/** Where a link of a guide leads. */
type LinkTarget =
  /** An address on the web, or of a person; nobody fetches it. */
  | { readonly kind: 'outside' }
  /** No address that a site can link to. */
  | { readonly kind: 'unusable' }
  | { readonly kind: 'file'; readonly path: string | null; readonly anchor: string | null };

/** Takes a link apart; a path is from the workspace's root, `null` where it leaves the workspace. */
export function linkTarget(page: Page, href: string): LinkTarget {
  const scheme = /^([a-z][a-z0-9+.-]*):/i.exec(href)?.[1]?.toLowerCase();
  if (scheme !== undefined) {
    return { kind: ['http', 'https', 'mailto', 'tel'].includes(scheme) ? 'outside' : 'unusable' };
  }
  if (href.startsWith('//') || href.startsWith('/')) return { kind: 'unusable' };
  const [way = '', anchor = null] = href.split('#', 2);
  const path = decoded(way.split('?', 1)[0] ?? '');
  if (path === '') return { kind: 'file', path: page.file, anchor: anchor === null ? null : decoded(anchor) };
  const full = posix.join(posix.dirname(page.file), path);
  const inside = full !== '..' && !full.startsWith('../');
  return { kind: 'file', path: inside ? full : null, anchor: anchor === null ? null : decoded(anchor) };
}

/** The anchors of the platform whose file this is; `null` for any other file. */
export function anchorsOfPlatform({ platforms }: Shop, path: string): ReadonlySet<string> | null {
  const platform = platforms.get(posix.basename(path, '.md'));
  return platform?.file === path ? platformAnchors(platform) : null;
}

/** The places of a platform's page: its sections. */
export function platformAnchors({ sections }: Platform): ReadonlySet<string> {
  return new Set(sections.flatMap(({ id }) => (id === null ? [] : [id])));
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    // A stray per cent sign is part of the name.
    return text;
  }
}
