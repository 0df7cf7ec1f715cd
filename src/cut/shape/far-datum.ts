import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import type { Point } from '../../geometry/point.ts';
import type { CutDatum } from '../../model/cut-template.ts';
import { mm, type Resolved, type ResolvedCut } from './resolved.ts';
import { DATUM_FAR } from './rules.ts';

/** The longest rule that one person lays in one go, mm: common practice, no source. */
const RULE = 2000;

/** An edge of the panel nearer to a cut than this may be offered as its datum only if it saves so much, mm. */
const SAVES = 500;

/**
 * Tells of cuts that lie further from every datum of an axis than a rule reaches: then not even a line parallel to
 * the datum can be laid true. Offers an edge of the panel as a nearer one where the template draws the panel.
 */
export function lintFarDatums(resolved: Resolved, report: Report): void {
  for (const axis of ['vertical', 'horizontal'] as const) {
    const datums = resolved.datums.filter((datum) => datum.axis === axis);
    const far = resolved.cuts
      .flatMap((cut) => placedFrom(cut, datums))
      .filter(({ away }) => away > RULE)
      .toSorted((a, b) => b.away - a.away)[0];
    if (!far) continue;
    const { cut, datum, at, away } = far;
    const [name, coordinate] = axis === 'vertical' ? ['vertical', 'x'] : ['horizontal', 'y'];
    const edge = nearestEdge(resolved, axis, at);
    const nearer = edge !== null && Math.abs(edge - at) < away - SAVES;
    const offered = mm(nearer ? edge : Math.round(at / 10) * 10);
    const offer = nearer
      ? `the panel’s own edge at ${coordinate} = ${offered} lies ${mm(Math.abs(edge - at))} mm from it and can be its datum`
      : `give it a datum near ${coordinate} = ${offered}, such as a seam or an edge`;
    report(
      finding(
        DATUM_FAR,
        cut.at,
        `“${cut.label}” (${cut.mark}) lies ${mm(away)} mm from the nearest ${name} datum, “${datum.label}”; a rule of ${mm(RULE)} mm does not reach it, so ${offer}`,
        {
          notes: [
            {
              message: `a second datum is written as ::datum[what it is]{axis=${name} at="${offered} mm"}`,
              at: datum.at,
            },
          ],
          cause: axis,
        },
      ),
    );
  }
}

interface Placed {
  readonly cut: ResolvedCut;
  readonly datum: CutDatum;
  /** Where its nearest point stands along the axis, and how far from the nearest datum, mm. */
  readonly at: number;
  readonly away: number;
}

function along(axis: CutDatum['axis'], { x, y }: Point): number {
  return axis === 'vertical' ? x : y;
}

/** The point of a cut that is nearest to a datum. */
function placedFrom(cut: ResolvedCut, datums: readonly CutDatum[]): Placed[] {
  const all = cut.stations.flatMap(({ point }) =>
    datums.map((datum) => {
      const at = along(datum.axis, point);
      return { cut, datum, at, away: Math.abs(at - datum.position) };
    }),
  );
  return all.toSorted((a, b) => a.away - b.away).slice(0, 1);
}

/** Where the nearest straight edge of the panel that runs the way of a datum stands; `null` where none is drawn. */
function nearestEdge({ panel }: Resolved, axis: CutDatum['axis'], to: number): number | null {
  const edges = (panel?.segments ?? []).flatMap((segment) =>
    segment.kind === 'line' && Math.abs(along(axis, segment.from) - along(axis, segment.to)) < 0.01
      ? [along(axis, segment.from)]
      : [],
  );
  return edges.toSorted((a, b) => Math.abs(a - to) - Math.abs(b - to))[0] ?? null;
}
