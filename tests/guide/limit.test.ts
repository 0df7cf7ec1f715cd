import { expect, it } from 'vitest';
import { computeJob } from '../../src/job/index.ts';
import { readBody } from './read.ts';

const guideFor = (when: string) =>
  readBody(`---
title: Example
platform: example-van
when: ${when}
---

## Work {#work}

::connector[Fog plug]{#plug when=fog}

::step[Unplug]{#unplug}

:disconnect[plug]. :where[Mind the module.]{when="lamps is led"}

::step[Plug in]{#plug-in}

:connect[plug].
`);

it('a guide may stand for some builds of its platform alone', () => {
  const { guide, findings } = guideFor('fog');
  expect(findings).toEqual([]);
  if (!guide) throw new Error('the guide cannot be read');
  const job = computeJob(guide);
  expect(job.violations).toEqual([]);
  expect(job.plans.flatMap(({ builds }) => builds).every(({ fog }) => fog !== false)).toBe(true);
  expect(job.plans.length).toBe(2);
});

it('a limit that cannot be read is told where it stands', () => {
  expect(guideFor('"fog and"').findings.map(({ code }) => code)).toEqual(['condition-unreadable']);
});
