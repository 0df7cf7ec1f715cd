import { posix } from 'node:path';

/**
 * A path as an author writes it in a file, from the workspace's root. `null` where it leaves the workspace, or
 * is no path at all (an address, an absolute path, a Windows path). An accent is one sign, however it was typed.
 */
export function resolvePath(from: string, written: string): string | null {
  if (written === '' || /^[a-z][a-z0-9+.-]*:|^\/|\\/i.test(written)) return null;
  const path = posix.join(posix.dirname(from), written).normalize('NFC');
  return path === '..' || path.startsWith('../') ? null : path;
}
