import { posix } from 'node:path';
import * as z from 'zod';
import type { Report } from '../../diagnostics/report.ts';
import { finding } from '../../diagnostics/rule-card.ts';
import { misplaced } from '../../directives/rules/directive-misplaced.ts';
import { assemble } from '../../guide/assemble.ts';
import { readFrontMatter } from '../../guide/front-matter.ts';
import type { ReadingContext } from '../../guide/index.ts';
import { directiveNames } from '../../guide/names.ts';
import { scopeOf } from '../../guide/scope.ts';
import type { SourceFile } from '../../source/source-file.ts';
import { readMarkdown } from '../../syntax/read.ts';
import { yamlKey, yamlText } from '../../syntax/read-yaml.ts';
import type { VisitRequest } from './request.ts';

const textOrList = (error: string) => z.union([yamlText, z.array(yamlText)], { error });

/** What stands at the top of a visit. */
export const visitSchema = z.strictObject({
  title: yamlKey(yamlText, 'text', 'What is booked; it heads the page of the visit.'),
  platform: yamlKey(
    yamlText,
    'the name of a file in `platforms/`',
    'The vehicle, which all guides of the visit are for.',
  ),
  build: yamlKey(
    textOrList('words parted by commas').optional(),
    'words parted by commas, as in `led, no lining`',
    'What is known of the vehicle: options that it has, choices of one, either with `no` before it. What is not said stays open, and the page asks for it.',
  ),
  guides: yamlKey(
    textOrList('the names of guides, parted by spaces'),
    'the names of guides, as in `roof-vent side-awning`',
    'The guides that are booked together, by the names of their folders.',
  ),
});

/** Reads a visit from its file; `null` after a fault that leaves nothing to plan. */
export function readVisit(source: SourceFile, context: ReadingContext, report: Report): VisitRequest | null {
  const { document, sound } = readMarkdown(source, directiveNames, report);
  const front = readFrontMatter(document, source, visitSchema, report);
  if (!sound || !front) return null;
  const { value } = front;
  const draft = assemble(document, scopeOf(source.path, context, undefined, [], report));
  for (const { at } of [...draft.items, ...draft.sections]) {
    report(
      finding(
        misplaced,
        at,
        'a visit says what is booked, and a note in plain text; work stands in its guides',
      ),
    );
  }
  const listAt = (
    key: 'build' | 'guides',
    written: string | readonly string[] | undefined,
    parting: RegExp,
  ) =>
    typeof written === 'string'
      ? written
          .split(parting)
          .filter((word) => word !== '')
          .map((word) => ({ value: word, at: front.valueAt([key]) }))
      : (written ?? []).map((word, index) => ({ value: word.trim(), at: front.valueAt([key, index]) }));
  return {
    id: posix.basename(source.path, '.md'),
    file: source.path,
    title: { value: value.title, at: front.valueAt(['title']) },
    platform: { value: value.platform, at: front.valueAt(['platform']) },
    build: listAt('build', value.build, /\s*,\s*/),
    guides: listAt('guides', value.guides, /[\s,]+/),
    note: draft.opening,
    at: front.keyAt(['guides']),
  };
}
