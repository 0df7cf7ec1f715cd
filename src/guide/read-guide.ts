import { posix } from 'node:path';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { coated } from '../job/actions/coat.ts';
import { tellApart } from '../job/words/tell-apart.ts';
import type { Guide, Section } from '../model/guide.ts';
import type { SourceFile } from '../source/source-file.ts';
import { readMarkdown } from '../syntax/read.ts';
import { assemble } from './assemble.ts';
import type { ReadingContext } from './context.ts';
import { type Draft, draftSteps, isStep } from './draft.ts';
import { expandReversals } from './expand-reversals.ts';
import { factsOf } from './facts.ts';
import { finishTemplate } from './finish-template.ts';
import { frontMatterSchema, readFrontMatter, written } from './front-matter.ts';
import { withLeftOut } from './left-out.ts';
import { directiveNames } from './names.ts';
import { joinBuilds, limitBuilds, readOptions, withFindings } from './options.ts';
import { placeProcedures } from './procedures/place-procedures.ts';
import { placeChains, placedReport } from './procedures/placed-report.ts';
import { guideTooLong, mostSteps, tooManySteps } from './rules/guide-too-long.ts';
import { stepHomeless } from './rules/step-homeless.ts';
import { scopeOf } from './scope.ts';
import { spellOutSequences } from './spell-out-sequences.ts';
import { uniqueIds } from './unique-ids.ts';
import { reportStrayZones, reportUnknownZones } from './zones.ts';

/**
 * Reads one guide: its file, the procedures that it places and the reversals that it asks for. `null` after a
 * fault of syntax or front matter, which leaves nothing to judge.
 */
export function readGuide(source: SourceFile, context: ReadingContext, report: Report): Guide | null {
  const { document, sound } = readMarkdown(source, directiveNames, report);
  const front = readFrontMatter(document, source, frontMatterSchema, report);
  if (!sound || !front) return null;
  const { value } = front;
  const platformRef = { value: value.platform, at: front.valueAt(['platform']) };
  const platform = context.platforms.get(value.platform);
  const words = platform?.words ?? context.words;
  const joined = joinBuilds(
    platform?.builds,
    [...readOptions(value.options, front), ...readOptions(value.wishes, front, 'wishes')],
    report,
  );
  const known = platform ? limitBuilds(joined, value.when, front, report) : joined;

  const assembled = assemble(document, scopeOf(source.path, context, platform, [], report));
  const own = draftSteps(assembled);
  const beyond = own[mostSteps];
  if (beyond) {
    report(finding(guideTooLong, beyond.at, tooManySteps));
    return null;
  }
  reportHomeless(assembled, report);
  reportStrayZones(assembled, report);
  const { draft, brought } = placeProcedures(assembled, {
    context,
    platform,
    options: known.options.map((option) => option.id),
    origins: [],
    report,
    tally: { placed: 0, steps: own.length, characters: 0 },
  });
  const { items: declared, templates, sequences: orders } = uniqueIds(withLeftOut(draft), report);
  const builds = withFindings(known, declared, report);
  const sequences = new Map(orders.map((sequence) => [sequence.id, sequence]));
  const items = coated(tellApart(declared));
  const templateById = new Map(templates.map(({ template }) => [template.id, template]));
  const spelledOut = spellOutSequences(draft.sections, sequences, report);
  const sections = expandReversals(spelledOut, { brought, items, templates: templateById, words, report });

  const texts = sections.flatMap((section) => [
    ...section.intro,
    ...section.steps.filter(isWritten).flatMap((step) => step.blocks),
  ]);
  const titles = sections.map((section) => section.title);
  const facts = factsOf(
    [...draft.opening, ...texts],
    [...titles, draft.footnotes],
    items.values(),
    context.resolve,
  );
  const steps = sections.flatMap((section) => section.steps);
  if (platform)
    reportUnknownZones({ items, sections }, platform, placedReport(placeChains({ items, sections }), report));
  return {
    id: posix.dirname(source.path),
    file: source.path,
    title: { value: value.title, at: front.valueAt(['title']) },
    platform: platformRef,
    partNumber: written(value['part-number'], front, 'part-number'),
    revision: written(value.revision, front, 'revision'),
    updated: written(value.updated, front, 'updated'),
    meantFor: written(value['meant-for'], front, 'meant-for'),
    notFor: written(value['not-for'], front, 'not-for'),
    doneBy: written(value['done-by'], front, 'done-by'),
    takenOff: written(value['taken-off'], front, 'taken-off'),
    changes: written(value.changes, front, 'changes'),
    builds,
    words,
    zones: platform?.zones ?? new Map(),
    items,
    templates: new Map(
      [...templateById].map(([id, template]) => [id, finishTemplate(template, steps, items)]),
    ),
    sequences,
    nones: draft.nones,
    contents:
      value.contents === undefined
        ? null
        : new Map(
            Object.entries(value.contents).map(([id, count]) => [
              id,
              { value: count, at: front.valueAt(['contents', id]), idAt: front.keyAt(['contents', id]) },
            ]),
          ),
    sections,
    opening: draft.opening,
    footnotes: draft.footnotes,
    ...facts,
    anchors: new Set([
      ...sections.flatMap((section) => [section.id, ...section.steps.map((step) => step.id)]),
      ...templateById.keys(),
      ...brought.keys(),
    ]),
    visit: null,
  };
}

/** A step that was derived repeats links and pictures of its source; the author wrote them once. */
function isWritten(step: Section['steps'][number]): boolean {
  return !step.origins.some((origin) => origin.kind === 'reverse');
}

function reportHomeless(draft: Draft, report: Report): void {
  for (const section of draft.sections) {
    if (section.id !== '' || section.titleText !== '') continue;
    for (const entry of section.entries.filter(isStep)) {
      report(
        finding(stepHomeless, entry.at, 'this step stands before the first heading; put a heading above it'),
      );
    }
  }
}
