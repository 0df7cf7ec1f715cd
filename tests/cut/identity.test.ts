import { expect, test } from 'vitest';
import { identityLines } from '../../src/cut/job.ts';
import { CONTEXT } from './fixtures.ts';

test('a sheet of a guide without a revision leaves no gap for it', () => {
  const lines = (revision: string) =>
    identityLines({ ...CONTEXT, revision, fingerprint: '3f2a 9c04 b7d1' }, null, 'outside');
  expect(lines('3')).toContain('Revision 3 · fingerprint 3f2a 9c04 b7d1');
  expect(lines('')).toContain('Fingerprint 3f2a 9c04 b7d1');
});
