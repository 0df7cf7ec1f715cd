import type { ShopSettings } from '../../model/shop.ts';
import { grounds } from './accent.ts';

/** The file that lets a site be put on a device's start screen (W3C, Web Application Manifest). */
export const manifestPath = 'manifest.webmanifest';

/** The manifest of a shop's site; addresses in it are relative to it, so that it fits any host. */
export function siteManifest({ name }: Pick<ShopSettings, 'name'>): string {
  const icon = (size: number, purpose: 'any' | 'maskable') => ({
    src: iconPath(size, purpose),
    sizes: `${size}x${size}`,
    type: 'image/png',
    purpose,
  });
  const manifest = {
    name: `Install guides, ${name}`,
    short_name: 'Install guides',
    start_url: 'index.html',
    scope: './',
    display: 'standalone',
    background_color: grounds.light,
    theme_color: grounds.light,
    icons: [icon(192, 'any'), icon(512, 'any'), icon(512, 'maskable')],
  };
  return `${JSON.stringify(manifest, null, 1)}\n`;
}

/** The path of an icon; a maskable one may be cut to a circle by the device. */
export function iconPath(size: number, purpose: 'any' | 'maskable'): string {
  return `icons/${purpose === 'any' ? 'icon' : 'maskable'}-${size}.png`;
}
