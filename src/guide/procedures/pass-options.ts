import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import type { ProcedurePlace } from '../../directives/procedure.ts';
import type { Option, When } from '../../model/when.ts';
import { procedureOption } from '../rules/procedure-option.ts';

/**
 * How a procedure's conditions read in the file that places it. Each option of the procedure must be passed,
 * and each option that is passed must exist on both sides. What hangs on an inspection of its own goes on doing so.
 *
 * @param inspections the procedure's inspections, each with its id in the guide
 */
export function optionPassing(
  place: ProcedurePlace,
  inner: readonly Option[],
  outer: readonly string[],
  inspections: ReadonlyMap<string, string>,
  report: Report,
): (when: When) => When {
  const passed = new Map(place.options.map((pair) => [pair.inner.value, pair.outer.value]));
  for (const pair of place.options) {
    if (!inner.some(({ id }) => id === pair.inner.value)) {
      const message = `the procedure ${place.of.value} has no option "${pair.inner.value}"`;
      report(finding(procedureOption, pair.inner.at, message));
    } else if (!outer.includes(pair.outer.value)) {
      report(
        finding(procedureOption, pair.outer.at, `there is no option "${pair.outer.value}" here to pass on`),
      );
    }
  }
  for (const option of inner) {
    if (passed.has(option.id)) continue;
    report(
      finding(
        procedureOption,
        place.at,
        `the procedure ${place.of.value} asks about "${option.id}"; pass an option of this guide for it`,
        { notes: [{ message: `"${option.name}" is declared here`, at: option.at }] },
      ),
    );
  }
  const known = new Map([...inspections, ...[...passed].filter(([, option]) => outer.includes(option))]);
  return (when) => renamed(when, known);
}

function renamed(when: When, passed: ReadonlyMap<string, string>): When {
  switch (when.kind) {
    case 'has':
    case 'is': {
      const option = passed.get(when.option);
      // What is not passed has been told; with no condition in its place, nothing later asks about it again.
      return option === undefined ? { kind: 'and', of: [], at: when.at } : { ...when, option };
    }
    case 'not':
      return { ...when, of: renamed(when.of, passed) };
    case 'and':
    case 'or':
      return { ...when, of: when.of.map((part) => renamed(part, passed)) };
  }
}
