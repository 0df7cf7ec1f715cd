import type { RuleCard } from '../diagnostics/rule-card.ts';
import { type GuideRecord, RECORD_FORMAT, recordHash, recordText } from './record.ts';

const none = '0'.repeat(64);

/** An entry that has everything but a record that goes with it. */
const entry = (revision: string) =>
  `"${revision}":\n  date: 2026-10-02\n  verified: M. Hart\n  fingerprint: "${none}"\n  record: "${none}"\n`;

/** A release of a guide that says nothing, sound by itself. */
function released(revision: string): { readonly entry: string; readonly record: string } {
  const named = (name: string) => ({ id: name, name, facts: [], lines: [] });
  const record: GuideRecord = {
    format: RECORD_FORMAT,
    guide: 'example',
    title: 'Example guide',
    revision,
    fingerprint: none,
    release: { date: '2026-10-02', verified: 'M. Hart', build: {}, on: '', note: null, measured: {} },
    about: named('example'),
    items: [],
    sequences: [],
    sections: [],
    steps: [],
    templates: [],
  };
  const text = recordText(record);
  return {
    entry: entry(revision).replace(`record: "${none}"`, `record: "${recordHash(text)}"`),
    record: text,
  };
}

const [second, third] = [released('2'), released('3')];

/** A guide that was released once, as an example. */
export const releasedOnce = {
  'example/releases.yaml': second.entry,
  'example/releases/2.json': second.record,
};

const good = { 'shop.yaml': 'name: Example Fitting\n' };

export const releaseConflict: RuleCard = {
  code: 'release-conflict',
  severity: 'error',
  title: 'A conflict of version control in what was released',
  why: 'Two people have released at the same time, and version control has left both between its marks. Keep both entries where their revisions differ; where one revision was released twice, keep one entry, its record in releases/, and release the other under a higher revision.',
  bad: {
    'example/releases.yaml': `<<<<<<< ours\n${entry('2')}=======\n${entry('3')}>>>>>>> theirs\n`,
  },
  good,
};

export const releaseRecordMissing: RuleCard = {
  code: 'release-record-missing',
  severity: 'error',
  title: 'A release without its record',
  why: 'What was released of a guide stands in releases/ beside it, a file for each revision. Without it nobody can say what a print of that revision told. Take the file back from version control.',
  bad: { 'example/releases.yaml': entry('2') },
  good,
};

export const releaseRecordEdited: RuleCard = {
  code: 'release-record-edited',
  severity: 'error',
  title: 'What was released is no longer what it was',
  why: 'A record says what hung in the bay, and an entry who stood for it. Neither is ever edited: what is put right is released under a higher revision. Take the file back from version control.',
  bad: { 'example/releases.yaml': entry('2'), 'example/releases/2.json': '{"format": 1}\n' },
  good,
};

export const releaseFormatNewer: RuleCard = {
  code: 'release-format-newer',
  severity: 'error',
  title: 'A record from a later Baybook',
  why: 'A later Baybook has released this guide, in a form that this one cannot read, so that it cannot tell what has changed since. Use that Baybook or a later one.',
  bad: { 'example/releases.yaml': entry('2'), 'example/releases/2.json': '{"format": 9}\n' },
  good,
};

export const releaseEntryMissing: RuleCard = {
  code: 'release-entry-missing',
  severity: 'error',
  title: 'A record that no release names',
  why: 'A file in releases/ that releases.yaml does not name was put there by hand, was left by a release that broke off, or has lost its entry in a merge. Take the entry back from version control, or delete the file.',
  bad: { 'example/releases/2.json': '{"format": 1}\n' },
  good,
};

export const releaseGuideMissing: RuleCard = {
  code: 'release-guide-missing',
  severity: 'error',
  title: 'Releases of a guide that is not there',
  why: 'Prints of what was released may hang in the bay, and nothing says any more what they are of. A guide that is given up takes its releases with it; one that was renamed takes them along.',
  bad: { 'old-cradle/releases.yaml': entry('2') },
  good,
};

export const releaseNotRaised: RuleCard = {
  code: 'release-not-raised',
  severity: 'error',
  title: 'Releases whose revisions do not rise',
  why: 'The last entry is what the shop stands behind. An entry with a lower revision below a higher one has mostly come in by a merge, and would pass an old state off as the latest.',
  bad: {
    'example/releases.yaml': third.entry + second.entry,
    'example/releases/2.json': second.record,
    'example/releases/3.json': third.record,
  },
  good: {
    'example/releases.yaml': second.entry + third.entry,
    'example/releases/2.json': second.record,
    'example/releases/3.json': third.record,
  },
};

/** The rules of what was released. */
export const releaseRules: readonly RuleCard[] = [
  releaseConflict,
  releaseRecordMissing,
  releaseRecordEdited,
  releaseFormatNewer,
  releaseEntryMissing,
  releaseGuideMissing,
  releaseNotRaised,
];
