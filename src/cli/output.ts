import { renderJson } from '../diagnostics/render-json.ts';
import { renderSarif } from '../diagnostics/render-sarif.ts';
import { renderText } from '../diagnostics/render-text.ts';
import { countFindings, summaryLine } from '../diagnostics/summary.ts';
import { sourcesOf } from '../shop/files/sources-of.ts';
import type { WorkspaceFiles } from '../shop/files/workspace-files.ts';
import type { Verdict } from '../shop/inspect/verdict.ts';
import type { formats } from './formats.ts';
import type { ExitCode, Io } from './io.ts';
import { version } from './version.ts';

/** What the commands that check have in common. */
export interface CheckOptions {
  readonly guides: string;
  readonly format: (typeof formats)[number];
  readonly strict?: boolean;
  readonly threads?: number;
}

/** Prints what a run has found; in text, `closing` follows the summary. */
export async function printVerdict(
  { findings, guideCount, templates }: Pick<Verdict, 'findings' | 'guideCount' | 'templates'>,
  files: WorkspaceFiles,
  options: CheckOptions,
  prefix: string,
  closing: string,
  io: Io,
): Promise<void> {
  const context = { sources: sourcesOf(findings, files), prefix };
  switch (options.format) {
    case 'text': {
      const text = renderText(findings, context, { colour: io.colour, width: io.width });
      io.out(`${text === '' ? '' : `${text}\n\n`}${summaryLine(findings, guideCount)}\n${closing}`);
      break;
    }
    case 'json':
      io.out(`${renderJson(findings, guideCount, templates, context)}\n`);
      break;
    case 'sarif': {
      // Every room's rules, which is nearly all of the program.
      const { ruleCards } = await import('../shop/rule-cards.ts');
      io.out(`${renderSarif(findings, ruleCards, context, version)}\n`);
    }
  }
}

/** The exit code that findings ask for. */
export function exitCodeOf({ findings }: Pick<Verdict, 'findings'>, strict: boolean): ExitCode {
  const { errors, warnings } = countFindings(findings);
  return errors > 0 || (strict && warnings > 0) ? 1 : 0;
}

/** What was done to each template before the line to cut, a paragraph each. */
export function templatesInWords(templates: Verdict['templates'], prefix: string): string {
  return templates
    .map(
      ({ file, title, done }) =>
        `${prefix}${file}: “${title}”\n${done.map((one) => `  ${one}\n`).join('')}\n`,
    )
    .join('');
}
