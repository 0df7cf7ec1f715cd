import { expect, it } from 'vitest';
import { isRefusal, refusalWords } from '../../src/cli/refusals.ts';

// Names of faults: POSIX.1-2017, <errno.h>. That Node names a folder on a read-only disk ENOENT was seen on tmpfs.
it.each([
  ['ENOSPC', 'write', undefined, 'the disk is full; make room and run it again'],
  ['ENOSPC', 'mkdir', 'site/a', 'the disk is full, and site/a cannot be written; make room and run it again'],
  ['EDQUOT', 'write', undefined, 'the disk is full; make room and run it again'],
  [
    'EROFS',
    'open',
    'site/a',
    'site/a cannot be written, since its disk is read-only; choose another folder with --out',
  ],
  [
    'EACCES',
    'open',
    'site/a',
    'site/a may not be opened or changed by you; ask for the right to it, or choose another folder',
  ],
  ['ENOENT', 'mkdir', 'site', 'the folder site cannot be made; choose another place'],
  ['ENOENT', 'open', 'site', 'as the system says it'],
  ['EIO', 'read', 'site', 'as the system says it'],
])('%s of %s on %s is told in plain words', (code, syscall, path, words) => {
  const error = Object.assign(new Error('as the system says it'), { code, syscall, ...(path && { path }) });
  expect(isRefusal(error) && refusalWords(error)).toBe(words);
});

it('takes no fault of Baybook for one of the system', () => {
  expect(isRefusal(new Error('x'))).toBe(false);
});
