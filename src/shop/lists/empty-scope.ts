import type { Report } from '../../diagnostics/report.ts';
import type { Scope } from '../../directives/directive.ts';

/** What an entry of a list can refer to: nothing but itself. */
export function emptyScope(report: Report): Scope {
  return {
    report,
    origins: [],
    crib: new Map(),
    fastenerTypes: new Map(),
    supplies: new Map(),
    platformParts: new Map(),
    platformConditions: new Map(),
    platformRatings: new Map(),
    prose: () => [],
    body: () => [],
    resolve: () => null,
    textOf: () => null,
  };
}
