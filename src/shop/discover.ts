import { posix } from 'node:path';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { isId, tooLongForId } from '../directives/attributes/id-text.ts';
import { wholeFile } from '../source/span.ts';
import { settingsFile } from './lists/settings.ts';
import { reportNamesAlike } from './names-alike.ts';
import { guideMisplaced, guidesMissing } from './rules.ts';

/** Paths of a workspace's Markdown files by what they are, each list in the order of the paths. */
export interface Discovered {
  readonly guides: readonly string[];
  readonly platforms: readonly string[];
  readonly procedures: readonly string[];
  readonly visits: readonly string[];
}

/** Folders right under the workspace that hold no guide. */
const shelves = ['platforms', 'procedures', 'visits'];

/** Finds guides, platforms, procedures and visits by where their files stand, and reports a guide that stands elsewhere. */
export function discover(files: Iterable<string>, report: Report): Discovered {
  const paths = [...files];
  const guides: string[] = [];
  const strays: string[] = [];
  const named = paths.filter((path) => posix.basename(path).toLowerCase() === 'guide.md');
  for (const path of named) {
    const why = misplaced(path);
    if (why === null) guides.push(path);
    else {
      strays.push(path);
      report(finding(guideMisplaced, wholeFile(path), why));
    }
  }
  reportNamesAlike(paths, strays, report);
  if (named.length === 0) {
    const message = 'there is no guide here; a guide is a file guide.md in a folder of its own';
    report(finding(guidesMissing, wholeFile(settingsFile), message));
  }
  return {
    guides,
    platforms: shelf(paths, 'platforms'),
    procedures: shelf(paths, 'procedures'),
    visits: shelf(paths, 'visits'),
  };
}

/** The id of a file that stands on a shelf: its name without the ending. */
export function fileId(path: string): string {
  return posix.basename(path, '.md');
}

function shelf(paths: readonly string[], folder: string): string[] {
  return paths.filter((path) => posix.dirname(path) === folder && path.endsWith('.md'));
}

function misplaced(path: string): string | null {
  const [folder = '', name = '', ...deeper] = path.split('/');
  if (name === '') return 'a guide stands in a folder of its own, whose name is its id';
  if (deeper.length > 0 || shelves.includes(folder)) {
    return 'this guide is not read; a guide stands in a folder right under the workspace';
  }
  if (name !== 'guide.md') return 'this guide is not read; its file is named guide.md, in small letters';
  if (isId(folder)) return null;
  return `"${folder}" is no id; ${tooLongForId(folder) ?? 'name the folder with small letters, digits and hyphens'}`;
}
