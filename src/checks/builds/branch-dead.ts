import { finding, type RuleCard } from '../../diagnostics/rule-card.ts';
import { conditionsOf, optionsIn } from '../../job/index.ts';
import type { Guide } from '../../model/guide.ts';
import type { Build, When } from '../../model/when.ts';
import type { Rule } from '../rule.ts';
import { areKnown, buildsOf, buildsWith } from './witness.ts';

const card: RuleCard = {
  code: 'branch-dead',
  severity: 'error',
  title: 'A condition that no build meets',
  why: 'What stands under it is never read by anyone, though its author meant it for someone.',
  bad: '::step[Look behind]{#look when=fog}\n\nLook behind the edge. :where[There are no lamp wires.]{when="not fog"}',
  good: '::step[Look behind]{#look}\n\nLook behind the edge. :where[There are no lamp wires.]{when="not fog"}',
};

/** Every condition is met by some build, where what it stands in is met. */
export const branchDead: Rule = {
  card,
  run: ({ guide, job }, report) => {
    const builds = buildsOf(job);
    const told = new Set<string>();
    for (const { when, outer } of conditionsOf(guide)) {
      const key = `${when.at.file}\n${when.at.start}`;
      if (told.has(key) || !areKnown([...outer, when.value], guide)) continue;
      const around = buildsWith(outer, builds);
      if (around.length === 0 || buildsWith([when.value], around).length > 0) continue;
      if (when.at.file !== guide.file && isOpen([...outer, when.value], when.at.file, guide)) continue;
      told.add(key);
      const where = around.length === builds.length ? '' : ' where this is read';
      const notes = outer.map((one) => ({ message: 'it stands under this condition', at: one.at }));
      report(finding(card, when.at, `no build${where} meets this condition`, { notes }));
    }
  },
};

/**
 * Whether some choice of options meets what a procedure's own file asks: what only the placement closes is alive in
 * other guides.
 */
function isOpen(whens: readonly When[], file: string, { builds }: Guide): boolean {
  const own = whens.flatMap((when) => partsIn(when, file));
  const asked = new Set(own.flatMap(optionsIn));
  const choices = builds.options.filter(({ id }) => asked.has(id));
  const all = choices.reduce<readonly Build[]>(
    (some, { id, choices: values }) =>
      some.flatMap((build) =>
        (values ? values.map((value) => value.id) : [true, false]).map((value) => ({
          ...build,
          [id]: value,
        })),
      ),
    [{}],
  );
  return buildsWith(own, all).length > 0;
}

/** The conditions that stand in a file, without those that a placement adds to them. */
function partsIn(when: When, file: string): readonly When[] {
  if (when.kind === 'and') return when.of.flatMap((part) => partsIn(part, file));
  return when.at.file === file ? [when] : [];
}
