import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import type { CutPoint, CutTemplate } from '../../model/cut-template.ts';
import type { Span } from '../../source/span.ts';
import { FURTHEST } from '../read/read-drawing.ts';
import { mm } from './resolved.ts';
import { NUMBER_UNUSABLE, TOO_MANY_FEATURES } from './rules.ts';

/** Beyond this nobody tells the letters apart on the drawing. */
const MOST_FEATURES = 200;

/** Says whether a size can be used, and reports it where it cannot. */
function usableSize(value: number, what: string, at: Span, report: Report): boolean {
  if (Number.isFinite(value) && value > 0 && value <= FURTHEST) return true;
  report(
    finding(
      NUMBER_UNUSABLE,
      at,
      `${what} is ${written(value)}; it must be above 0 and at most ${FURTHEST} mm`,
    ),
  );
  return false;
}

/** Says whether a place can be used, and reports it where it cannot. */
function usablePoint(point: CutPoint, what: string, at: Span, report: Report): boolean {
  return usablePlace([point.x, point.y], what, at, report);
}

function usablePlace(coordinates: readonly number[], what: string, at: Span, report: Report): boolean {
  if (coordinates.every((v) => Math.abs(v) <= FURTHEST)) return true;
  const place = coordinates.map(written).join(', ');
  report(
    finding(
      NUMBER_UNUSABLE,
      at,
      `${what} lies at ${place}; nothing may lie further than ${FURTHEST} mm from the zero point`,
    ),
  );
  return false;
}

function written(value: number): string {
  return Number.isFinite(value)
    ? `${Math.abs(value) < 1e12 ? mm(value) : 'more than a million million'} mm`
    : 'not a number';
}

/**
 * The template without the features whose numbers cannot be used; each of those is reported. Where there are
 * too many features, all are left out.
 */
export function withUsableNumbers(template: CutTemplate, report: Report): CutTemplate {
  const { outlines, holes, slots, patterns } = template;
  const count =
    outlines.length + holes.length + slots.length + patterns.reduce((n, p) => n + (p.count || 0), 0);
  if (count > MOST_FEATURES) {
    const message = `this template has ${count} cuts; ${MOST_FEATURES} is the most that one drawing can name`;
    report(finding(TOO_MANY_FEATURES, template.at, message));
    return { ...template, outlines: [], holes: [], slots: [], patterns: [] };
  }
  return {
    ...template,
    ...usableFeatures(template, report),
    datums: template.datums.filter((d) => usablePlace([d.position], 'the datum', d.at, report)),
    arcs: template.arcs.filter((a) =>
      [a.from, a.through, a.to].every((p) => usablePoint(p, 'the arc', a.at, report)),
    ),
    keepOuts: template.keepOuts.filter((k) =>
      k.points.every((p) => usablePoint(p, 'the keep-out', k.at, report)),
    ),
    tolerance: usableLength(template.tolerance, 'the tolerance', report),
    web: usableLength(template.web, 'the web', report),
    setBack: usableLength(template.setBack, 'the set-back', report),
    curveRadius: usableRadius(template, report),
    cutterRadius: usableLength(template.cutterRadius, 'the cutter’s radius', report),
    cutterDiameter: usableLength(template.cutterDiameter, 'the cutter’s diameter', report),
  };
}

function usableFeatures(
  { outlines, holes, slots, patterns }: CutTemplate,
  report: Report,
): Pick<CutTemplate, 'outlines' | 'holes' | 'slots' | 'patterns'> {
  return {
    outlines: outlines.filter(
      (o) =>
        o.kind === 'file' ||
        o.corners.every(
          (c) =>
            usablePoint(c.point, 'this corner', c.at, report) &&
            (c.radius === null || usableSize(c.radius, 'the radius', c.at, report)),
        ),
    ),
    holes: holes.filter(
      (h) =>
        usablePoint(h.centre, 'the hole', h.at, report) &&
        usableSize(h.diameter, 'the diameter', h.at, report),
    ),
    slots: slots.filter(
      (s) =>
        [s.from, s.to].every((p) => usablePoint(p, 'the slot', s.at, report)) &&
        usableSize(s.width, 'the width', s.at, report),
    ),
    patterns: patterns.filter((p) => {
      const points =
        p.layout.kind === 'line'
          ? [p.layout.from, p.layout.to]
          : p.layout.kind === 'circle'
            ? [p.layout.centre]
            : [];
      const circle = p.layout.kind === 'circle' ? p.layout.circle : 1;
      const turn = p.layout.kind === 'circle' ? p.layout.start : 0;
      return (
        points.every((point) => usablePoint(point, 'the pattern', p.at, report)) &&
        usableSize(p.diameter, 'the diameter', p.at, report) &&
        usableSize(circle, 'the circle', p.at, report) &&
        usableSize(p.count, 'the count', p.at, report) &&
        usableSize(
          Number.isFinite(turn) && Number.isInteger(p.count) ? 1 : Number.NaN,
          'the count or the start',
          p.at,
          report,
        )
      );
    }),
  };
}

function usableLength<T extends { readonly value: number; readonly at: Span } | null>(
  length: T,
  what: string,
  report: Report,
): T | null {
  return length && usableSize(length.value, what, length.at, report) ? length : null;
}

/** A panel's curve may be flatter than anything else is long. */
function usableRadius({ curveRadius }: CutTemplate, report: Report): CutTemplate['curveRadius'] {
  if (!curveRadius || (curveRadius.value > 0 && curveRadius.value < 1e6)) return curveRadius;
  report(
    finding(
      NUMBER_UNUSABLE,
      curveRadius.at,
      `the curve’s radius is ${written(curveRadius.value)}; it must be above 0`,
    ),
  );
  return null;
}
