import { type NearFit, toolFitsDrive } from '../../trade/drive-fit.ts';
import type { Drive } from '../../trade/drives.ts';
import type { Offer, ToolUse } from './tool-use.ts';

/** How well the tools that are offered for a fastener fit its drive. */
type OfferedFit =
  | { readonly kind: 'fits' }
  /** Nothing is offered, or nothing that has a drive of its own. */
  | { readonly kind: 'none' }
  | { readonly kind: 'near'; readonly offer: Offer; readonly near: NearFit }
  /** The tools that have a drive, none of them near the fastener's. */
  | { readonly kind: 'no'; readonly offers: readonly Offer[] };

/** Judges the best of the offered tools; a ratchet or an extension has no drive and is passed over. */
export function offeredFit(offers: readonly Offer[], drive: Drive): OfferedFit {
  const judged = offers.flatMap((offer) =>
    offer.any.flatMap((tool) => (tool.drive ? [{ offer, fit: toolFitsDrive(tool.drive.value, drive) }] : [])),
  );
  if (judged.length === 0) return { kind: 'none' };
  if (judged.some(({ fit }) => fit === 'fits')) return { kind: 'fits' };
  const nears = judged.flatMap(({ offer, fit }) => (typeof fit === 'object' ? [{ offer, near: fit }] : []));
  const best = nears.find(({ near }) => near.accepted) ?? nears[0];
  if (best) return { kind: 'near', ...best };
  return { kind: 'no', offers: offers.filter(({ any }) => any.some((tool) => tool.drive !== null)) };
}

/** The drive that an action must have a tool for; `null` where none binds it. */
export function boundDrive({ bound, item }: ToolUse) {
  return bound ? (item?.drive ?? null) : null;
}
