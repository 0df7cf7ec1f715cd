import type { Finding } from '../diagnostics/finding.ts';
import type { Guide } from '../model/guide.ts';
import type { Job } from '../model/job.ts';
import { readText } from '../shop/files/text-files.ts';
import { withTexts } from '../shop/files/with-texts.ts';
import { checked } from '../shop/inspect/inspect.ts';
import { inspectGuide } from '../shop/inspect/inspect-guide.ts';
import { type CheckedGuide, conclude } from '../shop/inspect/verdict.ts';
import type { Workspace } from '../shop/open-workspace.ts';
import { runGuides } from '../site/guides/run-guides.ts';
import { turnGround } from '../site/guides/turn.ts';
import { type OpenWork, openWork } from '../site/open-work.ts';
import type { Work } from '../site/work.ts';
import { type SourceFile, sourceFile } from '../source/source-file.ts';

/** What of a guide could be worked out when it last could be. */
interface Worked {
  readonly guide: Guide;
  readonly job: Job;
}

/** A workspace in an editor's hands: files as they are typed stand over those on disk. */
export interface EditorDesk {
  /** Takes in texts as they are typed, `null` for a file that is as on disk again. */
  readonly typed: (texts: ReadonlyMap<string, string | null>) => void;
  /** Takes in that files on disk have changed. */
  readonly changedOnDisk: () => void;
  /** The findings of all files, the same as `check` tells of these texts. */
  readonly findings: () => Promise<readonly Finding[]>;
  readonly workspace: () => Promise<Workspace>;
  /** A guide by its file, as it last could be worked out. */
  readonly worked: (path: string) => Worked | null;
  /** A file as it is typed, or else on disk. */
  readonly source: (path: string) => SourceFile | null;
}

/** Opens a workspace for an editor; nothing is read before it is asked for. */
export function editorDesk(work: Work, identity: string): EditorDesk {
  const texts = new Map<string, string>();
  const results = new Map<string, CheckedGuide>();
  const worked = new Map<string, Worked>();
  /** Guides whose text has changed since they were looked at. */
  const waiting = new Set<string>();
  let open: OpenWork | null = null;
  const files = () => withTexts(work.files, texts);

  const opened = async (): Promise<OpenWork> => {
    if (open) return open;
    // Threads read the disk alone, and would miss what is typed.
    const own: Work = { ...work, files: files(), openCrew: async () => null };
    open = await openWork(own, identity, false);
    results.clear();
    const { guides, visits } = open.workspace.found;
    const { results: all } = await runGuides([...guides, ...visits], open.ground, own);
    for (const result of all) results.set(result.path, result);
    return open;
  };
  const current = async (): Promise<Workspace> => {
    const known = await opened();
    const workspace = { ...known.workspace, files: files() };
    open = { workspace, ground: turnGround({ ...known.ground, workspace }) };
    let stale = false;
    for (const path of waiting) {
      waiting.delete(path);
      if (!workspace.found.guides.includes(path)) continue;
      const inspected = await inspectGuide(path, workspace);
      results.set(path, checked(inspected));
      if (inspected.value) worked.set(path, inspected.value);
      stale = true;
    }
    // A visit is made of guides, so that it may read otherwise when one of them does.
    const { visits } = workspace.found;
    if (stale && visits.length > 0) {
      const { results: again } = await runGuides(visits, open.ground, { openCrew: async () => null });
      for (const result of again) results.set(result.path, result);
    }
    return workspace;
  };
  return {
    typed: (changes) => {
      for (const [path, text] of changes) {
        if (text === null) texts.delete(path);
        else texts.set(path, text);
        waiting.add(path);
        if (!open?.workspace.found.guides.includes(path)) open = null;
      }
    },
    changedOnDisk: () => {
      open = null;
    },
    findings: async () => {
      const workspace = await current();
      const { guides, visits } = workspace.found;
      const of = (paths: readonly string[]) => paths.flatMap((path) => results.get(path) ?? []);
      return conclude(workspace, of(guides), of(visits)).findings;
    },
    workspace: current,
    worked: (path) => worked.get(path) ?? null,
    source: (path) => {
      const text = texts.get(path);
      return text === undefined ? readText(work.files, path) : sourceFile(path, text.replace(/^\uFEFF/, ''));
    },
  };
}
