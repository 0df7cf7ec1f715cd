import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { contourBounds } from '../../geometry/contour.ts';
import { areaDistance } from '../../geometry/distance.ts';
import { boundsMeet, grow } from '../../geometry/point.ts';
import { liesWithin } from '../../geometry/within.ts';
import type { CutTemplate } from '../../model/cut-template.ts';
import { onOtherSides, type PanelSide, panelFrame, sidesOnPanel } from './on-panel.ts';
import { mm, type Resolved } from './resolved.ts';
import { FEATURES_COINCIDE, KEEP_OUT_TOUCHED, OUTSIDE_PANEL, WEB_NARROW } from './rules.ts';

/** A template as some builds have it, worked out. */
export interface OnOnePanel {
  readonly template: CutTemplate;
  readonly resolved: Resolved;
}

/** Whether two templates are measured from the same places on one panel, so that they can be judged together. */
export function shareAPanel(a: CutTemplate, b: CutTemplate): boolean {
  const frame = panelFrame(a);
  return frame !== null && frame === panelFrame(b);
}

/**
 * What is wrong between two templates of one panel: cuts that overlap, webs, cuts of one in a keep-out of the
 * other or outside the panel that only the other draws. A cut that lies wholly in one of the other's is sound
 * here, as a start hole or a pilot hole is; whether it comes too late is a matter of the order of doing.
 */
export function lintNeighbours(first: OnOnePanel, second: OnOnePanel, report: Report): void {
  const web = Math.max(first.template.web?.value ?? 0, second.template.web?.value ?? 0);
  for (const one of sidesOnPanel(first.template, first.resolved)) {
    for (const other of sidesOnPanel(second.template, second.resolved)) {
      if (onOtherSides(one, other)) continue;
      lintCuts(one, other, web, second.template.title, report);
      lintSurroundings(one, first.template, other, second.template, report);
      lintSurroundings(other, second.template, one, first.template, report);
    }
  }
}

function lintCuts(
  { cuts }: PanelSide,
  { cuts: others }: PanelSide,
  web: number,
  title: string,
  report: Report,
): void {
  for (const a of cuts) {
    const reach = grow(contourBounds(a.area), web);
    for (const b of others) {
      if (!boundsMeet(reach, contourBounds(b.area))) continue;
      const apart = areaDistance(a.area, b.area);
      const notes = [{ message: `${b.mark}: ${b.label}, on “${title}”`, at: b.at }];
      const names = `“${a.label}” (${a.mark}) and “${b.label}” (${b.mark} of “${title}”)`;
      if (apart > 0 && apart < web - 1e-6) {
        const message = `only ${mm(apart)} mm of panel stays between ${names}; the templates of this panel ask for ${mm(web)} mm`;
        report(finding(WEB_NARROW, a.at, message, { notes }));
      }
      if (apart === 0 && !liesWithin(a.area, b.area) && !liesWithin(b.area, a.area)) {
        const message = `${names} overlap on the panel that both templates cut`;
        report(finding(FEATURES_COINCIDE, a.at, message, { notes }));
      }
    }
  }
}

/** The cuts of one template against what only the other says of the panel. */
function lintSurroundings(
  { cuts, keepOuts: own, panel: ownPanel }: PanelSide,
  { cutterDiameter, cutterRadius }: CutTemplate,
  { keepOuts, panel }: PanelSide,
  { title, at: otherAt }: CutTemplate,
  report: Report,
): void {
  const cutter = cutterDiameter ? cutterDiameter.value / 2 : (cutterRadius?.value ?? 0);
  for (const cut of cuts) {
    const reach = cut.kind === 'hole' ? 0 : cutter;
    for (const keepOut of keepOuts) {
      // The same hose drawn on both templates is told of by the cut's own.
      if (own.some(({ label }) => label === keepOut.label)) continue;
      if (areaDistance(cut.area, keepOut.area) - reach > 1e-6) continue;
      const message = `“${cut.label}” (${cut.mark}) reaches the keep-out “${keepOut.label}” of “${title}”, a template of the same panel`;
      const notes = [{ message: 'the keep-out', at: keepOut.at }];
      report(finding(KEEP_OUT_TOUCHED, cut.at, message, { notes }));
    }
    // What is open at the panel's edge shares a line with it, and lies within it all the same.
    if (!ownPanel && panel && !liesWithin(cut.area, panel)) {
      const message = `“${cut.label}” (${cut.mark}) does not lie within the panel’s outline that “${title}” draws`;
      const notes = [{ message: 'the template with the outline', at: otherAt }];
      report(finding(OUTSIDE_PANEL, cut.at, message, { notes }));
    }
  }
}
