import type { Markup } from '../../html/markup.ts';
import type { FrameView, LinkView } from '../frame/shared-views.ts';
import type { FindView, ListsView } from '../reference/reference-views.ts';
import type { BlockView, FigureView, PictureView } from '../steps/block-views.ts';
import type { DrawnZone, VehicleDrawing } from './vehicle.ts';

/** The first page: every platform with its guides, and what else can be looked up. */
export interface IndexView {
  readonly frame: FrameView;
  readonly find: FindView;
  readonly platforms: readonly { readonly link: LinkView; readonly guides: readonly GuideEntry[] }[];
  /** Several guides on one vehicle, by title. */
  readonly visits: readonly GuideEntry[];
  readonly lists: readonly ListsView[];
}

/** A guide in a list. */
export interface GuideEntry {
  readonly link: LinkView;
  /** Beside its title; `null` for none. */
  readonly picture: PictureView | null;
  readonly partNumber: string | null;
  readonly revision: string | null;
  readonly updated: string | null;
  /** "Not verified since step 7 changed"; `null` where nothing is to be said. */
  readonly unverified: string | null;
  /** Hands-on time over all its builds. */
  readonly time: string;
  readonly people: string;
  /** "for every build", or the options that change it. */
  readonly builds: string;
}

/** A part that the guides of a platform share. */
interface PlatformPart {
  readonly name: string;
  /** Its row in each guide that handles it. */
  readonly guides: readonly LinkView[];
}

/** A state of the vehicle that the guides of a platform bring about and end, in the words of their steps. */
interface PlatformState {
  readonly name: string;
  readonly set: string | null;
  readonly clear: string | null;
}

/** A limit of the vehicle that all jobs on it load together. */
interface PlatformLimit {
  readonly name: string;
  readonly value: string;
}

/** A guide in a zone of the platform's drawing, with the steps that are done there. */
export interface GuideInZone {
  readonly guide: LinkView;
  readonly steps: readonly { readonly number: number; readonly title: string; readonly href: string }[];
}

/** The drawing of a platform: the parts that lie in each zone, and what its guides do there. */
export type PlatformZones = VehicleDrawing<
  DrawnZone & { readonly parts: readonly string[]; readonly guides: readonly GuideInZone[] }
>;

/** A vehicle platform with the guides that there are for it. */
export interface PlatformView {
  readonly frame: FrameView;
  readonly title: string;
  readonly options: readonly { readonly name: string; readonly choices: string }[];
  /** What stands before its first heading. */
  readonly opening: readonly BlockView[];
  /** The figure of the opening that its zones are parts of, which leads to them; `null` where it stands elsewhere. */
  readonly drawn: FigureView | null;
  readonly openingParts: readonly PlatformPart[];
  readonly openingLimits: readonly PlatformLimit[];
  readonly openingStates: readonly PlatformState[];
  readonly sections: readonly {
    readonly id: string | null;
    readonly title: Markup;
    readonly blocks: readonly BlockView[];
    readonly parts: readonly PlatformPart[];
    readonly limits: readonly PlatformLimit[];
    readonly states: readonly PlatformState[];
  }[];
  readonly guides: readonly GuideEntry[];
  /** The card set of all its guides; `null` where there is none. */
  readonly cards: LinkView | null;
  /** `null` for a platform whose drawing has no zones. */
  readonly vehicle:
    | (PlatformZones & { /** Where `drawn` is not it. */ readonly standsAlone: boolean })
    | null;
}
