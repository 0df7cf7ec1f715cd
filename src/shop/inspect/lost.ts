import { idsMeant, idsNamed, isWork, type Lost, nothingLost } from '../../checks/index.ts';
import type { Finding } from '../../diagnostics/finding.ts';
import { idLike } from '../../directives/attributes/id-text.ts';
import { cutTemplate } from '../../directives/cut-template.ts';
import { directives } from '../../directives/index.ts';
import type { Guide } from '../../model/guide.ts';
import { lineColumn, lineText, type Sources } from '../../source/source-file.ts';
import type { Span } from '../../source/span.ts';
import { placeUnfilled } from '../marked-places.ts';

/** Directives that others name by an id. */
const withId = new Set(
  directives.filter(({ attributes }) => attributes.id?.required).map(({ name }) => name),
);

/**
 * What the faults found while reading a guide have cost. A declaration (a line that begins with `::`) with an
 * error on it may be missing from the guide; a mention whose id cannot be read, or is not declared, was meant for
 * what the likely mend says. Where a marked place asks for a declaration, that is not missing besides.
 */
export function lostTo(guide: Guide, findings: readonly Finding[], sources: Sources): Lost {
  const ids = new Set(idsMeant(guide));
  const errors = findings.filter(({ severity }) => severity === 'error');
  if (errors.length === 0) return { ...nothingLost, ids };
  const declarations = new Set<string>();
  const nameless = new Set<'thing' | 'place'>();
  const wanted = idsNamed(guide);
  let conditions = false;
  let gap: Span | null = null;
  const open = (at: Span) => {
    const place = placeOf(at, guide, sources);
    if (gap === null || place.start < gap.start) gap = place;
  };
  for (const { code, at, suggestion, costs } of errors) {
    const source = sources.get(at.file);
    if (!source) continue;
    conditions ||= costs === 'condition';
    if (costs === 'procedure' || !broughtFrom(at.file, guide)) {
      declarations.add('procedure');
      open(at);
    }
    if (suggestion) ids.add(suggestion.text.replace(/^ *\{?#|\}$/g, ''));
    // What was meant for another list is missing there.
    if (suggestion && withId.has(suggestion.text)) declarations.add(suggestion.text);
    const line = lineText(source, lineColumn(source, at.start).line);
    if (code === placeUnfilled.code) {
      const asked = /`:{2,3}([a-z-]+)/.exec(line)?.[1];
      if (asked !== undefined) declarations.add(asked);
    }
    const name = /^:{2,3}([a-z-]+)/.exec(line)?.[1];
    if (name === undefined) continue;
    const named = [...line.matchAll(/#([a-z0-9]+(?:-[a-z0-9]+)*)/g)].flatMap(([, id]) => id ?? []);
    // Most faults cost one attribute: what is named is there all the same.
    if (named.length > 0 && named.every((id) => isThere(id, guide))) continue;
    declarations.add(name);
    if (isWork(name)) open(at);
    const meant = [...named, ...guesses(line)];
    for (const id of meant) ids.add(id);
    // What nothing asks for under its likely id is asked for under another.
    const unfound = withId.has(name) && !meant.some((id) => wanted.has(id));
    // With a template its holes are gone too.
    if (unfound || name === cutTemplate.name) nameless.add(name === 'step' ? 'place' : 'thing');
  }
  return { ids, declarations, nameless, conditions, gap };
}

/** The line of the guide's own file from which the work is not known: that of the fault, or of what placed it. */
function placeOf(at: Span, { file, items, sections }: Guide, sources: Sources): Span {
  const brought = [...items.values(), ...sections.flatMap(({ steps }) => steps)];
  const origin = brought.find(({ idAt }) => idAt.file === at.file)?.origins[0];
  const own = at.file === file ? at : (origin?.at ?? { file, start: 0, end: 0 });
  const source = sources.get(file);
  if (!source) return own;
  const { line, column } = lineColumn(source, own.start);
  const start = own.start - column + 1;
  return { file, start, end: start + lineText(source, line).length };
}

/** Whether anything of a guide stands in a file: a procedure that cannot be read brings nothing. */
function broughtFrom(file: string, { file: own, items, sections }: Guide): boolean {
  const placed = [...items.values(), ...sections.flatMap(({ steps }) => steps)];
  return file === own || placed.some(({ idAt }) => idAt.file === file);
}

function isThere(id: string, { items, anchors }: Guide): boolean {
  return items.has(id) || anchors.has(id);
}

/** The id that a declaration was likely to have: what stands for it, or else its label. */
function guesses(line: string): readonly string[] {
  const id = /#([^\s}]+)/.exec(line)?.[1] ?? /\[([^\]]+)\]/.exec(line)?.[1] ?? '';
  const likely = idLike(id);
  return likely === undefined ? [] : [likely];
}
