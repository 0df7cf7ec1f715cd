import { buildsWith } from '../../checks/builds/witness.ts';
import { lintFarDatums } from '../../cut/shape/far-datum.ts';
import { lintNeighbours, shareAPanel } from '../../cut/shape/neighbours.ts';
import { lintUnits } from '../../cut/shape/unit-slip.ts';
import type { Finding } from '../../diagnostics/finding.ts';
import { collector } from '../../diagnostics/report.ts';
import { placeOfTemplate } from '../../job/builds/template-place.ts';
import type { Guide } from '../../model/guide.ts';
import type { Job } from '../../model/job.ts';
import { eachOnce, type Judged, type WorkedOut } from './drawn-once.ts';

/**
 * What is wrong between the templates of one panel, given the sound drawings of each template: every two that some
 * build has together, and units that make a cut stray from all others.
 */
export function judgePanels(
  templates: readonly (readonly WorkedOut[])[],
  guide: Guide,
  job: Job,
): readonly Finding[] {
  return templates.flatMap((drawn, index) => {
    const later = templates.slice(index + 1);
    const others = templates.flatMap((other) => (other === drawn ? [] : (other[0] ?? [])));
    return [
      ...later.flatMap((other) => eachOnce(pairsOf(drawn, other, guide), guide, job)),
      ...eachOnce(
        drawn.map((one) => placesOf(one, others)),
        guide,
        job,
      ),
    ];
  });
}

/** The drawings of two templates that lie on one panel together, on the builds that have both. */
function pairsOf(first: readonly WorkedOut[], second: readonly WorkedOut[], guide: Guide): readonly Judged[] {
  return first.flatMap((one) =>
    second.flatMap((other): Judged[] => {
      if (!shareAPanel(one.template, other.template)) return [];
      const stands = [one, other].flatMap(({ template }) => placeOfTemplate(guide, template.id));
      const both = one.builds.filter((build) => other.builds.includes(build));
      const builds = buildsWith(stands, both);
      if (builds.length === 0) return [];
      const { findings, report } = collector();
      lintNeighbours(one, other, report);
      return [{ builds, findings }];
    }),
  );
}

/** What makes one template hard to place on its panel: figures in the wrong unit, a datum out of reach. */
function placesOf(one: WorkedOut, others: readonly WorkedOut[]): Judged {
  const { findings, report } = collector();
  const beside = others.filter(({ template }) => shareAPanel(one.template, template));
  lintUnits(
    one.resolved,
    beside.map(({ resolved }) => resolved),
    report,
  );
  // What lies far off because of its unit is told once.
  if (findings.length === 0) lintFarDatums(one.resolved, report);
  return { builds: one.builds, findings };
}
