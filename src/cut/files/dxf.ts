import {
  Colors,
  DxfWriter,
  LWPolylineFlags,
  point2d,
  point3d,
  TextHorizontalAlignment,
  TextVerticalAlignment,
  Units,
} from '@tarikjabiri/dxf';
import { bulgeOf } from '../../geometry/bulge.ts';
import { asCircle, type Contour } from '../../geometry/contour.ts';
import { pointAt, type Segment } from '../../geometry/segment.ts';
import type { Mark } from '../drawing/drawing.ts';
import type { View } from '../drawing/view.ts';

/** Layers by what their lines are for; a laser follows CUT alone. */
const LAYERS = {
  CUT: Colors.Red,
  'TOOL-PATH': Colors.Cyan,
  CENTRE: Colors.Blue,
  DATUM: Colors.Blue,
  'KEEP-OUT': Colors.Magenta,
  'PANEL-EDGE': Colors.Green,
  DIMENSION: Colors.White,
  IDENTITY: Colors.White,
} as const;

type Layer = keyof typeof LAYERS;

/**
 * Writes a template as DXF in millimetres ($INSUNITS 4): circles, and polylines whose arcs are bulges. `identity` is
 * what stands below the drawing, on a layer of its own that nothing cuts.
 */
export function writeDxf(view: View, identity: readonly Mark[]): string {
  const dxf = new DxfWriter();
  dxf.document.header.setVariable('$LASTSAVEDBY', { 1: 'Baybook' });
  dxf.setUnits(Units.Millimeters);
  for (const [name, colour] of Object.entries(LAYERS)) dxf.addLayer(name, colour, 'Continuous');
  const { resolved, lines } = view;
  for (const cut of resolved.cuts) {
    contour(dxf, 'CUT', cut.cut);
    if (cut.toolPath) contour(dxf, 'TOOL-PATH', cut.toolPath);
  }
  for (const { area } of resolved.keepOuts) contour(dxf, 'KEEP-OUT', area);
  loose(dxf, 'CENTRE', lines.centres);
  loose(
    dxf,
    'DATUM',
    view.references.map((r) => r.line),
  );
  loose(dxf, 'PANEL-EDGE', lines.edges);
  written(dxf, 'DIMENSION', view.marks);
  written(dxf, 'IDENTITY', identity);
  return dxf.stringify();
}

/** Lines and lettering. Arrowheads are left out: the end of a line shows the same place. */
function written(dxf: DxfWriter, layerName: Layer, marks: readonly Mark[]): void {
  for (const mark of marks) {
    if (mark.kind === 'stroke') loose(dxf, layerName, mark.segments);
    if (mark.kind !== 'text') continue;
    const { at, height, turn, anchor, text } = mark;
    const align = {
      start: TextHorizontalAlignment.Left,
      middle: TextHorizontalAlignment.Center,
      end: TextHorizontalAlignment.Right,
    }[anchor];
    dxf.addText(point3d(at.x, at.y, 0), height, text, {
      layerName,
      rotation: turn,
      horizontalAlignment: align,
      verticalAlignment: TextVerticalAlignment.BaseLine,
      ...(anchor === 'start' ? {} : { secondAlignmentPoint: point3d(at.x, at.y, 0) }),
    });
  }
}

function contour(dxf: DxfWriter, layerName: Layer, shape: Contour): void {
  const round = asCircle(shape);
  if (round) {
    dxf.addCircle(point3d(round.centre.x, round.centre.y, 0), round.radius, { layerName });
    return;
  }
  const vertices = shape.segments.map((segment) => vertex(segment));
  const last = shape.segments.at(-1);
  if (!shape.closed && last) vertices.push({ point: point2d(...pair(pointAt(last, 1))) });
  const flags = shape.closed ? LWPolylineFlags.Closed : LWPolylineFlags.None;
  dxf.addLWPolyline(vertices, { layerName, flags });
}

function vertex(segment: Segment): { point: ReturnType<typeof point2d>; bulge?: number } {
  const point = point2d(...pair(pointAt(segment, 0)));
  return segment.kind === 'arc' ? { point, bulge: bulgeOf(segment) } : { point };
}

function pair({ x, y }: { readonly x: number; readonly y: number }): [number, number] {
  return [x, y];
}

function loose(dxf: DxfWriter, layerName: Layer, segments: readonly Segment[]): void {
  for (const segment of segments) {
    if (segment.kind === 'line') {
      dxf.addLine(point3d(segment.from.x, segment.from.y, 0), point3d(segment.to.x, segment.to.y, 0), {
        layerName,
      });
    } else {
      contour(dxf, layerName, { segments: [segment], closed: false });
    }
  }
}
