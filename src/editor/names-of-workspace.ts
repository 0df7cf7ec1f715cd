import { isId } from '../directives/id-text.ts';
import type { Workspace } from '../shop/open-workspace.ts';
import type { Span } from '../source/span.ts';
import type { EditorDesk } from './desk.ts';
import { type NamePlace, namesIn } from './names.ts';

/** The name at an offset of a file; `null` where none stands there. */
export function nameAt(desk: EditorDesk, path: string, offset: number): NamePlace | null {
  const source = desk.source(path);
  const names = source ? namesIn(source) : [];
  return names.find(({ at }) => at.start <= offset && offset <= at.end) ?? null;
}

/** Where a name is given: in its own file, else in the shop's lists, on the platforms and in the procedures. */
export function definitionsOf(name: NamePlace, desk: EditorDesk, workspace: Workspace): readonly Span[] {
  if (name.space === 'procedure') {
    const file = `procedures/${name.id}.md`;
    return workspace.procedures.has(name.id) ? [{ file, start: 0, end: 0 }] : [];
  }
  const own = givenIn(name, name.at.file, desk);
  if (own.length > 0) return own;
  return sharedFilesOf(workspace).flatMap((path) => givenIn(name, path, desk));
}

function givenIn({ id, space }: NamePlace, path: string, desk: EditorDesk): readonly Span[] {
  const source = desk.source(path);
  if (!source) return [];
  return namesIn(source).flatMap((one) =>
    one.gives === 'here' && one.id === id && one.space === space ? [one.at] : [],
  );
}

function sharedFilesOf({ found }: Workspace): readonly string[] {
  return ['tools.yaml', 'supplies.yaml', 'fasteners.yaml', ...found.platforms, ...found.procedures];
}

/**
 * Every place of a name, where it is given first. A name that its own file gives stands in that file alone; one of the
 * shop, a platform or a procedure stands in every file that does not give the same name to something of its own.
 */
export function placesOf(name: NamePlace, desk: EditorDesk, workspace: Workspace): readonly Span[] {
  const [given] = definitionsOf(name, desk, workspace);
  if (!given || name.space === 'procedure') return [];
  const shared = sharedFilesOf(workspace);
  const around = shared.includes(given.file) ? [...shared, ...workspace.found.guides] : [];
  const files = [given.file, ...around.filter((path) => path !== given.file)];
  return files.flatMap((path) => {
    const source = desk.source(path);
    const own = source
      ? namesIn(source).filter(({ id, space }) => id === name.id && space === name.space)
      : [];
    return path !== given.file && own.some(({ gives }) => gives === 'here') ? [] : own.map(({ at }) => at);
  });
}

/** Why a name cannot be given to something else; `null` where it can. */
export function renameRefused(
  to: string,
  name: NamePlace,
  desk: EditorDesk,
  workspace: Workspace,
): string | null {
  if (name.space === 'procedure') return 'a procedure is named by its file; rename that';
  if (!isId(to)) return `"${to}" is no id; small letters, digits and hyphens make one`;
  const places = placesOf(name, desk, workspace);
  if (places.length === 0) return `"${name.id}" is not declared anywhere, so that nothing can be renamed`;
  const taken = [...new Set(places.map(({ file }) => file))].find((path) =>
    namesIn(desk.source(path) ?? { path, text: '', lineStarts: [0] }).some(
      (one) => one.id === to && one.space === name.space,
    ),
  );
  return taken === undefined ? null : `${taken} has a name "${to}" already`;
}
