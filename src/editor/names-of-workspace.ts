import { isId } from '../directives/attributes/id-text.ts';
import type { Workspace } from '../shop/open-workspace.ts';
import { guideId } from '../site/site-pages.ts';
import type { Span } from '../source/span.ts';
import type { EditorDesk } from './desk.ts';
import { type NamePlace, namesIn } from './names.ts';

/** The name at an offset of a file; `null` where none stands there. */
export function nameAt(desk: EditorDesk, path: string, offset: number): NamePlace | null {
  const source = desk.source(path);
  const names = source ? namesIn(source) : [];
  return names.find(({ at }) => at.start <= offset && offset <= at.end) ?? null;
}

/** Whether a visit is made of a guide, among others. */
function books(visit: string, guide: string, desk: EditorDesk): boolean {
  const [list = ''] = /^guides:[^\n]*(?:\n[ \t]+-[^\n]*)*/m.exec(desk.source(visit)?.text ?? '') ?? [];
  return list.match(/[a-z0-9-]+/g)?.includes(guide) ?? false;
}

/** Where a name is given: in its own file, else in the shop's lists, on the platforms and in the procedures. */
export function definitionsOf(name: NamePlace, desk: EditorDesk, workspace: Workspace): readonly Span[] {
  if (name.space === 'procedure') {
    const file = `procedures/${name.id}.md`;
    return workspace.procedures.has(name.id) ? [{ file, start: 0, end: 0 }] : [];
  }
  if (name.of !== undefined) return givenIn(name, `procedures/${name.of}.md`, desk);
  const own = givenIn(name, name.at.file, desk);
  if (own.length > 0) return own;
  const platform = platformOf(name.at.file, desk);
  return sharedFilesOf(workspace)
    .filter((path) => platform === null || !path.startsWith('platforms/') || path === platform)
    .filter((path) => name.space !== 'option' || path.startsWith('platforms/'))
    .flatMap((path) => givenIn(name, path, desk));
}

/** The file of the platform that a guide or a visit is for; `null` for a file that is for none. */
function platformOf(path: string, desk: EditorDesk): string | null {
  const [, head = ''] = /^---\r?\n(.*?)\n---/s.exec(desk.source(path)?.text ?? '') ?? [];
  const id = /^platform:\s*["']?([a-z0-9-]+)/m.exec(head)?.[1];
  return id === undefined ? null : `platforms/${id}.md`;
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
 * Every place of a name, where it is given first. A name that its own file gives stands in that file alone, save that a
 * visit may ask about an option of it; one of the shop, a platform or a procedure stands in every file that can mean it
 * and does not give the same name to something of its own.
 */
export function placesOf(name: NamePlace, desk: EditorDesk, workspace: Workspace): readonly Span[] {
  const [given] = definitionsOf(name, desk, workspace);
  if (!given || name.space === 'procedure') return [];
  const files = [given.file, ...filesAround(name, given.file, desk, workspace)];
  const procedure = /^procedures\/(.+)\.md$/.exec(given.file)?.[1];
  return files.flatMap((path) => {
    const source = desk.source(path);
    // The option of a procedure is spoken of elsewhere only where that is placed.
    const of = name.space === 'option' && path !== given.file ? procedure : undefined;
    const own = source
      ? namesIn(source).filter((one) => one.id === name.id && one.space === name.space && one.of === of)
      : [];
    const isOther = path !== given.file && of === undefined && own.some(({ gives }) => gives === 'here');
    return isOther ? [] : own.map(({ at }) => at);
  });
}

/** The other files that can mean what a file gives. */
function filesAround(
  { space }: NamePlace,
  given: string,
  desk: EditorDesk,
  workspace: Workspace,
): readonly string[] {
  const { guides, visits } = workspace.found;
  const shared = sharedFilesOf(workspace);
  const isPlatform = given.startsWith('platforms/');
  if (!shared.includes(given))
    return space === 'option' ? visits.filter((path) => books(path, guideId(given), desk)) : [];
  const booked = space === 'option' && isPlatform ? visits : [];
  return [...shared, ...guides, ...booked].filter(
    (path) => path !== given && (!isPlatform || [null, given].includes(platformOf(path, desk))),
  );
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
