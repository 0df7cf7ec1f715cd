import { join, resolve } from 'node:path';
import { folderStore, memoryStore, type Store } from '../src/store/store.ts';
import { sharedFolder } from './shared-folder.ts';

/** What is made of a photograph, and what was seen of its marks: names are hashes of contents. */
const ofPictures = /^(?:(?:set|blank|inspect)-[0-9a-f]+\.json|[0-9a-f]+\.(?:webp|jpe?g|png))$/;

/**
 * A store in memory, of which the pictures are shared by all tests of a run: to encode those of the demo takes ten
 * times as long as to read its guides.
 */
export async function pictureStore(): Promise<Store> {
  const own = memoryStore();
  // The one that the build of the demo left in `tests/run.sh`.
  const left = resolve(import.meta.dirname, '../compiled/cache/baybook/store');
  const shared = folderStore(
    process.env.COMPILED ? left : join(await sharedFolder(), 'pictures'),
    new Date(),
  );
  const storeOf = (name: string) => (ofPictures.test(name) ? shared : own);
  return {
    ...own,
    read: (name) => storeOf(name).read(name),
    write: (name, bytes) => storeOf(name).write(name, bytes),
  };
}
