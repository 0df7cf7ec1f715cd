import type { Contour } from '../../geometry/contour.ts';
import type { Bounds, Point } from '../../geometry/point.ts';
import type { Segment } from '../../geometry/segment.ts';
import { STAY } from '../../geometry/transform.ts';
import type { Resolved } from '../shape/resolved.ts';
import { dimensionView, LANE, LANE_TEXT } from './dimensions.ts';
import { labelAreas, labelReferences, labelStations } from './labels.ts';
import type { Metrics } from './metrics.ts';
import { panelLines, reachOf } from './panel-marks.ts';
import { openView, type View } from './view.ts';

/** The template with its lettering and dimensions in one piece, in its own millimetres. */
export function wholeDrawing(resolved: Resolved, metrics: Metrics, factor = 1): View {
  const lines = panelLines(resolved);
  const b = reachOf(resolved);
  const margin = LANE + LANE_TEXT;
  const window: Bounds = {
    minX: b.minX - margin,
    minY: b.minY - margin,
    maxX: b.maxX + margin,
    maxY: b.maxY + 12,
  };
  const view = openView(resolved, lines, STAY, window, metrics, factor);
  labelReferences(view);
  dimensionView(view);
  labelAreas(view);
  labelStations(view);
  return view;
}

/** A template made smaller or larger, for a picture of it. Sizes in words stay as they are. */
export function scaledDown(resolved: Resolved, factor: number): Resolved {
  const point = ({ x, y }: Point): Point => ({ x: x * factor, y: y * factor });
  const segment = (s: Segment): Segment =>
    s.kind === 'line'
      ? { ...s, from: point(s.from), to: point(s.to) }
      : { ...s, centre: point(s.centre), radius: s.radius * factor };
  const contour = (c: Contour): Contour => ({ ...c, segments: c.segments.map(segment) });
  return {
    ...resolved,
    origin: point(resolved.origin),
    datums: resolved.datums.map((d) => ({ ...d, position: (d.position * factor) as typeof d.position })),
    keepOuts: resolved.keepOuts.map((k) => ({ ...k, area: contour(k.area) })),
    panel: resolved.panel && contour(resolved.panel),
    cuts: resolved.cuts.map((cut) => ({
      ...cut,
      area: contour(cut.area),
      cut: contour(cut.cut),
      edge: cut.edge && { ...cut.edge, from: point(cut.edge.from), to: point(cut.edge.to) },
      toolPath: cut.toolPath && contour(cut.toolPath),
      diameter: cut.diameter === null ? null : cut.diameter * factor,
      stations: cut.stations.map((s) => ({ ...s, point: point(s.point), ...(s.on && { on: point(s.on) }) })),
    })),
  };
}
