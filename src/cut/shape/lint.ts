import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { contourBounds } from '../../geometry/contour.ts';
import { areaDistance, lineDistance } from '../../geometry/distance.ts';
import { isInside } from '../../geometry/inside.ts';
import { boundsMeet, cross, dot, grow } from '../../geometry/point.ts';
import { directionAt, type Segment, startOf } from '../../geometry/segment.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import { mm, type Resolved, type ResolvedCut } from './resolved.ts';
import {
  FEATURES_COINCIDE,
  HOLE_NO_BIT,
  KEEP_OUT_TOUCHED,
  OUTSIDE_PANEL,
  RADIUS_BELOW_CUTTER,
  TOLERANCE_BEYOND_PAPER,
  WEB_NARROW,
} from './rules.ts';

/** A drill bit that the guide declares, diameter in mm. */
export interface Bit {
  readonly id: string;
  readonly diameter: number;
}

/** A hole and a bit this near in diameter are one size, mm. */
const SAME_DIAMETER = 0.05;

/** Everything that is wrong with shapes that could be worked out. */
export function lintResolved(
  resolved: Resolved,
  template: CutTemplate,
  bits: readonly Bit[] | null,
  report: Report,
): void {
  const cutter = template.cutterRadius?.value ?? 0;
  // A cutter whose width is not said may take away as much as it turns.
  const reach = template.cutterDiameter ? template.cutterDiameter.value / 2 : cutter;
  for (const cut of resolved.cuts) {
    if (cut.kind === 'hole') lintHole(cut, cutter, bits, report);
    else if (cutter > 0) lintCutter(cut, cutter, bits, report);
    lintKeepOuts(cut, resolved, reach, report);
    lintPanel(cut, resolved, report);
  }
  lintPairs(resolved, template, report);
  const { declared, paper, longest } = resolved.tolerance;
  if (declared !== null && declared < paper) {
    const message = `paper holds about ${mm(paper)} mm over ${mm(longest)} mm, by our own reckoning; a tolerance of ${mm(declared)} mm must be marked out with a rule or cut from the DXF file`;
    report(finding(TOLERANCE_BEYOND_PAPER, template.tolerance?.at ?? template.at, message));
  }
}

function lintHole(cut: ResolvedCut, cutter: number, bits: readonly Bit[] | null, report: Report): void {
  const diameter = cut.diameter ?? 0;
  if (bits === null || isDrilled(diameter, bits)) return;
  if (cutter > 0 && diameter >= 2 * cutter) return;
  const owned = bits.map((bit) => `${mm(bit.diameter)} mm`).join(', ');
  const message = `no declared bit makes a hole of ${mm(diameter)} mm${owned ? `; declared: ${owned}` : ''}`;
  report(finding(HOLE_NO_BIT, cut.at, message, { cause: mm(diameter) }));
}

function isDrilled(diameter: number, bits: readonly Bit[]): boolean {
  return bits.some((bit) => Math.abs(bit.diameter - diameter) <= SAME_DIAMETER);
}

/** A round cutter works inside the waste, so it leaves its radius wherever the waste turns a corner. */
function lintCutter(cut: ResolvedCut, cutter: number, bits: readonly Bit[] | null, report: Report): void {
  if (cut.kind === 'slot' && isDrilled(cut.diameter ?? 0, bits ?? [])) return;
  const { segments, closed } = cut.cut;
  const mend =
    cut.kind === 'outline' ? `: round the corner, as in "x,y r${mm(cutter)}", or cut with another` : '';
  const tight = (radius: number, segment: Segment): void => {
    const p = startOf(segment);
    const what = radius > 0 ? `an inner radius of ${mm(radius)} mm` : 'a sharp inner corner';
    const message = `${what} at ${mm(p.x)}, ${mm(p.y)}; the cutter makes none tighter than ${mm(cutter)} mm${mend}`;
    report(finding(RADIUS_BELOW_CUTTER, cut.at, message));
  };
  segments.forEach((segment, i) => {
    if (segment.kind === 'arc' && segment.sweep > 0 && segment.radius < cutter - 1e-6)
      tight(segment.radius, segment);
    const before = segments[i - 1] ?? (closed ? segments.at(-1) : undefined);
    if (!before) return;
    const [u, v] = [directionAt(before, 1), directionAt(segment, 0)];
    if (Math.atan2(cross(u, v), dot(u, v)) > 0.09) tight(0, segment);
  });
}

function lintKeepOuts(cut: ResolvedCut, { keepOuts }: Resolved, cutter: number, report: Report): void {
  for (const keepOut of keepOuts) {
    const clear = areaDistance(cut.area, keepOut.area) - cutter;
    if (clear > 1e-6) continue;
    const reach = cutter > 0 ? `, counting the cutter’s radius of ${mm(cutter)} mm` : '';
    const notes = [{ message: 'the keep-out', at: keepOut.at }];
    report(
      finding(KEEP_OUT_TOUCHED, cut.at, `this cut reaches the keep-out “${keepOut.label}”${reach}`, {
        notes,
        cause: String(keepOut.at.start),
      }),
    );
  }
}

function lintPanel(cut: ResolvedCut, { panel }: Resolved, report: Report): void {
  const first = cut.cut.segments[0];
  if (!panel || !first) return;
  // An open cut begins and ends on the panel's edge, so only a point within it tells.
  const middle = cut.cut.segments[Math.floor(cut.cut.segments.length / 2)] ?? first;
  const out = cut.edge
    ? !isInside(panel, startOf(middle))
    : !isInside(panel, startOf(first)) || lineDistance(cut.cut, panel) === 0;
  if (out)
    report(
      finding(OUTSIDE_PANEL, cut.at, `“${cut.label}” (${cut.mark}) does not lie within the panel’s outline`),
    );
}

function lintPairs({ cuts }: Resolved, template: CutTemplate, report: Report): void {
  const web = template.web?.value ?? 0;
  const boxes = cuts.map((cut) => contourBounds(cut.area));
  cuts.forEach((a, i) => {
    for (let j = i + 1; j < cuts.length; j++) {
      const [b, boxA, boxB] = [cuts[j], boxes[i], boxes[j]];
      if (!b || !boxA || !boxB || !boundsMeet(grow(boxA, web), boxB)) continue;
      // A hole within the waste is where a saw starts.
      if (isStartHole(a, b) || isStartHole(b, a)) continue;
      const apart = areaDistance(a.area, b.area);
      const notes = [{ message: `${b.mark}: ${b.label}`, at: b.at }];
      if (apart === 0) {
        report(
          finding(
            FEATURES_COINCIDE,
            a.at,
            `“${a.label}” (${a.mark}) and “${b.label}” (${b.mark}) lie in one place`,
            { notes },
          ),
        );
      } else if (apart < web - 1e-6) {
        const message = `only ${mm(apart)} mm of panel stays between “${a.label}” (${a.mark}) and “${b.label}” (${b.mark}); the template asks for ${mm(web)} mm`;
        report(finding(WEB_NARROW, a.at, message, { notes }));
      }
    }
  });
}

/** A drilled hole that lies wholly in what an outline takes away. */
function isStartHole(hole: ResolvedCut, waste: ResolvedCut): boolean {
  const first = hole.area.segments[0];
  if (hole.kind !== 'hole' || waste.kind !== 'outline' || !first) return false;
  return isInside(waste.area, startOf(first)) && lineDistance(hole.area, waste.area) > 0;
}
