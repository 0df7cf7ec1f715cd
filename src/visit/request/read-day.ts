import * as z from 'zod';
import type { Report } from '../../diagnostics/report.ts';
import type { SourceFile } from '../../source/source-file.ts';
import type { Written } from '../../source/span.ts';
import { readYaml, yamlKey, yamlText } from '../../syntax/read-yaml.ts';
import type { VisitRequest } from './request.ts';

const namesMean =
  'The name of a visit, or of a guide; or several guides that are done on one vehicle, parted by spaces.';

/** What stands in the list of a day. */
export const daySchema = z.strictObject({
  title: yamlKey(yamlText, 'text', 'Which day it is; it heads the list.'),
  jobs: yamlKey(
    z
      .array(
        z.union(
          [
            yamlText,
            z.strictObject({
              guides: yamlKey(yamlText, 'names parted by spaces', namesMean),
              build: yamlKey(
                yamlText.optional(),
                'words parted by commas, as in `led, no lining`',
                'What is known of the vehicle, as in a visit; beside what a visit of that name says itself.',
              ),
              title: yamlKey(yamlText.optional(), 'text', 'What the counter calls the job.'),
            }),
          ],
          { error: 'the name of a visit or a guide, or a map with guides' },
        ),
      )
      .min(1, { error: 'one job at least' }),
    'a list of names, or of maps with `guides` and `build`',
    'The vehicles of the day, one after another.',
  ),
});

/** One vehicle of a day as it is asked for. */
export interface DayRequest extends Pick<VisitRequest, 'build' | 'at'> {
  readonly title: string | null;
  /** Names of guides, or of one visit. */
  readonly names: readonly Written<string>[];
}

/** The list of a day: what heads it, and its jobs. */
export interface RequestedDay {
  readonly title: string;
  readonly jobs: readonly DayRequest[];
}

/** Reads a day from its file; `null` after a fault that leaves nothing to sum. */
export function readDay(source: SourceFile, report: Report): RequestedDay | null {
  const whole = { file: source.path, start: 0, end: source.text.length };
  const read = readYaml({ value: source.text, at: whole }, daySchema, report);
  if (!read) return null;
  const jobs = read.value.jobs.map((job, index): DayRequest => {
    const isPlain = typeof job === 'string';
    const at = read.valueAt(isPlain ? ['jobs', index] : ['jobs', index, 'guides']);
    const buildAt = read.valueAt(['jobs', index, 'build']);
    const parted = (text: string, by: RegExp) => text.split(by).filter((word) => word !== '');
    return {
      title: isPlain ? null : (job.title ?? null),
      names: parted(isPlain ? job : job.guides, /[\s,]+/).map((value) => ({ value, at })),
      build: isPlain ? [] : parted(job.build ?? '', /\s*,\s*/).map((value) => ({ value, at: buildAt })),
      at,
    };
  });
  return { title: read.value.title, jobs };
}
