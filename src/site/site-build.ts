/** A build of the site, as its worker is told of it. Hashes are SHA-256 in hexadecimal, by path from the site's root. */
export interface BuildList {
  /** The hash of all files with their contents. */
  readonly build: string;
  /** Kept on the device as soon as the site is visited. */
  readonly kept: { readonly [path: string]: string };
  /** Part of the build, and fetched only when asked for. */
  readonly asked: { readonly [path: string]: string };
  /** What of `asked` belongs to a guide, by the guide's folder: a touch there keeps it on the device too. */
  readonly parcels: { readonly [folder: string]: Parcel };
}

/** What a technician may keep of a guide besides what is kept of it anyhow. */
export interface Parcel {
  /** How much it is, in words: `7.4 MB`. */
  readonly weight: string;
  /** True where the guide's photographs, drawings and templates are in it, and not only the guide in one file. */
  readonly isHeavy: boolean;
  readonly paths: readonly string[];
}
