import { posix } from 'node:path';
import type { Report } from '../diagnostics/report.ts';
import { finding } from '../diagnostics/rule-card.ts';
import { misplaced } from '../directives/rules/directive-misplaced.ts';
import type { Condition, Part, Rating } from '../model/item.ts';
import type { Platform } from '../model/shop.ts';
import type { SourceFile } from '../source/source-file.ts';
import { readMarkdown } from '../syntax/read.ts';
import { assemble } from './assemble.ts';
import type { ReadingContext } from './context.ts';
import { factsOf } from './facts.ts';
import { platformSchema, readFrontMatter } from './front-matter.ts';
import { directiveNames } from './names.ts';
import { readBuilds, readImpossible, readOptions } from './options.ts';
import { scopeOf } from './scope.ts';
import { uniqueIds } from './unique-ids.ts';
import { readWords } from './words.ts';
import { reportUnknownZone } from './zones.ts';

/**
 * Reads a vehicle platform: its description, options and builds, and the parts and states that its guides
 * share. `null`
 * after a fault of syntax or front matter.
 */
export function readPlatform(source: SourceFile, context: ReadingContext, report: Report): Platform | null {
  const { document, sound } = readMarkdown(source, directiveNames, report);
  const front = readFrontMatter(document, source, platformSchema, report);
  if (!sound || !front) return null;
  const words = readWords(front.value.words, context.words);
  const draft = assemble(document, scopeOf(source.path, context, undefined, [], report));
  for (const entry of draft.sections.flatMap(({ entries }) => entries)) {
    const message = `a platform describes the ${words.vehicle}; work is described in a guide or a procedure`;
    report(finding(misplaced, entry.at, message));
  }
  const { items, zones } = uniqueIds(draft, report);
  for (const ref of [...items.values()].flatMap((item) => item.zones)) reportUnknownZone(ref, zones, report);
  const parts = new Map<string, Part>();
  const conditions = new Map<string, Condition>();
  const ratings = new Map<string, Rating>();
  for (const item of items.values()) {
    if (item.kind === 'part') parts.set(item.id, { ...item, fromPlatform: true });
    else if (item.kind === 'condition') conditions.set(item.id, { ...item, fromPlatform: true });
    else if (item.kind === 'rating') ratings.set(item.id, { ...item, fromPlatform: true });
    else {
      const message = `a platform shares parts, conditions and ratings with its guides; declare this ${item.kind} in the guide that uses it`;
      report(finding(misplaced, item.at, message));
    }
  }
  const starts = [0, ...draft.sections.map(({ at }) => at.start), source.text.length + 1];
  const under = (heading: number, items: ReadonlyMap<string, Part | Condition | Rating>) =>
    [...items.values()]
      .filter(({ at }) => at.start >= (starts[heading] ?? 0) && at.start < (starts[heading + 1] ?? 0))
      .map(({ id }) => id);
  const sharedUnder = (heading: number) => ({
    parts: under(heading, parts),
    conditions: under(heading, conditions),
    ratings: under(heading, ratings),
  });
  const sections = draft.sections.map(({ id, title, titleText, intro }, index) => ({
    id: id === '' ? null : id,
    title,
    titleText,
    blocks: intro,
    ...sharedUnder(index + 1),
  }));
  const opening = { id: null, title: [], titleText: '', blocks: draft.opening, ...sharedUnder(0) };
  const untitled =
    opening.blocks.length + opening.parts.length + opening.conditions.length + opening.ratings.length > 0
      ? [opening]
      : [];
  const all = [...untitled, ...sections];
  const facts = factsOf(
    all.flatMap(({ blocks }) => blocks),
    [...all.map(({ title }) => title), draft.footnotes],
    items.values(),
    context.resolve,
  );
  const drawing = facts.pictures.find(({ figure }) => figure !== null) ?? null;
  const [first] = zones.values();
  if (first && !drawing) {
    const message = `a zone lies in the first picture of the platform, and this one shows none; put a :::figure of the whole ${words.vehicle} on its page`;
    report(finding(misplaced, first.at, message));
  }
  return {
    id: posix.basename(source.path, '.md'),
    file: source.path,
    title: { value: front.value.title, at: front.valueAt(['title']) },
    builds: {
      options: readOptions(front.value.options, front),
      listed: readBuilds(front.value.builds, front),
      impossible: readImpossible(front.value.impossible, front, report),
    },
    words,
    parts,
    conditions,
    ratings,
    zones,
    drawing,
    sections: all,
    ...facts,
  };
}
