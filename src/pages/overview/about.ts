import type { Guide } from '../../model/guide.ts';
import type { GuideContext } from '../frame/context.ts';

/** A line about the job as a whole. */
export interface AboutRow {
  readonly label: string;
  /** `null` where the guide does not say: that is told, since nobody may take it for permission. */
  readonly text: string | null;
  /** Whether the owner is told it too. */
  readonly owner: boolean;
}

/** Who, what for and whom to ask, as the cover says it; the owner's sheet carries some of it. */
export function aboutRows(guide: Guide, { shop }: Pick<GuideContext, 'shop'>): readonly AboutRow[] {
  const row = (label: string, text: string | null | undefined, owner: boolean): AboutRow => ({
    label,
    text: text ?? null,
    owner,
  });
  return [
    row('Meant for', guide.meantFor?.value, true),
    row('Not for', guide.notFor?.value, true),
    row('Who may do the work', guide.doneBy?.value, false),
    row('What becomes of what was taken off', guide.takenOff?.value, true),
    row('Changed since the last revision', guide.changes?.value, false),
    row('Ask', shop.settings.contact, true),
  ];
}
