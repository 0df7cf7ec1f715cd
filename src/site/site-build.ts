/** A build of the site, as its worker is told of it. Hashes are SHA-256 in hexadecimal, by path from the site's root. */
export interface BuildList {
  /** The hash of all files with their contents. */
  readonly build: string;
  /** Kept on the device as soon as the site is visited. */
  readonly kept: { readonly [path: string]: string };
  /** Part of the build, and fetched only when asked for. */
  readonly asked: { readonly [path: string]: string };
}
