import { driveGlyph } from '../../drawings/drive-glyph.ts';
import { stringify } from '../../html/stringify.ts';
import { type Drive, formatDrive } from '../../trade/drives.ts';
import { termOfDrive } from '../../trade/glossary/glossary.ts';
import type { PageContext } from '../frame/context.ts';
import { termPath } from '../frame/reference-paths.ts';
import type { FactView, ReferenceView } from './reference-views.ts';

/** A fact in words alone. */
export function fact(label: string, text: string, href: string | null = null): FactView {
  return { label, text, href, drawing: null };
}

/** The drive of a tool or fastener, drawn and linked to what the glossary says of it. */
export function driveFact(drive: Drive, { root }: Pick<PageContext, 'root'>): FactView {
  return {
    label: 'Drive',
    drawing: stringify([driveGlyph(drive)]),
    text: formatDrive(drive),
    href: root + termPath(termOfDrive(drive)),
  };
}

/** What else something is called; nothing where it has one name alone. */
export function synonymFacts({ synonyms }: { readonly synonyms: readonly string[] }): readonly FactView[] {
  return synonyms.length > 0 ? [fact('Also called', synonyms.join(', '))] : [];
}

/** The own picture of a thing of the shop's lists, by list and id: `tool bit-t25`; `null` where it has none. */
export function ownPictureView(of: string, { shop, shelf }: PageContext): ReferenceView['picture'] {
  const fact = shop.ownPictures.get(of);
  const shown = fact?.path ? shelf.picture(fact.path, null) : null;
  return shown && { shown, alt: fact?.alt?.value ?? '' };
}
