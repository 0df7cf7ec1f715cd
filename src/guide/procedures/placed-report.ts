import type { Report } from '../../diagnostics/report.ts';
import type { Guide } from '../../model/guide.ts';
import type { Origin } from '../../model/origin.ts';

/** Tells with each finding inside a procedure's file where the procedure is placed, outermost place first. */
export function placedReport(chains: ReadonlyMap<string, readonly Origin[]>, report: Report): Report {
  return (finding) => {
    const chain = chains.get(finding.at.file) ?? [];
    const places = chain.flatMap((origin) =>
      origin.kind === 'procedure'
        ? [{ message: `the procedure ${origin.procedure} is placed here`, at: origin.at }]
        : [],
    );
    report(places.length === 0 ? finding : { ...finding, notes: [...finding.notes, ...places] });
  };
}

/** How each procedure's file came into a guide; for one that is placed twice, by its first place. */
export function placeChains({ items, sections }: Pick<Guide, 'items' | 'sections'>) {
  const chains = new Map<string, readonly Origin[]>();
  for (const { idAt, origins } of [...sections.flatMap(({ steps }) => steps), ...items.values()]) {
    if (origins.length > 0 && !chains.has(idAt.file)) chains.set(idAt.file, origins);
  }
  return chains;
}
