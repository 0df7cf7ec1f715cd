import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { misplaced } from '../directives/rules/directive-misplaced.ts';
import type { Origin } from '../model/origin.ts';
import type { Platform } from '../model/shop.ts';
import type { Option } from '../model/when.ts';
import type { SourceFile } from '../source/source-file.ts';
import { readMarkdown } from '../syntax/read.ts';
import { assemble } from './assemble.ts';
import type { ReadingContext } from './context.ts';
import type { Draft } from './draft.ts';
import { procedureSchema, readFrontMatter } from './front-matter.ts';
import { directiveNames } from './names.ts';
import { readOptions } from './options.ts';
import { scopeOf } from './scope.ts';
import { reportStrayZones } from './zones.ts';

/** Reads a shared procedure as it stands in its own file; `null` after a fault that leaves nothing to place. */
export function readProcedure(
  source: SourceFile,
  context: ReadingContext,
  platform: Platform | undefined,
  origins: readonly Origin[],
  report: Report,
): { readonly draft: Draft; readonly options: readonly Option[] } | null {
  const { document, sound } = readMarkdown(source, directiveNames, report);
  const front = readFrontMatter(document, source, procedureSchema, report);
  if (!sound || !front) return null;
  const draft = assemble(document, scopeOf(source.path, context, platform, origins, report));
  reportStrayZones(draft, report);
  const [footnote] = draft.footnotes;
  if (footnote && 'at' in footnote && footnote.at) {
    report(
      finding(
        misplaced,
        footnote.at,
        'a procedure carries no footnotes; the guides that place it have their own',
      ),
    );
  }
  return { draft, options: readOptions(front.value.options, front) };
}
