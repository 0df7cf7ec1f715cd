import type { Span, Written } from '../source/span.ts';
import type { PaperName } from '../trade/paper.ts';
import type { Degrees, Millimetres } from '../units/quantity.ts';
import type { Ref } from './inline.ts';
import type { When } from './when.ts';

/** The face of the panel on which a template is laid. */
export type Face = 'outside' | 'inside';

/** Left and right as seen sitting forward. `each`: drawn for the left, mirrored for the right. */
type TemplateSide = 'left' | 'right' | 'each';

/** The side of the drawing on which an outline runs out over the panel's own edge. */
export type OpenEdge = 'bottom' | 'top' | 'left' | 'right';

/** A point on the stated face of the panel: x to the right, y up, both in millimetres. */
export interface CutPoint {
  readonly x: Millimetres;
  readonly y: Millimetres;
}

/** One corner of an outline, rounded where it has a radius. */
export interface CutCorner {
  readonly point: CutPoint;
  readonly radius: Millimetres | null;
  readonly at: Span;
}

/** Something on a template that only some builds may have; `null` stands for every build. */
export interface Conditional {
  readonly when: Written<When> | null;
}

/** What is cut away, as corners that the author typed or as a file of the accessory's maker. */
export type CutOutline = Conditional & DrawnOutline;

type DrawnOutline =
  | {
      readonly kind: 'corners';
      readonly corners: readonly CutCorner[];
      /** The side that is left open because it lies on the panel's edge; `null` is an outline that closes. */
      readonly openEdge: OpenEdge | null;
      readonly at: Span;
    }
  | ({ readonly kind: 'file'; readonly at: Span } & MakersDrawing);

/** A drawing that the accessory's maker supplies, and what of it is meant. */
export interface MakersDrawing {
  /** Path from the workspace's root; its ending (`.dxf`, `.svg`) says how it is read. */
  readonly path: string;
  /** The text of the file; `null` where it could not be read, which is a finding of another room. */
  readonly text: string | null;
  /** The layers that are read; `null` reads all. */
  readonly layers: readonly string[] | null;
  /** Millimetres in a unit of a file that does not say its own; `null` where the guide does not say it either. */
  readonly unit: number | null;
}

/** Bends the straight side of an outline between two of its corners into an arc through a third point. */
export interface CutArc extends Conditional {
  readonly from: CutPoint;
  readonly through: CutPoint;
  readonly to: CutPoint;
  readonly at: Span;
}

/** One round hole. */
export interface CutHole extends Conditional {
  readonly id: string | null;
  readonly label: string;
  readonly centre: CutPoint;
  readonly diameter: Millimetres;
  /** The item that passes through it. */
  readonly for: Ref | null;
  readonly at: Span;
}

/** A hole with two straight sides and two round ends. */
export interface CutSlot extends Conditional {
  readonly id: string | null;
  readonly label: string;
  /** Centres of the two round ends. */
  readonly from: CutPoint;
  readonly to: CutPoint;
  readonly width: Millimetres;
  readonly for: Ref | null;
  readonly at: Span;
}

/** Equal holes, evenly spaced on a line (both ends included) or on a circle, or where a maker's drawing has them. */
export interface CutPattern extends Conditional {
  readonly id: string | null;
  readonly label: string;
  readonly count: number;
  readonly diameter: Millimetres;
  readonly layout:
    | { readonly kind: 'line'; readonly from: CutPoint; readonly to: CutPoint }
    | {
        readonly kind: 'circle';
        readonly centre: CutPoint;
        /** Diameter of the circle on which the centres lie. */
        readonly circle: Millimetres;
        /** Direction of the first hole, counter-clockwise from "to the right". */
        readonly start: Degrees;
      }
    | { readonly kind: 'file'; readonly drawing: MakersDrawing };
  readonly for: Ref | null;
  readonly at: Span;
}

/** What the technician measures from. A vertical datum is a line x = position, a horizontal one y = position. */
export interface CutDatum extends Conditional {
  readonly label: string;
  readonly axis: 'vertical' | 'horizontal';
  readonly position: Millimetres;
  readonly at: Span;
}

/** Something behind the panel that no cutter may reach. */
export interface KeepOut extends Conditional {
  readonly label: string;
  readonly points: readonly CutPoint[];
  readonly at: Span;
}

/** Which of several drawings of one template this is. */
export interface TemplateVariant {
  /** Follows the template's id in the names of its files: `fog-yes`. */
  readonly suffix: string;
  /** The builds that it is for, in a technician's words: "with front fog lamps". */
  readonly builds: string;
  /** The template with what any build has: a letter means the same cut on every drawing of it. */
  readonly whole: CutTemplate;
}

/**
 * A cut template as the author wrote it, or as some builds have it. Features that could not be read are left
 * out.
 */
export interface CutTemplate {
  readonly id: string;
  readonly title: string;
  /** The part that is cut. */
  readonly panel: Ref | null;
  readonly face: Face;
  readonly side: TemplateSide | null;
  readonly datums: readonly CutDatum[];
  readonly outlines: readonly CutOutline[];
  readonly arcs: readonly CutArc[];
  readonly holes: readonly CutHole[];
  readonly slots: readonly CutSlot[];
  readonly patterns: readonly CutPattern[];
  readonly keepOuts: readonly KeepOut[];
  /** The outline that the panel itself carries, in the same coordinates: the first that a build has. */
  readonly panelOutlines: readonly CutOutline[];
  /** How far the finished cut may be off its true place. */
  readonly tolerance: Written<Millimetres> | null;
  /** The least width of panel that must stay between two cuts. */
  readonly web: Written<Millimetres> | null;
  /** How far the finished edge stands back from the drawn outline: every opening grows by it all round. */
  readonly setBack: Written<Millimetres> | null;
  /** Radius of the panel's curve, where the places across its axis are given as a straight projection. */
  readonly curveRadius: Written<Millimetres> | null;
  /** Which way the axis of that curve runs: about an upright one x is projected, about a level one y. */
  readonly curveAxis: 'vertical' | 'horizontal';
  /** How the set-back turns a sharp corner. */
  readonly join: 'round' | 'mitre';
  /** The least radius that the cutter of the cutting step can turn: no inner corner can be tighter. */
  readonly cutterRadius: Written<Millimetres> | null;
  /** What that cutter takes away, apart from how it turns: a jigsaw's blade is thin and turns wide. */
  readonly cutterDiameter: Written<Millimetres> | null;
  /** `null` as written, and where every build has the same. */
  readonly variant: TemplateVariant | null;
  readonly at: Span;
}

/** A part of a drawing, in the template's own millimetres. */
export interface SheetArea {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** One printed sheet of a tiled template. Its page is its name: "sheet 3". */
export interface SheetTile {
  /** Number of its page in the file, counted from 1. */
  readonly page: number;
  readonly landscape: boolean;
  /** What the sheet shows. */
  readonly window: SheetArea;
  /** What is left of it when it is trimmed at its seams. */
  readonly trimmed: SheetArea;
  /** The pages of the sheets that join it. */
  readonly joins: readonly number[];
}

/** How a template is laid out on one paper. Everything a page needs to say which sheets there are. */
export interface SheetPlan {
  readonly paper: PaperName;
  /** Size of the paper in millimetres, upright. */
  readonly width: number;
  readonly height: number;
  /** How far the drawing of a single sheet is turned counter-clockwise on it, degrees; tiles are never turned. */
  readonly rotation: 0 | 90;
  readonly tiles: readonly SheetTile[];
  /** Pages of the file, the proof sheet and the list of positions included. */
  readonly pages: number;
  /** True where proof square, list and drawing share one sheet. */
  readonly oneSheet: boolean;
}
