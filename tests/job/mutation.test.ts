import { readdir } from 'node:fs/promises';
import { resolve } from 'node:path';
import { afterAll, describe, expect, it } from 'vitest';
import { featuresOf, findTarget } from '../../src/job/actions/target.ts';
import { actionsOf, placedIn, stepsOf } from '../../src/job/index.ts';
import type { Guide } from '../../src/model/guide.ts';
import type { Action } from '../../src/model/inline.ts';
import { long, sampleOf } from '../samples.ts';
import { type Mutant, mutantsOf } from './mutation/mutants.ts';
import { putBack } from './mutation/put-back.ts';
import { openWorkspace } from './mutation/workspace.ts';

/**
 * Mutation is the test of such a checker: each action, count, side and condition of a sound guide is dropped,
 * doubled or changed in turn, and something must notice. What nothing notices is told apart: two orders that are
 * both right, or a fact that is stated once and that nothing contradicts. Any other kind fails, and so does a demo
 * that leaves more than 4 in 100 of its facts to stand once.
 */
const root = resolve(import.meta.dirname, '../..');
const demo = await openWorkspace(resolve(root, 'guides'));
const caseFolders = (await readdir(resolve(root, 'tests/cases'), { withFileTypes: true }))
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => resolve(root, 'tests/cases', name));
const cases = await Promise.all(caseFolders.map(openWorkspace));

const counts = { caught: 0, equivalent: 0, undetectable: 0 };
const reasons = new Map<string, number>();
const inDemo = { all: 0, tried: 0, undetectable: 0 };

/** How many changes of a guide are tried in each run, spread over it from its first line to its last. */
const few = { demo: 2, cases: 1 };

const guidesOf = (workspace: (typeof cases)[number]) =>
  workspace.clean.map((guide) => ({ guide, workspace }));

describe.each([...guidesOf(demo), ...sampleOf(cases.flatMap(guidesOf), 16)])(
  '$guide.id in $guide.file',
  ({ guide, workspace }) => {
    it('has nothing to find, and each change in it is noticed or explained', { timeout: 300_000 }, () => {
      expect(workspace.check(guide, null)).toEqual([]);
      const missed: string[] = [];
      const all = mutantsOf(guide, workspace.sources);
      if (workspace === demo) inDemo.all += all.length;
      for (const mutant of sampleOf(all, workspace === demo ? few.demo : few.cases)) {
        if (workspace === demo) inDemo.tried += 1;
        if (workspace.check(guide, mutant).length > 0) counts.caught += 1;
        else if (isSameWork(mutant, guide)) counts.equivalent += 1;
        else {
          const reason = reasonFor(mutant, guide);
          if (reason === null) missed.push(mutant.name);
          else {
            counts.undetectable += 1;
            if (workspace === demo) inDemo.undetectable += 1;
            reasons.set(reason, (reasons.get(reason) ?? 0) + 1);
          }
        }
      }
      expect(missed).toEqual([]);
    });
  },
);

it.each(putBack)('finds in the demo, put back: $fault', ({ guide: id, file, edit, code }) => {
  const guide = demo.clean.find((one) => one.id === id);
  const source = demo.sources.get(file);
  if (!guide || !source) throw new Error(`the demo has no ${id}, or no ${file}`);
  expect(demo.check(guide, { file, text: edit(source.text) })).toContain(code);
});

it('leaves at most 4 in 100 of the demo to facts that stand once', () => {
  expect(inDemo.all).toBeGreaterThan(500);
  // A few changes tell the share less sharply than all of them.
  expect(inDemo.undetectable / inDemo.tried).toBeLessThanOrEqual(long ? 0.04 : 0.15);
});

afterAll(() => {
  console.log(
    `caught ${counts.caught}, equivalent ${counts.equivalent}, undetectable ${counts.undetectable}`,
  );
  for (const [reason, count] of reasons) console.log(`  ${count} × ${reason}`);
  console.log(`undetectable in the demo: ${inDemo.undetectable} of ${inDemo.tried}`);
});

/**
 * Both orders were played to the end: two things that do not need each other may be done either way round. A step
 * whose every action is on things, or holes, of both sides does them on both sides, whether it says so or not. And what
 * is there once, on one side, and is handled by steps of no side, is the same thing in the same steps without its side.
 */
function isSameWork({ change }: Mutant, guide: Guide): boolean {
  if (change.kind === 'swap') return change.action.target.value !== change.with.target.value;
  if (change.kind !== 'side' || change.to !== '') return false;
  const { of } = change;
  if (!('blocks' in of)) {
    const handling = stepsOf(guide).filter((step) =>
      actionsOf(step).some(({ node }) => node.target.value === of.id),
    );
    const isSingle = 'side' in of && of.side?.value !== 'each';
    return isSingle && handling.every(({ side }) => side === null);
  }
  const isOnBoth = ({ verb, target: { value } }: Action) => {
    const found = findTarget(guide, value);
    if (found?.kind === 'hole' || found?.kind === 'template') return found.template.side === 'each';
    const item = found?.item;
    // Tape that was put on each side comes off each, where nobody says a side.
    if (item?.kind === 'supply') return verb === 'take-off';
    return item !== undefined && 'count' in item && item.side?.value === 'each';
  };
  const acts = actionsOf(of).map(({ node }) => node);
  return of.side?.value === 'each' && acts.length > 0 && acts.every(isOnBoth);
}

/** Why nothing can notice a change; `null` where something should have. */
function reasonFor({ change }: Mutant, guide: Guide): string | null {
  switch (change.kind) {
    case 'count':
      return guide.contents?.has(change.item.id) ? null : 'a count that is declared once';
    case 'side':
      return 'a side that is declared once';
    case 'drop':
    case 'double': {
      const { verb, target } = change.action;
      if (verb === 'clear' && change.kind === 'drop')
        return 'a state that may last longer, since nothing bars it';
      if (verb === 'inspect' && change.kind === 'double') return 'something that is looked at twice';
      const idle = verb === 'clean' || verb === 'route' || verb === 'measure';
      const items = [...guide.items.values()];
      const replaced = items.some((item) => 'replaces' in item && item.replaces?.value === target.value);
      if (verb === 'discard' && replaced && change.kind === 'drop')
        return 'what becomes of an old part once a new one is in its place';
      const needed = [...stepsOf(guide), ...items].some(({ needs }) =>
        needs.some(({ value }) => value === target.value),
      );
      if (idle && !needed) return `a :${verb} on which nothing waits`;
      const supply = guide.items.get(target.value);
      const rest = supply?.kind === 'supply' && !supply.temporary && change.kind === 'drop';
      const uses = stepsOf(guide)
        .flatMap(actionsOf)
        .filter(({ node }) => node.target.value === target.value);
      return rest && uses.length > 1 ? 'one of several uses of a supply, of which much may be left' : null;
    }
    case 'when': {
      const { on } = change.place;
      if (on.kind === 'step') return actionsOf(on.step).length === 0 ? 'a condition on words alone' : null;
      if (on.kind === 'item') return on.item.kind === 'tool' ? 'a tool that some builds fetch in vain' : null;
      if (on.kind === 'feature') {
        const named = featuresOf(on.template).some(
          ({ id, when }) => id !== null && when?.at.start === change.place.when.at.start,
        );
        return named ? null : 'a condition on a shape that no step names';
      }
      const done = placedIn([on.block]).some(
        ({ node, whens }) =>
          node.type === 'action' && whens.some(({ at }) => at.start === change.place.when.value.at.start),
      );
      const plays = done && on.step !== null && actionsOf(on.step).some(({ block }) => block === on.block);
      return plays ? null : 'a condition on words alone';
    }
    case 'swap':
      return null;
  }
}
