import { readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { once } from '../job/once.ts';
import { contentHash } from '../store/content-hash.ts';

/** The folder that this program runs from: `dist` or, run from source, `src`. */
const own = fileURLToPath(new URL('..', import.meta.url));

/** The folder of the package. */
const top = dirname(own);

/**
 * What makes this Baybook's work different from any other's: its own code, layouts and handbook, the packages that it
 * stands on, and the version of Node. Work that another has left in the store is not taken for its own. Read once: the
 * code that works is the one that was loaded.
 */
export const ownIdentity = once((): string => {
  const shipped = [own, join(top, 'templates'), join(top, 'handbook')].flatMap((folder) =>
    readdirSync(folder, { recursive: true, encoding: 'utf8' })
      .filter((name) => /\.(?:js|ts|css|liquid|txt|md)$/.test(name))
      .sort()
      .flatMap((name) => [name, readFileSync(join(folder, name))]),
  );
  const { dependencies = {} } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8'));
  const versions = Object.keys(dependencies).sort().map(versionOf);
  return contentHash(process.version, ...versions, ...shipped);
});

/** The name and version of a package as installed beside or above this one. */
function versionOf(name: string): string {
  for (let folder = top; ; folder = dirname(folder)) {
    try {
      const { version } = JSON.parse(
        readFileSync(join(folder, 'node_modules', name, 'package.json'), 'utf8'),
      );
      return `${name} ${version}`;
    } catch {
      if (folder === dirname(folder)) return name;
    }
  }
}
